import { describe, expect, test } from 'vitest';
import { boutsSentences, forecastComputed, forecastSentence } from '../../../src/report/ahead-words.ts';
import type { BoutsAhead, Fleet, Forecast } from '../../../src/vocabulary.ts';
import { emptyFleet } from '../../support/empty-fleet.ts';

/** Of ten swaps, 0.7 h. */
function campaign(given: Partial<Forecast>): Fleet {
  const step = { swaps: 10, hours: 0.7, low: 0.65, high: 0.76 };
  return {
    ...emptyFleet,
    forecast: { ...step, reflashes: 24, failed: 0, needed: 20, confidence: 0.9, steps: [], ...given },
  };
}

describe('the sentence about the next swaps', () => {
  test('gives the limits, and says that none failed where none did', () =>
    expect(forecastSentence(campaign({}))).toBe(
      'Expect 39 min 00 s to 45 min 36 s of bring-up for the next 10 swaps (90 % prediction), if none has to be repeated: none of 24 reflashes failed so far.',
    ));

  test('says how many failed, and speaks of one swap as of one', () =>
    expect(forecastSentence(campaign({ swaps: 1, failed: 2 }))).toBe(
      'Expect 39 min 00 s to 45 min 36 s of bring-up for the next swap (90 % prediction), repeats included: 2 of 24 reflashes failed so far.',
    ));

  test('of few reflashes gives no limits and says how many those need', () =>
    expect(forecastSentence(campaign({ low: null, high: null, reflashes: 4 }))).toBe(
      'Going by 4 reflashes, expect about 42 min 00 s of bring-up for the next 10 swaps; 20 are needed for a prediction interval.',
    ));

  test('of reflashes that hardly differ says that', () =>
    expect(forecastSentence(campaign({ low: null, high: null }))).toContain(
      'their times are too alike for a prediction interval',
    ));

  test('without a reflash says what is missing', () =>
    expect(forecastSentence(emptyFleet)).toContain(
      'no reflash in the logs was followed by a partner that stayed ready',
    ));
});

describe('how a forecast was computed', () => {
  // 1 - 0.05^(1/24) = 0.117: up to 12 in 100.
  test('says how many may fail where none did', () => {
    const said = forecastComputed(campaign({}));
    expect(said).toContain('n = 24 reflashes, none of which failed');
    expect(said).toContain('may be up to 12 %');
  });

  test('says nothing of that where some did', () => {
    const said = forecastComputed(campaign({ failed: 2 }));
    expect(said).toContain('n = 24 reflashes, 2 of which failed');
    expect(said).not.toContain('might fail');
  });
});

describe('the sentence about the next year', () => {
  const pair = { pair: 'RO1', bouts: 24, value: 4.8, low: 1, high: 10 };
  const fleetOf = (given: Partial<BoutsAhead>): Fleet => ({
    ...emptyFleet,
    boutsNextYear: {
      bouts: 40,
      observedSeconds: 1,
      value: 20,
      low: 12,
      high: 31,
      pairs: [pair, pair],
      ...given,
    },
  });

  test.each([
    [{}, 'Expect 12 to 31 bouts of losses at 2 pairs in the next year (95 % prediction).'],
    [{ low: 0, high: 4 }, 'Expect up to 4 bouts of losses at 2 pairs in the next year (95 % prediction).'],
    [{ low: 0, high: 0 }, 'Expect no bouts of losses at 2 pairs in the next year (95 % prediction).'],
    [{ pairs: [pair] }, 'Expect 12 to 31 bouts of losses at RO1 in the next year (95 % prediction).'],
  ])('of %j', (given, said) => expect(boutsSentences(fleetOf(given))).toEqual([said]));

  test('is not there where no pair was observed for long enough', () =>
    expect(boutsSentences(emptyFleet)).toEqual([]));
});
