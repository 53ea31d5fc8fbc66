import { describe, expect, test } from 'vitest';
import { hasHeld, mayHaveHeld, stretchesOf } from '../../../src/timeline/holding.ts';
import { defaultRules } from '../../../src/timeline/rules.ts';
import { pollText } from '../../support/clean-swap.ts';
import { factsOfPair, secondsOf, type Told, whenOf } from '../../support/pair-facts.ts';
import { journalText } from '../../support/read-text.ts';

type Values = readonly (readonly [string, string])[];

/** Readiness polled every so many seconds from 10:00:00 to 10:30:00; half B restarts at 10:00:00. */
const polled = (everySeconds: number, ...values: Values): Told => ({
  'poll.csv': pollText(['10:00:00', '10:30:00'], everySeconds, [
    ['RO1', 'partner-ready', ['10:00:00', 'no'], ...values],
  ]),
  'ro1.log': journalText('10:00:00 RO1 B module restart\n10:30:00 RO1 A link a up'),
});

/** Every stretch with a ready partner: when it began, and whether it must have held for a minute, or may have. */
async function stretches(story: Told): Promise<readonly string[]> {
  const { timeline } = await factsOfPair(story);
  return stretchesOf(timeline, null, 'partner-ready', 'yes').map((s) => {
    const held = hasHeld(s, defaultRules) ? 'must' : mayHaveHeld(s, defaultRules) ? 'may' : 'not';
    return `${whenOf(s.start)} ${held}${s.isSeen ? '' : ' unseen'}`;
  });
}
/** From the restart to a ready that held: the bounds, and what became of it. */
async function held(story: Told): Promise<string> {
  const last = (await factsOfPair(story)).bringUps.at(-1);
  return last === undefined ? 'none' : `${secondsOf(last.held)} ${last.outcome} ${last.settledSeconds}`;
}

describe('a state that a poll read for a while', () => {
  test('every 90 s: one reading may have held for a minute, two must have', async () => {
    // Ready in (10:01:30, 10:03:00], not ready any more in (10:03:00, 10:04:30]: for 0 s to 180 s.
    const once = polled(90, ['10:03:00', 'yes'], ['10:04:30', 'no']);
    expect(await stretches(once)).toEqual(['10:01:30..10:03:00 may']);
    // Ready again in (10:07:30, 10:09:00], for good. To the first that may have held: 90 s at least.
    const again = polled(90, ['10:03:00', 'yes'], ['10:04:30', 'no'], ['10:09:00', 'yes']);
    expect(await stretches(again)).toEqual(['10:01:30..10:03:00 may', '10:07:30..10:09:00 must']);
    expect(await held(again)).toBe('90-540 settled 540');
    const twice = polled(90, ['10:03:00', 'yes'], ['10:06:00', 'no']);
    expect(await stretches(twice)).toEqual(['10:01:30..10:03:00 must']);
    expect(await held(twice)).toBe('90-180 settled 180');
  });

  test('every 50 s: one reading and two may have held, three must have', async () => {
    // One: for 0 s to 100 s. Two, 50 s apart: for 50 s to 150 s. Three: for 100 s at least.
    expect(await stretches(polled(50, ['10:05:00', 'yes'], ['10:05:50', 'no']))).toEqual([
      '10:04:10..10:05:00 may',
    ]);
    expect(await stretches(polled(50, ['10:05:00', 'yes'], ['10:06:40', 'no']))).toEqual([
      '10:04:10..10:05:00 may',
    ]);
    expect(await stretches(polled(50, ['10:05:00', 'yes'], ['10:07:30', 'no']))).toEqual([
      '10:04:10..10:05:00 must',
    ]);
  });

  test('every 10 s: not in four readings, perhaps in six, surely in seven', async () => {
    // Four: for 30 s to less than 50 s. Six: for 50 s to less than 70 s. Seven: for 60 s at least.
    const until = (lost: string): Promise<readonly string[]> =>
      stretches(polled(10, ['10:05:00', 'yes'], [lost, 'no']));
    expect(await until('10:05:40')).toEqual(['10:04:50..10:05:00 not']);
    expect(await until('10:06:00')).toEqual(['10:04:50..10:05:00 may']);
    expect(await until('10:06:10')).toEqual(['10:04:50..10:05:00 must']);
  });

  test('settles nothing where none must have held', async () => {
    const once = polled(90, ['10:03:00', 'yes'], ['10:04:30', 'no']);
    // Watched to the end of the log; ready from 10:01:30 on, and held, at the earliest.
    expect(await held(once)).toBe('90- unfinished null');
    const short = polled(10, ['10:05:00', 'yes'], ['10:05:40', 'no']);
    expect(await held(short)).toBe('1800- lost null');
  });
});

