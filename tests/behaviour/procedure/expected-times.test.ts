import { describe, expect, test } from 'vitest';
import { type Alike, expectedTime } from '../../../src/procedure/expected-times.ts';
import { factsOfPair } from '../../support/pair-facts.ts';

/** A restart every twenty minutes from 08:00 on, ready after so many seconds and then lost again by the next; `null`: never. */
function restarts(seconds: readonly (number | null)[], firmware = '6.4.1'): readonly string[] {
  const clock = (time: number): string => new Date(time * 1000).toISOString().slice(11, 19);
  const begin = 8 * 3600;
  return [
    `${clock(begin - 60)} RO1 A role active`,
    `${clock(begin - 60)} RO1 B role standby`,
    `${clock(begin - 60)} RO1 B model Tern-4`,
    `${clock(begin - 60)} RO1 B firmware ${firmware}`,
    ...seconds.flatMap((ready, index) => {
      const start = begin + 1200 * index;
      return [
        `${clock(start)} RO1 B module restart`,
        `${clock(start)} RO1 partner not ready`,
        ...(ready === null ? [] : [`${clock(start + ready)} RO1 partner ready`]),
      ];
    }),
    `${clock(begin + 1200 * seconds.length - 1)} RO1 A link a up`,
  ];
}

const alike: Alike = { model: 'Tern-4', firmware: '6.4.1', cause: 'restart' };

describe('how long a step takes here', () => {
  test('is the median and the 95th percentile of the bring-ups alike, with their number', async () => {
    // By hand: of 100, 110, 120, 130 and 140 s the third is the median; 95 in 100 are past the fourth, so the fifth.
    const facts = await factsOfPair(restarts([120, 100, 140, 110, 130]));
    expect(expectedTime([facts], alike, 'ready', null)).toEqual({ median: 120, p95: 140, n: 5 });
  });

  test('is not told of another model, firmware or cause, nor where either is not known', async () => {
    const facts = await factsOfPair(restarts([100, 110]));
    expect(expectedTime([facts], { ...alike, model: 'Tern-2' }, 'ready', null)).toBeNull();
    expect(expectedTime([facts], { ...alike, firmware: '6.2.0' }, 'ready', null)).toBeNull();
    expect(expectedTime([facts], { ...alike, cause: 'inserted' }, 'ready', null)).toBeNull();
    expect(expectedTime([facts], { ...alike, firmware: null }, 'ready', null)).toBeNull();
    expect(expectedTime([facts], alike, 'steady', null)).toBeNull();
  });

  test('counts the attempts that the next one cut short as never ready: what is not reached is null', async () => {
    // By hand: two of four were ready, at 100 and 110 s: half by 110 s, 95 in 100 never.
    const facts = await factsOfPair(restarts([100, null, 110, null, 120]).slice(0, -1));
    const all = facts.bringUps;
    expect(all).toHaveLength(5);
    // The last one still goes on and tells nothing of itself.
    expect(expectedTime([facts], alike, 'ready', all.at(-1) ?? null)).toEqual({
      median: 110,
      p95: null,
      n: 4,
    });
  });

  test('comes from the bring-ups of all pairs', async () => {
    const [one, other] = [await factsOfPair(restarts([100])), await factsOfPair(restarts([200, 300]))];
    expect(expectedTime([one, other], alike, 'ready', null)).toEqual({ median: 200, p95: 300, n: 3 });
  });

  test('of a reflash is from its logged start to its logged end', async () => {
    const facts = await factsOfPair([
      '08:00:00 RO1 A role active',
      '08:00:00 RO1 B role standby',
      '08:00:00 RO1 B model Tern-4',
      '08:00:00 RO1 B firmware 6.2.0',
      '08:10:00 RO1 B reflash start',
      '08:12:30 RO1 B reflash end',
      '08:12:40 RO1 B firmware 6.4.1',
      '08:14:00 RO1 partner ready',
      '08:20:00 RO1 A link a up',
    ]);
    expect(expectedTime([facts], { ...alike, cause: 'reflash' }, 'reflash', null)).toEqual({
      median: 150,
      p95: 150,
      n: 1,
    });
  });
});
