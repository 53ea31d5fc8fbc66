/** What the first sentence says of how a pair stands, and since when. */
import { describe, expect, test } from 'vitest';
import { diagnose } from '../../../src/pipeline.ts';
import { answerOf } from '../../support/check-cause.ts';
import { type Polled, pollText } from '../../support/clean-swap.ts';
import { analyseTexts, journalText } from '../../support/read-text.ts';

const roles = ['10:00:00 RO1 A role active', '10:00:00 RO1 B role standby'];
const end = '10:30:00 RO1 A light off';

/** The answer to a journal of a pair that has been ready since 10:00, and the lines that follow. */
async function answer(...lines: readonly string[]): Promise<readonly string[]> {
  const all = [...roles, '10:00:00 RO1 partner ready', ...lines, end];
  return answerOf(diagnose(await analyseTexts({ 'a.log': journalText([...all].sort().join('\n')) }), null));
}

describe('a ready partner of which nothing tells any more', () => {
  const after = '; nothing was logged about it in the 10 min 00 s after that.';
  test.each([
    ['10:20:00 RO1 B module restart', 'half B restarted'],
    ['10:20:00 RO1 B module inserted', 'a module was put into half B'],
    ['10:20:00 RO1 B reflash start', 'half B was reflashed'],
  ])('%s', async (line, what) => {
    const [first, , third] = await answer(line);
    expect(first).toBe(`RO1 had a ready partner until 10:20:00, when ${what}${after}`);
    expect(third).toBe('The logs do not show whether anything is wrong now.');
  });
  test('since its half was removed, though a module was put in again', async () => {
    expect((await answer('10:20:00 RO1 B module removed', '10:25:00 RO1 B module inserted'))[0]).toBe(
      `RO1 had a ready partner until 10:20:00, when half B was removed${after}`,
    );
  });
  test('is ready again from the next line on that says so', async () => {
    const restart = [
      '10:05:00 RO1 B module restart',
      '10:06:00 RO1 partner ready',
      '10:10:00 RO1 partner ready',
    ];
    expect((await answer(...restart))[0]).toBe(
      'RO1 has had a ready partner for the last 24 min 00 s; before that the partner was lost once with a restart, at 10:05:00.',
    );
  });
  test('is not one of which only the active half restarted', async () => {
    expect(await answer('10:20:00 RO1 A module restart')).toEqual([
      'RO1 has had a ready partner for the last 30 min 00 s.',
      'No trouble found with RO1 at the end of its log.',
    ]);
  });
});

describe('no ready partner, though no line says so', () => {
  test('since a half was removed', async () => {
    expect((await answer('10:20:00 RO1 B module removed'))[0]).toBe(
      'RO1 has had no ready partner for 10 min 00 s, since half B was removed at 10:20:00; no attempt was logged in that time; half B is absent.',
    );
  });
  test('since its second module was seen no more', async () => {
    expect((await answer('10:20:00 RO1 partner absent'))[0]).toBe(
      'RO1 has had no ready partner for 10 min 00 s, since 10:20:00; no attempt was logged in that time; half B is absent.',
    );
  });
  test('a removal after the loss is said too, and that it explains it', async () => {
    const lines = await answer('10:10:00 RO1 partner not ready', '10:20:00 RO1 B module removed');
    expect(lines.slice(0, 2)).toEqual([
      'RO1 has had no ready partner for 20 min 00 s, since 10:10:00; no attempt was logged in that time; half B has been out since its removal at 10:20:00.',
      'No module is in that half, so there is nothing to synchronise; no other cause reaches 10 to 1.',
    ]);
  });
});

describe('a second module that drops out', () => {
  const out = (from: string, to: string): readonly string[] => [
    `${from} RO1 partner absent`,
    `${to} RO1 partner present`,
  ];
  test('while the partner is said to be ready is told: when, and how often', async () => {
    const ready =
      'RO1 has had a ready partner for the last 30 min 00 s, though its second module dropped out';
    expect((await answer(...out('10:10:00', '10:11:00')))[0]).toBe(
      `${ready} once in that time, at 10:10:00.`,
    );
    expect((await answer(...out('10:10:00', '10:11:00'), ...out('10:15:00', '10:16:00')))[0]).toBe(
      `${ready} twice in that time, from 10:10:00 on.`,
    );
  });
  test('before the partner was ready again is not', async () => {
    const lost = ['10:05:00 RO1 partner not ready', '10:06:00 RO1 partner ready'];
    expect((await answer(...out('10:02:00', '10:03:00'), ...lost))[0]).toBe(
      'RO1 has had a ready partner for the last 24 min 00 s; before that the partner was lost once, at 10:05:00.',
    );
  });
  test('where readiness was never logged is all that is said, and nothing is called ready', async () => {
    const seen = async (to: string): Promise<readonly string[]> => {
      const lines = [...roles, '10:00:00 RO1 partner present', ...out('10:10:00', to), end];
      const files = { 'a.log': journalText([...lines].sort().join('\n')) };
      return answerOf(diagnose(await analyseTexts(files), null)).slice(0, 3);
    };
    const [just, , unknown] = await seen('10:29:30');
    expect([just, unknown]).toEqual([
      'RO1 has seen a second module for the last 30 s; before that the module dropped out once, at 10:10:00; readiness was never logged.',
      'The logs do not show whether anything is wrong now.',
    ]);
    expect((await seen('10:30:00'))[0]).toBe(
      'RO1 saw a second module again in the last second of its log, at 10:30:00; before that the module dropped out once, at 10:10:00; readiness was never logged.',
    );
    expect(await seen('10:12:00')).toEqual([
      'RO1 has seen a second module for the last 18 min 00 s; before that the module dropped out once, at 10:10:00; readiness was never logged.',
      'In 30 min 00 s of log no attempt was logged.',
      'The logs do not show whether anything is wrong now.',
    ]);
  });
});

