import { describe, expect, test } from 'vitest';
import { healthOfPairs, type PairHealth } from '../../../src/pipeline.ts';
import { pollText } from '../../support/clean-swap.ts';
import { analyseTexts, journalText } from '../../support/read-text.ts';

async function health(journal: string): Promise<PairHealth> {
  const [first] = healthOfPairs(await analyseTexts({ 'ro1.log': journalText(journal) }));
  if (first === undefined) throw new Error('The journal speaks of no pair.');
  return first;
}

const nine = Date.UTC(2026, 2, 14, 9);

describe('the health of a pair', () => {
  test('is ready since the step that made it so, not since it was last said', async () => {
    const { state, since, evidence } = await health(`09:00:00 RO1 partner not ready
      09:10:00 RO1 partner ready
      09:20:00 RO1 partner ready
      09:30:00 RO1 A link a up`);
    expect([state, since?.time, evidence.map((l) => l.line)]).toEqual(['ready', nine + 600_000, [2]]);
  });
  test('is not ready since the loss', async () => {
    const { state, since, to } = await health(`09:00:00 RO1 partner ready
      09:10:00 RO1 partner not ready
      09:12:00 RO1 A link a up`);
    expect([state, since?.time, to]).toEqual(['not-ready', nine + 600_000, nine + 720_000]);
  });
  test('is flapping while a spell has not died down, with the losses of the spell', async () => {
    // Five losses in eight minutes: the penalty of the last is above the cut-off of 2 (design.md, section 4).
    const { state, losses, evidence } = await health(
      [0, 2, 4, 6, 8]
        .map((m) => `09:0${m}:00 RO1 partner not ready\n09:0${m}:30 RO1 partner ready`)
        .join('\n'),
    );
    expect([state, losses, evidence.map((l) => l.line)]).toEqual(['flapping', 5, [1, 3, 5, 7, 9]]);
  });
  test('is not known where no log says whether the partner was ready', async () => {
    const { state, since } = await health('09:00:00 RO1 A role active\n09:10:00 RO1 A link a up');
    expect([state, since]).toEqual(['unknown', null]);
  });
  test('has links and firmware as spans, and marks with the lines they rest on', async () => {
    const { spans, marks } = await health(`09:00:00 RO1 B firmware 6.2.0
      09:05:00 RO1 B link a up
      09:10:00 RO1 B module restart
      09:15:00 RO1 B firmware 6.4.1
      09:20:00 RO1 B link a down
      09:30:00 RO1 partner not ready`);
    expect(
      spans.map((s) => [s.half, s.signal, s.value, (s.from - nine) / 60_000, (s.to - nine) / 60_000]),
    ).toEqual([
      ['B', 'firmware', '6.2.0', 0, 15],
      ['B', 'firmware', '6.4.1', 15, 30],
      ['B', 'link-a', 'up', 5, 20],
      ['B', 'link-a', 'down', 20, 30],
    ]);
    expect(marks.map((m) => [m.what, m.half, m.evidence.map((l) => l.line)])).toEqual([
      ['restart', 'B', [3]],
      // Read off the change of the firmware: no log says it (design.md, section 4).
      ['reflash end', 'B', [4]],
      ['partner lost', null, [6]],
    ]);
  });

  test('says nothing of the links of an empty place', async () => {
    const { spans } = await health(`09:00:00 RO1 B link a up
      09:10:00 RO1 B module removed
      09:10:00 RO1 B link a down
      09:20:00 RO1 B module inserted
      09:20:30 RO1 B link a up
      09:30:00 RO1 A link a up`);
    const ofB = spans
      .filter((s) => s.half === 'B')
      .map((s) => [s.value, (s.from - nine) / 1000, (s.to - nine) / 1000]);
    expect(ofB).toEqual([
      ['up', 0, 600],
      ['down', 1200, 1230],
      ['up', 1230, 1800],
    ]);
  });

  test('is ready without a begin where a poll first read it so', async () => {
    const poll = pollText(['09:00:00', '09:30:00'], 10, [['RO1', 'partner-ready', ['09:00:00', 'yes']]]);
    const [found] = healthOfPairs(await analyseTexts({ 'poll.csv': poll }));
    expect([found?.state, found?.since]).toEqual(['ready', null]);
  });

  test('is ready again once a spell of flapping has died down, half an hour after its last loss', async () => {
    const losses = [0, 2, 4].map((m) => `09:0${m}:00 RO1 partner not ready\n09:0${m}:30 RO1 partner ready`);
    expect((await health([...losses, '09:20:00 RO1 configuration current'].join('\n'))).state).toBe(
      'flapping',
    );
    expect((await health([...losses, '10:00:00 RO1 configuration current'].join('\n'))).state).toBe('ready');
  });

  test('does not count planned losses for flapping', async () => {
    const losses = [0, 2, 4].map(
      (m) => `09:0${m}:00 RO1 B reflash start
        09:0${m}:00 RO1 partner not ready
        09:0${m}:30 RO1 B reflash end
        09:0${m}:50 RO1 partner ready`,
    );
    const { state } = await health(
      ['08:59:00 RO1 A role active', '08:59:00 RO1 B role standby', ...losses].join('\n'),
    );
    expect(state).toBe('ready');
  });

  test('names what each half holds where the log ends', async () => {
    const { halves, pair, from, to } = await health(`09:00:00 RO1 A role active
      09:00:00 RO1 B role standby
      09:00:00 RO1 A model Tern-4
      09:00:00 RO1 B firmware 6.2.0
      09:10:00 RO1 B firmware 6.4.1`);
    expect([pair, from, to]).toEqual(['RO1', nine, nine + 600_000]);
    expect(halves).toEqual([
      { half: 'A', role: 'active', model: 'Tern-4', firmware: null },
      { half: 'B', role: 'standby', model: null, firmware: '6.4.1' },
    ]);
  });

  test('marks losses by what brought them, and switchovers, in the order of time', async () => {
    const { marks } = await health(`09:00:00 RO1 A role active
      09:00:00 RO1 B role standby
      09:00:00 RO1 partner ready
      09:05:00 RO1 B module removed
      09:05:00 RO1 partner not ready
      09:07:00 RO1 B module inserted
      09:09:00 RO1 partner ready
      09:15:00 RO1 B module restart
      09:15:01 RO1 partner not ready
      09:17:00 RO1 partner ready
      09:20:00 RO1 A role standby
      09:20:00 RO1 B role active
      09:25:00 RO1 partner not ready`);
    expect(marks.map((m) => `${(m.time - nine) / 60_000} ${m.what}`)).toEqual([
      '0 partner ready',
      '5 removed',
      '5 partner not ready, in planned work',
      '7 inserted',
      '9 partner ready',
      '15 restart',
      `${15 + 1 / 60} partner not ready, after a restart`,
      '17 partner ready',
      '20 switchover',
      '25 partner lost',
    ]);
  });

  test('marks a note with its text', async () => {
    const log = journalText('09:00:00 RO1 B module removed\n09:30:00 RO1 partner ready');
    const [found] = healthOfPairs(
      await analyseTexts({
        'ro1.log': log,
        'notes.txt': 'Pair RO1\n2026-03-14\n09:02 pulled standby from slot B\n',
      }),
    );
    expect(found?.marks.map((m) => m.what)).toContain('09:02 pulled standby from slot B');
  });

  test('has no span where nothing is reported any more', async () => {
    const poll = pollText(['09:00:00', '09:30:00'], 10, [
      ['RO1-B', 'firmware', ['09:00:00', '6.2.0'], ['09:10:00', '']],
    ]);
    const [found] = healthOfPairs(await analyseTexts({ 'poll.csv': poll }));
    expect(found?.spans.map((s) => [s.value, s.from - nine, s.to - nine])).toEqual([['6.2.0', 0, 600_000]]);
  });

  test('marks no first reading: it is no change', async () => {
    const poll = pollText(['09:00:00', '09:30:00'], 10, [
      ['RO1', 'partner-ready', ['09:00:00', 'yes'], ['09:10:00', 'no']],
    ]);
    const [found] = healthOfPairs(await analyseTexts({ 'poll.csv': poll }));
    expect(found?.marks.map((m) => m.what)).toEqual(['partner lost']);
  });
});
