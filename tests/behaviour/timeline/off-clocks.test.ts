import { describe, expect, test } from 'vitest';
import { type Analysed, analyse } from '../../../src/pipeline.ts';
import { pollText } from '../../support/clean-swap.ts';
import { eventLine, whenOf } from '../../support/pair-facts.ts';
import { journalText, readTexts } from '../../support/read-text.ts';

type Files = Readonly<Record<string, string>>;

async function analysed(files: Files, align = false): Promise<Analysed> {
  return analyse(await readTexts(files), undefined, { align, reference: null });
}
const offsetsOf = ({ findings }: Analysed): readonly unknown[] =>
  findings
    .filter((f) => f.id === 'clock-offset')
    .map((f) => [f.severity, f.figures.aheadSeconds ?? null, f.figures.count]);
/** Every event with its half, the files that tell of it, and how often each does. */
const events = ({ timelines }: Analysed): readonly string[] =>
  timelines.flatMap((t) =>
    t.events.map((e) => [eventLine(e), ...e.sources.map((s) => `${s.file}:${s.line}`)].join(' ')),
  );

const links = [
  '10:05:00 RO1 B link a down',
  '10:10:00 RO1 B link a up',
  '10:15:00 RO1 B link a down',
  '10:20:00 RO1 B link a up',
  '10:25:00 RO1 B link a down',
];
const right = journalText([...links, '10:50:00 RO1 A link a up'].join('\n'));
const other = journalText(['10:00:00 RO1 A supply good', ...links].join('\n'));
/** The same five changes, and a restart that no other file tells of. */
const own = journalText([...links, '10:40:00 RO1 B module restart'].join('\n'));
const hourAhead = own.replaceAll('T10:', 'T11:');

describe('a poll an hour ahead of a journal', () => {
  const told = ['10:00:10 RO1 B serial T2-9', ...links, '10:28:30 RO1 B serial T4-9'];
  const toggles: readonly string[] = ['05', '10', '15', '20', '25'];
  /** Read every minute from 11:02 to 11:30, which was 10:02 to 10:30 by the clock of the journal. */
  const readings = Array.from({ length: 29 }, (_, index) => {
    const minute = String(index + 2).padStart(2, '0');
    const changes = toggles.filter((t) => t <= minute).length;
    const at = `2026-03-14T11:${minute}:00Z,RO1-B`;
    return `${at},link a,${changes % 2 === 0 ? 'up' : 'down'}\n${at},serial,${minute < '29' ? 'T2-9' : 'T4-9'}\n`;
  });
  const files = {
    'a.log': journalText(told.join('\n')),
    'poll.csv': `time,unit,parameter,value\n${readings.join('')}`,
  };

  test('reads first what the journal had told by then: no module comes back by it', async () => {
    const found = await analysed(files);
    // Of six differences five are 3570 s: a link that changed at 10:05:00 was read so in (11:04, 11:05], in the middle 11:04:30.
    expect(offsetsOf(found)).toEqual([['warning', 3570, 6]]);
    // The first module was taken out somewhere between the two words of the journal.
    expect(events(found).filter((line) => line.includes('serial'))).toEqual([
      '10:00:10 B serial T2-9 was - a.log:1',
      '10:00:10..10:28:30 B serial - was T2-9 a.log:7 poll.csv:57',
      '10:28:30 B serial T4-9 was - a.log:7 poll.csv:57',
    ]);
  });

  test('reads first what nobody had told by then: before what it read next, wherever its stamp lies', async () => {
    // By what the changes allow the poll is 3570 s ahead or up to 30 s more: it began at 10:02:00 to 10:03:00, printed as 11:02:00.
    // But it went on to read the second module, which the journal tells at 10:28:30: the first was read before that.
    const [, ...later] = told;
    const found = await analysed({ ...files, 'a.log': journalText(later.join('\n')) });
    expect(offsetsOf(found)).toEqual([['warning', 3570, 6]]);
    expect(events(found).filter((line) => line.includes('serial T'))).toEqual([
      '10:02:00..10:28:29.999 B serial T2-9 was - poll.csv:3',
      '10:28:30 B serial T4-9 was - a.log:6 poll.csv:57',
    ]);
    expect(events(found).filter((line) => line.includes(' B removed '))).toHaveLength(1);
  });
});

