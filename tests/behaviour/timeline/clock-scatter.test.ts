import { describe, expect, test } from 'vitest';
import { type Analysed, analyse } from '../../../src/pipeline.ts';
import { pollText } from '../../support/clean-swap.ts';
import { eventLine } from '../../support/pair-facts.ts';
import { journalText, readTexts } from '../../support/read-text.ts';

async function analysed(files: Readonly<Record<string, string>>): Promise<Analysed> {
  return analyse(await readTexts(files));
}
const offsetsOf = ({ findings }: Analysed): readonly unknown[] =>
  findings
    .filter((f) => f.id === 'clock-offset')
    .map((f) => [f.severity, f.figures.aheadSeconds ?? null, f.figures.count]);
/** Every event with its half and the lines that tell of it. */
const events = ({ timelines }: Analysed): readonly string[] =>
  timelines.flatMap((t) =>
    t.events.map((e) => [eventLine(e), ...e.sources.map((s) => `${s.file}:${s.line}`)].join(' ')),
  );

describe('a poll whose clock may be right by what its spacing explains', () => {
  const told = ['10:05:10', '10:10:10', '10:15:20', '10:20:40', '10:25:50'].map(
    (clock, index) => `${clock} RO1 B link a ${index % 2 === 0 ? 'down' : 'up'}`,
  );
  /** Read every minute: the link in (10:05, 10:06], (10:10, 10:11] and so on, in the middle 20, 20, 10, -10 and -20 s from the log. */
  const read = (what: string, ...values: readonly (readonly [string, string])[]): string =>
    pollText(['10:00:00', '10:30:00'], 60, [
      [
        'RO1-B',
        'link a',
        ['10:00:00', 'up'],
        ['10:06:00', 'down'],
        ['10:11:00', 'up'],
        ['10:16:00', 'down'],
        ['10:21:00', 'up'],
        ['10:26:00', 'down'],
      ],
      ['RO1-B', what, ...values],
    ]);

  test('tells of one change with a log that tells it after its readings, no later than their clocks scatter', async () => {
    const found = await analysed({
      'a.log': journalText([...told, '10:28:15 RO1 B light steady'].join('\n')),
      'poll.csv': read('light', ['10:00:00', 'flashing'], ['10:28:00', 'steady']),
    });
    // The light in (10:27, 10:28], in the middle 45 s before the log: by the other five the clocks may agree, and all six lie within 45 s of that.
    expect(offsetsOf(found)).toEqual([['info', 0, 6]]);
    expect(events(found).filter((line) => line.includes('light'))).toEqual([
      '10:00:00 B light flashing was - poll.csv:3',
      '10:28:15 B light steady was flashing a.log:6 poll.csv:59',
    ]);
  });

  test('tells of another change than a log that told another value in between', async () => {
    const log = [...told, '10:27:05 RO1 B link b down', '10:27:20 RO1 B link b up'];
    const found = await analysed({
      'a.log': journalText(log.join('\n')),
      'poll.csv': read('link b', ['10:00:00', 'up'], ['10:13:00', 'down'], ['10:27:00', 'up']),
    });
    // Up in (10:26, 10:27], in the middle 50 s before the log: all six lie within that, but it was down again by then.
    expect(offsetsOf(found)).toEqual([['info', 0, 6]]);
    expect(events(found).filter((line) => line.includes('link-b'))).toEqual([
      '10:00:00 B link-b up was - poll.csv:3',
      '10:12:00..10:13:00 B link-b down was up poll.csv:29',
      '10:26:00..10:27:00 B link-b up was down poll.csv:57',
      '10:27:05 B link-b down was up a.log:6',
      '10:27:20 B link-b up was down a.log:7',
    ]);
  });
});

describe('two polls of which one is a minute ahead, read every 30 s in turn', () => {
  // Five changes, 10 s or 20 s past the minute. The first reads at :00 and :30, the second at :15 and :45, stamped a minute later.
  const first = ['10:05:30', '10:10:30', '10:15:30', '10:20:30', '10:25:30'];
  const second = ['10:06:15', '10:11:45', '10:16:15', '10:21:45', '10:26:15'];
  const links = (clocks: readonly string[]): readonly [string, string][] =>
    clocks.map((clock, index) => [clock, index % 2 === 0 ? 'down' : 'up']);

  test('are told apart though their spacing and scatter could explain as much', async () => {
    const found = await analysed({
      '1.csv': pollText(['10:00:00', '10:30:00'], 30, [
        ['RO1-B', 'link a', ['10:00:00', 'up'], ...links(first)],
      ]),
      '2.csv': pollText(['10:01:15', '10:31:15'], 30, [
        ['RO1-B', 'link a', ['10:01:15', 'up'], ...links(second)],
      ]),
    });
    // Middles 45 s, 75 s and so on apart: median 45 s, scatter 30 s, as much as the spacing. But a change in (10:05:00, 10:05:30] and
    // (10:05:45, 10:06:15] allows 15 s to 75 s, one in (10:10:00, 10:10:30] and (10:11:15, 10:11:45] 45 s to 105 s: never none.
    expect(offsetsOf(found)).toEqual([['warning', 45, 5]]);
  });
});