describe('a state in a journal', () => {
  const log = (...lines: readonly string[]): readonly string[] => [
    '10:00:00 RO1 partner not ready',
    ...lines,
    '10:30:00 RO1 A link a up',
  ];

  test('holds at sixty seconds and not a millisecond before', async () => {
    expect(await stretches(log('10:05:00 RO1 partner ready', '10:06:00 RO1 partner not ready'))).toEqual([
      '10:05:00 must',
    ]);
    expect(await stretches(log('10:05:00 RO1 partner ready', '10:05:59.999 RO1 partner not ready'))).toEqual([
      '10:05:00 not',
    ]);
  });

  test('with stamps of whole seconds may have held at 59 s, and must have at 61 s', async () => {
    const whole = (lost: string): Promise<readonly string[]> =>
      stretches({
        'ro1.log': journalText(
          log('10:05:00 RO1 partner ready', `${lost} RO1 partner not ready`).join('\n'),
        ).replaceAll('.000Z', 'Z'),
      });
    expect(await whole('10:05:58')).toEqual(['10:05:00 not']);
    expect(await whole('10:05:59')).toEqual(['10:05:00 may']);
    expect(await whole('10:06:00')).toEqual(['10:05:00 may']);
    expect(await whole('10:06:01')).toEqual(['10:05:00 must']);
  });

  test('that the log ends too early to see may have held', async () => {
    const lines = ['10:00:00 RO1 partner not ready', '10:05:00 RO1 partner ready'];
    expect(await stretches([...lines, '10:05:59.999 RO1 A link a up'])).toEqual(['10:05:00 may']);
    expect(await stretches([...lines, '10:06:00 RO1 A link a up'])).toEqual(['10:05:00 must']);
  });
});

describe('a state that was not observed for a while', () => {
  const gap = ['10:10:10', '10:19:50'] as const;
  const poll = (...values: Values): Told => ({
    'poll.csv': pollText(
      ['10:00:00', '10:30:00'],
      10,
      [['RO1', 'partner-ready', ['10:00:00', 'no'], ...values]],
      [gap],
    ),
  });

  test('and was the same on either side is two stretches: it may have been broken in between', async () => {
    expect(await stretches(poll(['10:05:00', 'yes']))).toEqual([
      '10:04:50..10:05:00 must',
      '10:10:00..10:20:00 must',
    ]);
  });

  test('and was not so on either side may have been so in between', async () => {
    expect(await stretches(poll())).toEqual(['10:10:00..10:20:00 may unseen']);
  });

  test('and was so only before may have ended, been so anew and ended again', async () => {
    expect(await stretches(poll(['10:05:00', 'yes'], ['10:20:00', 'no']))).toEqual([
      '10:04:50..10:05:00 must',
      '10:10:00..10:20:00 may unseen',
    ]);
  });

  test('and was so first afterwards may have been so from the begin of that time on', async () => {
    expect(await stretches(poll(['10:20:00', 'yes']))).toEqual(['10:10:00..10:20:00 must']);
  });
});