describe('of three sources one whose clock is an hour ahead', () => {
  const files = { 'a.log': right, 'b.log': other, 'c.log': hourAhead };

  test('is used like the others, and no change counts twice', async () => {
    const found = await analysed(files);
    expect(offsetsOf(found)).toContainEqual(['warning', 3600, 5]);
    expect(events(found).filter((line) => line.includes('link-a') && line.includes(' B '))).toEqual([
      '10:05:00 B link-a down was - a.log:1 b.log:2 c.log:1',
      '10:10:00 B link-a up was down a.log:2 b.log:3 c.log:2',
      '10:15:00 B link-a down was up a.log:3 b.log:4 c.log:3',
      '10:20:00 B link-a up was down a.log:4 b.log:5 c.log:4',
      '10:25:00 B link-a down was up a.log:5 b.log:6 c.log:5',
    ]);
    expect(found.files.map((f) => f.input.rows.used)).toEqual([6, 6, 6]);
  });

  test('has bounds that reach over the offset in what it alone tells', async () => {
    // Printed as 11:40:00; by the clock of the others it was 10:40:00.
    expect(events(await analysed(files))).toContain('10:40:00..11:40:00 B restart - was - c.log:6');
  });

  test('tells it at the right time once its clock is set right', async () => {
    expect(events(await analysed(files, true))).toContain('10:40:00 B restart - was - c.log:6');
  });

  test('leaves durations that rest on it open by as much', async () => {
    const ready = `${right}2026-03-14T10:45:00.000Z RO1 partner not ready\n2026-03-14T11:45:00.000Z RO1 partner ready\n`;
    const { facts } = await analysed({ ...files, 'a.log': ready });
    const [restart] = facts.flatMap((f) => f.bringUps);
    // From a restart in (10:40:00, 11:40:00] to 11:45:00: 5 min to 65 min.
    expect([restart && whenOf(restart.start), restart?.sync.low, restart?.sync.high]).toEqual([
      '10:40:00..11:40:00',
      300,
      3900,
    ]);
  });
});

describe('an offset that can not be measured', () => {
  test('is said, and changes nothing: both files tell at their own stamps', async () => {
    const few = journalText(links.slice(0, 3).join('\n')).replaceAll('T10:', 'T11:');
    const found = await analysed({
      'a.log': `${right}2026-03-14T11:50:00.000Z RO1 A link a up\n`,
      'b.log': few,
    });
    expect(offsetsOf(found)).toEqual([['info', null, 3]]);
    expect(events(found).filter((line) => line.includes(' B '))).toEqual([
      '10:05:00 B link-a down was - a.log:1',
      '10:10:00 B link-a up was down a.log:2',
      '10:15:00 B link-a down was up a.log:3',
      '10:20:00 B link-a up was down a.log:4',
      '10:25:00 B link-a down was up a.log:5',
      '11:10:00 B link-a up was down b.log:2',
      '11:15:00 B link-a down was up b.log:3',
    ]);
  });

  test('of what each half says of its own is not made up from the changes of the other', async () => {
    const half = (name: string, seconds: string): string =>
      journalText(
        ['05', '10', '15', '20', '25']
          .map((m) => `10:${m}:${seconds} RO1 ${name} partner not ready`)
          .join('\n'),
      );
    const found = await analysed({ 'a.log': half('A', '00'), 'b.log': half('B', '40') });
    expect(offsetsOf(found)).toEqual([['info', null, 0]]);
  });
});

describe('the first readings of a poll that begins in the middle of another', () => {
  const poll = (from: string): string =>
    pollText([from, '10:30:00'], 60, [
      ['RO1', 'partner-ready', ['10:00:00', 'yes'], ['10:10:00', 'no']],
      ['RO1-B', 'light', ['10:00:00', 'steady'], ['10:10:00', 'flashing']],
    ]);
  const bounds = async (...begins: readonly string[]): Promise<readonly string[]> => {
    const files = Object.fromEntries(begins.map((from, index) => [`${index}.csv`, poll(from)]));
    const { timelines } = await analysed(files);
    return timelines.flatMap((t) =>
      t.events.filter((e) => !e.initial).map((e) => `${whenOf(e)} ${e.signal}`),
    );
  };
  const alone = ['10:09:00..10:10:00 partner-ready', '10:09:00..10:10:00 light'];

  test('never widen the bounds of a change, wherever it begins', async () => {
    expect(await bounds('10:00:00')).toEqual(alone);
    for (const begin of ['10:08:00', '10:09:00', '10:10:00', '10:11:00'])
      expect(await bounds('10:00:00', begin)).toEqual(alone);
  });

  test('narrow them: at both ends, by what they read between the readings of the other', async () => {
    // The second reads the old value at 10:09:30, and the new one at 10:10:30.
    expect(await bounds('10:00:00', '10:09:30')).toEqual([
      '10:09:30..10:10:00 partner-ready',
      '10:09:30..10:10:00 light',
    ]);
    const early = pollText(['10:09:30', '10:30:00'], 60, [['RO1-B', 'light', ['10:00:00', 'flashing']]]);
    const { timelines } = await analysed({ 'a.csv': poll('10:00:00'), 'b.csv': early });
    expect(
      timelines.flatMap((t) =>
        t.events.filter((e) => e.signal === 'light' && !e.initial).map((e) => whenOf(e)),
      ),
    ).toEqual(['10:09:00..10:09:30']);
  });

  test('say nothing of when a state began that another source told to be otherwise: somewhere in between', async () => {
    const late = pollText(['10:20:00', '10:30:00'], 60, [['RO1-B', 'light', ['10:20:00', 'flashing']]]);
    const { timelines } = await analysed({
      'a.log': journalText('10:00:00 RO1 B light steady'),
      'b.csv': late,
    });
    expect(timelines.flatMap((t) => t.events.map((e) => `${whenOf(e)} ${e.value}`))).toEqual([
      '10:00:00 steady',
      '10:00:00..10:20:00 flashing',
    ]);
  });
});
