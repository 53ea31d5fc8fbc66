import { describe, expect, test } from 'vitest';
import { analyse, type Imported, verify } from '../../../src/pipeline.ts';
import { unreadOf } from '../../../src/verify/unread.ts';
import type { Stream, Swap, UnknownRows } from '../../../src/vocabulary.ts';
import { at, cleanJournal } from '../../support/clean-swap.ts';
import { journalText, readTexts } from '../../support/read-text.ts';

const log = { 'ro1.log': journalText(cleanJournal.join('\n')) };

function swapOf(imported: Imported): Swap {
  const [swap] = verify(analyse(imported), null, { from: null, to: null }, null).swaps;
  if (swap === undefined) throw new Error('There is no swap.');
  return swap;
}
/** The verdict, and what the sentence says beyond that half B was replaced. */
const said = ({ verdict, statement }: Swap): readonly string[] => [
  verdict,
  statement.replace(/^.*?: half B was replaced( and it came back redundant)?\. ?/, ''),
];
const swapWith = async (files: Readonly<Record<string, string>>): Promise<readonly string[]> =>
  said(swapOf(await readTexts({ ...log, ...files })));

describe('a file of which nothing could be used', () => {
  test('leaves the swap inconclusive, and is named with what to do', async () => {
    expect(await swapWith({})).toEqual(['verified', '']);
    // A text without a stamp, and rows whose dates can be read both ways.
    expect(await swapWith({ 'scan.txt': 'no stamp\nin this text\n' })).toEqual([
      'inconclusive',
      'scan.txt could not be used: mend it, or read again without it.',
    ]);
    const bothWays =
      'time,unit,message\n03/04/2026 09:00:00,RO1,partner ready\n03/04/2026 09:05:00,RO1,partner ready\n';
    expect(await swapWith({ 'a.csv': bothWays, 'scan.txt': 'no stamp\nin this text\n' })).toEqual([
      'inconclusive',
      'a.csv, scan.txt could not be used: mend them, or read again without them.',
    ]);
  });

  test('is also one whose rows were read, and not one of them recognised', async () => {
    const strange = journalText('09:00:00 RO1 hatch open\n09:10:00 RO1 hatch closed');
    expect((await swapWith({ 'hatch.log': strange }))[0]).toBe('inconclusive');
    expect((await swapWith({ 'hatch.log': strange }))[1]).toContain(
      'hatch.log could not be used: mend it, or read again without it.',
    );
  });

  test('is none where one row of it was used, or all were known to mean nothing here', async () => {
    const some = journalText('09:00:00 RO1 hatch open\n09:10:00 RO1 A link a up');
    expect((await swapWith({ 'hatch.log': some }))[0]).toBe('verified');
    const ignored = journalText('09:00:00 RO1 hatch open\n09:10:00 RO1 hatch closed');
    const known = await readTexts({ ...log, 'hatch.log': ignored }, { phrasebook: 'ignore: ["^hatch "]\n' });
    expect(said(swapOf(known))).toEqual(['verified', '']);
  });
});

describe('rows that were not understood', () => {
  /** As if rows of some minutes had not been understood, in the stream of a unit of some pair. */
  const withUnknown = async (pair: string, ...notUnderstood: readonly UnknownRows[]): Promise<Imported> => {
    const imported = await readTexts(log);
    const files = imported.files.map((file) => {
      const [first] = file.streams;
      if (first === undefined) throw new Error('The journal has no stream.');
      const stream: Stream = {
        ...first,
        unit: `unit of ${pair}`,
        subject: { pair, half: null, role: null },
        notUnderstood,
      };
      return { ...file, streams: [...file.streams, stream] };
    });
    return { ...imported, files };
  };
  const minute = (clock: string, count: number): UnknownRows => ({ from: at(clock), count });

  test('in the time of the swap are counted in the sentence, and leave the verdict as it is', async () => {
    expect(said(swapOf(await withUnknown('RO1', minute('09:10:00', 2), minute('09:11:00', 1))))).toEqual([
      'verified',
      '3 rows during the swap were not recognised.',
    ]);
    expect(said(swapOf(await withUnknown('RO1', minute('09:10:00', 1))))).toEqual([
      'verified',
      'One row during the swap was not recognised.',
    ]);
  });

  test('count by the minute, from 15 min before the removal to the end of the swap', async () => {
    // The swap reaches from 08:45:00 to 09:37:00.
    const { files } = await withUnknown(
      'RO1',
      minute('08:44:00', 1),
      minute('08:45:00', 10),
      minute('09:37:00', 100),
      minute('09:38:00', 1000),
    );
    const rows = unreadOf(files, [], 'RO1');
    expect(rows.rowsBetween(at('08:45:00'), at('09:37:00'))).toBe(110);
    // Half of a minute counts as all of it.
    expect(rows.rowsBetween(at('08:44:30'), at('09:36:59'))).toBe(11);
  });

  test('of a unit of another pair do not count; those of a unit that no one knows do', async () => {
    const countOf = async (pair: string): Promise<number> =>
      unreadOf((await withUnknown(pair, minute('09:10:00', 2))).files, [], 'RO1').rowsBetween(
        at('08:45:00'),
        at('09:37:00'),
      );
    expect([await countOf('RO2'), await countOf('')]).toEqual([0, 2]);
  });
});