describe('a partner that has not held yet', () => {
  test('is said to be so', async () => {
    const back = ['10:10:00 RO1 partner not ready', '10:29:30 RO1 partner ready'];
    expect((await answer(...back))[0]).toBe(
      'RO1 has had a ready partner for the last 30 s, less than the 1 min 00 s needed; before that the partner was lost once, at 10:10:00.',
    );
  });
  test('within the second in which it came back: when that was, and how long it must hold', async () => {
    expect((await answer('10:10:00 RO1 partner not ready', '10:30:00 RO1 partner ready'))[0]).toBe(
      'RO1 got a ready partner in the last second of its log, at 10:30:00; it must stay ready for 1 min 00 s; before that the partner was lost once, at 10:10:00.',
    );
  });
  test('a second after its loss has had none for that second', async () => {
    expect((await answer('10:29:59 RO1 partner not ready'))[0]).toMatch(
      /^RO1 has had no ready partner for 1\.0 s, since 10:29:59; no attempt was logged in that time;/,
    );
  });
  test('within the second of its loss: that it was lost, and no time that has lasted', async () => {
    expect((await answer('10:30:00 RO1 partner not ready'))[0]).toBe(
      'RO1 lost its ready partner in the last second of its log, at 10:30:00; no attempt was logged; half B is at stage starting.',
    );
  });
});

describe('what a poll of readiness tells', () => {
  const polled = async (
    span: readonly [string, string],
    values: readonly (readonly [string, string])[],
    gaps: readonly (readonly [string, string])[] = [],
    ...more: readonly string[]
  ): Promise<readonly string[]> => {
    const reading: Polled = ['RO1', 'partner-ready', ...values];
    const files = {
      'a.log': journalText([...roles, ...more, end].join('\n')),
      'poll.csv': pollText(span, 60, [reading], gaps),
    };
    return answerOf(diagnose(await analyseTexts(files), null));
  };
  test('ends with its last reading where the log goes on', async () => {
    expect(await polled(['10:00:00', '10:10:00'], [['10:00:00', 'yes']])).toEqual([
      'RO1 had a ready partner when last read, at 10:10:00, for 10 min 00 s at least by then.',
      'No trouble found with RO1 then; nothing was logged about it in the 20 min 00 s after that.',
    ]);
    const lost = await polled(
      ['10:00:00', '10:10:00'],
      [
        ['10:00:00', 'yes'],
        ['10:05:00', 'no'],
      ],
    );
    expect(lost[0]).toBe(
      'RO1 had no ready partner when last read, at 10:10:00, for 5 min 00 s by then, since 10:05:00 (10:04:00 at the earliest); no attempt was logged in that time; half B is at stage starting.',
    );
  });
  test('was so before the log began where its first reading says so', async () => {
    expect((await polled(['10:00:00', '10:30:00'], [['10:00:00', 'no']]))[0]).toBe(
      'RO1 has had no ready partner for 30 min 00 s at least, since before its log began; no attempt was logged in that time; half B is at stage starting.',
    );
  });
  test('that was ready before a short log began is not said to have yet to hold', async () => {
    const files = {
      'poll.csv': pollText(['10:00:00', '10:00:40'], 20, [['RO1', 'partner-ready', ['10:00:00', 'yes']]]),
    };
    expect(answerOf(diagnose(await analyseTexts(files), null))[0]).toBe(
      'RO1 has had a ready partner for the last 40 s at least.',
    );
  });
  test('leaves out what was not read for longer than three spacings', async () => {
    // No reading between 10:09 and 10:20.
    const gap = [['10:10:00', '10:19:00']] as const;
    expect((await polled(['10:00:00', '10:30:00'], [['10:00:00', 'yes']], gap))[0]).toBe(
      'RO1 has had a ready partner for the last 30 min 00 s at least (11 min 00 s of it not observed).',
    );
  });
  test('goes on after a restart: the partner was still read as ready', async () => {
    const restart = '10:20:00 RO1 B module restart';
    expect((await polled(['10:00:00', '10:30:00'], [['10:00:00', 'yes']], [], restart))[0]).toBe(
      'RO1 has had a ready partner for the last 30 min 00 s at least.',
    );
  });
});
