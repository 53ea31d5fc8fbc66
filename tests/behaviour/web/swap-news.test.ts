import { describe, expect, test } from 'vitest';
import type { SwapNow } from '../../../src/vocabulary.ts';
import { type SwapMoment, swapNews } from '../../../web/swap-news.ts';
import { exampleNow, hold } from '../../support/example-swap-now.ts';

function moment(seconds: number | null, other: Partial<SwapNow> = {}): SwapMoment {
  const now = exampleNow(other);
  return { now, wait: seconds === null ? null : { seconds, limitSeconds: 300, isPast: seconds > 300 } };
}

describe('what is announced of a swap', () => {
  test('is nothing while the same is awaited, nor when another pair is chosen', () => {
    expect(swapNews(null, moment(1))).toBeNull();
    expect(swapNews(moment(1), moment(2))).toBeNull();
    expect(swapNews(moment(301), moment(302))).toBeNull();
    expect(swapNews(moment(1), moment(301, { pair: 'RO2', holdPoint: hold('stop') }))).toBeNull();
  });

  test('is a limit that passes, at once and urgently', () => {
    expect(swapNews(moment(300), moment(301))).toEqual({
      words: 'The limit of 5:00 has passed. Awaited: the light of half B to be steady.',
      isUrgent: true,
    });
  });

  test('is stop, before anything else', () => {
    expect(swapNews(moment(300), moment(301, { holdPoint: hold('stop') }))).toEqual({
      words: 'Stop and call for support. The light of half B is flashing.',
      isUrgent: true,
    });
    expect(
      swapNews(moment(301, { holdPoint: hold('stop') }), moment(302, { holdPoint: hold('stop') })),
    ).toBeNull();
  });

  test('is a wait that ends, what is awaited next, and a hold point that is met', () => {
    const soak = { awaits: 'soak', half: null, says: 'a ready partner', holdPoint: hold('met') } as const;
    expect(swapNews(moment(240), moment(1, soak))).toEqual({
      words:
        'No longer awaited: the light of half B to be steady. Awaited now: a ready partner. Hold point before a switchover to half B: met.',
      isUrgent: false,
    });
    const over = { awaits: null, half: null, says: 'Pair RO1 is verified.', since: null };
    expect(swapNews(moment(1), moment(null, over))?.words).toBe(
      'No longer awaited: the light of half B to be steady. Pair RO1 is verified.',
    );
    expect(swapNews(moment(null, over), moment(1))?.words).toBe(
      'Awaited now: the light of half B to be steady.',
    );
  });
});
