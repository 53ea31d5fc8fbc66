/** The counts of `npm run swaps` say what is wrong with an answer that is known to be wrong. */
import { beforeAll, describe, expect, test } from 'vitest';
import type { CheckStatus, Swap, Verdict } from '../../src/vocabulary.ts';
import type { CheckId } from '../support/stories/check-rules.ts';
import type { Source } from '../support/stories/dressing.ts';
import { dress } from '../support/stories/dressings.ts';
import { faults } from '../support/stories/faults.ts';
import { swapStory } from '../support/stories/swap-story.ts';
import { checkIds } from '../support/stories/truth.ts';
import { boundsOf } from '../support/swaps/bounds.ts';
import { isHidden } from '../support/swaps/is-hidden.ts';
import { judgeSwap } from '../support/swaps/judge-swap.ts';
import { countSwaps } from '../support/swaps/swaps.ts';
import { tallyText } from '../support/swaps/tally-text.ts';
import { verifyFiles } from '../support/verify-files.ts';

const good = swapStory(1, null);
const configured = swapStory(1, faults.find((f) => f.id === 'configuration-pending') ?? null);
const journal = dress(good.story, 1, 'journal');

let real: Swap;
beforeAll(async () => {
  const [swap] = (await verifyFiles(journal.files, null)).swaps;
  if (swap === undefined) throw new Error('The journal shows no swap.');
  real = swap;
});

/** An answer in which every check passes but one. */
function saying(verdict: Verdict, id?: CheckId, status?: CheckStatus): Swap {
  const [model] = real.checks;
  if (model === undefined) throw new Error('No check was judged.');
  const checks = checkIds.flatMap((name) => {
    if (name !== id) return [{ ...model, id: name, status: 'pass' as const }];
    return status === undefined ? [] : [{ ...model, id: name, status }];
  });
  return { ...real, verdict, checks };
}

const broken = 'configuration-current';

describe('an answer', () => {
  test('that passes what is broken is a false verified and a false pass', () => {
    expect(judgeSwap(configured, journal, [saying('verified')])).toEqual([
      { kind: 'false verified', about: broken },
      { kind: 'false pass', about: broken },
    ]);
  });
  test('that does not judge what is broken is a false verified', () => {
    expect(judgeSwap(configured, journal, [saying('verified', broken)])).toEqual([
      { kind: 'false verified', about: broken },
    ]);
  });
  test('that says what is broken was not observed is a lesser thing', () => {
    expect(judgeSwap(configured, journal, [saying('verified', broken, 'not-observed')])).toEqual([
      { kind: 'verified, break not observed', about: broken },
    ]);
  });
  test('that fails what is broken, or leaves it open, is right', () => {
    expect(judgeSwap(configured, journal, [saying('not-verified', broken, 'fail')])).toEqual([]);
    expect(judgeSwap(configured, journal, [saying('inconclusive', broken, 'inconclusive')])).toEqual([]);
  });
  test('that fails what holds is a false fail, and of a good swap a false not-verified', () => {
    expect(judgeSwap(good, journal, [saying('not-verified', 'soaked', 'fail')])).toEqual([
      { kind: 'false not-verified', about: 'soaked' },
      { kind: 'false fail', about: 'soaked' },
    ]);
    expect(judgeSwap(configured, journal, [saying('not-verified', 'soaked', 'fail')])).toEqual([
      { kind: 'false pass', about: broken },
      { kind: 'false fail', about: 'soaked' },
    ]);
  });
  test('without a swap, or with two, is counted as that', () => {
    expect(judgeSwap(good, journal, [])).toEqual([{ kind: 'no swap found', about: 'good' }]);
    expect(judgeSwap(good, journal, [real, real])).toEqual([{ kind: 'several swaps found', about: 'good' }]);
  });
});

describe('files that do not tell all', () => {
  const without = (...untold: string[]): typeof journal => ({
    ...journal,
    sources: journal.sources.map((s) => ({
      ...s,
      signals: new Set([...s.signals].filter((signal) => !untold.includes(signal))),
    })),
  });
  const nothing = without('serial', 'model', 'removed', 'inserted');

  test('show no swap by an absence alone', () => {
    expect(judgeSwap(good, nothing, [])).toEqual([]);
    expect(judgeSwap(good, nothing, [saying('verified')])).toEqual([
      { kind: 'swap found that no file tells', about: 'verified' },
    ]);
    expect(judgeSwap(good, without('model', 'removed'), [])).toEqual([
      { kind: 'no swap found', about: 'good' },
    ]);
  });
  test('may make a bring-up seem too long where they tell of no reflash', () => {
    const withReflash = [2, 3, 4, 5, 6, 7]
      .map((seed) => swapStory(seed, null))
      .find(({ truth }) => truth.bringUps.some((b) => b.cause === 'reflash'));
    const late = saying('not-verified', 'light-steady', 'fail');
    if (withReflash === undefined) throw new Error('There is no reflash.');
    expect(judgeSwap(withReflash, without('reflash-end', 'firmware'), [late])).toEqual([]);
    expect(judgeSwap(withReflash, without('reflash-end'), [late]).map((m) => m.kind)).toEqual([
      'false not-verified',
      'false fail',
    ]);
  });
});

describe('what breaks a check', () => {
  const source = (kind: Source['kind'], spacingSeconds: number, ...signals: string[]): Source => ({
    file: 'x',
    kind,
    signals: new Set(signals),
    spacingSeconds,
    resolutionSeconds: 0,
    aheadSeconds: 0,
  });
  const soaked = { id: 'soaked', holds: false, broken: { signals: ['partner-ready'], seconds: 30 } } as const;
  const atFault = {
    id: 'nothing-at-fault',
    holds: false,
    broken: { signals: ['fault'], seconds: null },
  } as const;
  test.each([
    ['a loss of 30 s, polled every 30 s', soaked, [source('poll', 30, 'partner-ready')], true],
    ['a loss of 30 s, polled every 29 s', soaked, [source('poll', 29, 'partner-ready')], false],
    [
      'a loss of 30 s in a journal',
      soaked,
      [source('poll', 60, 'partner-ready'), source('journal', 0, 'partner-ready')],
      false,
    ],
    ['a loss that nothing tells', soaked, [source('journal', 0, 'light')], false],
    ['a fault where only supplies are told', atFault, [source('poll', 10, 'supply')], true],
    ['a fault that is told', atFault, [source('poll', 10, 'supply'), source('journal', 0, 'fault')], false],
    ['a fault where none of the three is told', atFault, [source('journal', 0, 'role')], false],
  ] as const)('%s', (_name, check, sources, hidden) => {
    expect(isHidden(check, sources)).toBe(hidden);
  });
});

describe('bounds', () => {
  const [replacement] = good.truth.replacements;
  const removed = replacement?.removed ?? 0;
  const removedFound = (time: number, earliest: number, resolutionSeconds: number): string | undefined => {
    const [first, ...others] = real.halves;
    const swap = { ...real, halves: [{ ...first, removedAt: { time, earliest } }, ...others] as const };
    const sources = journal.sources.map((s) => ({ ...s, resolutionSeconds }));
    return boundsOf(good, { ...journal, sources }, swap).find((b) => b.kind === 'removedAt')?.found;
  };
  test('hold an instant within them, both ends included', () => {
    expect(removedFound(removed, removed, 0)).toBe('inside');
    expect(removedFound(removed + 5000, removed, 0)).toBe('inside');
    expect(removedFound(removed + 5000, removed + 1, 0)).toBe('outside');
    expect(removedFound(removed - 1, removed - 5000, 0)).toBe('outside');
  });
  test('reach a second further where stamps have no decimals', () => {
    expect(removedFound(removed - 1000, removed - 1000, 1)).toBe('inside');
    expect(removedFound(removed - 1001, removed - 1001, 1)).toBe('outside');
  });
  test('that are not reported are counted as that', () => {
    const bare = { ...real, switchovers: [], bringUps: [] };
    const found = boundsOf(good, journal, bare).filter((b) => b.kind === 'bring-up start');
    expect(found.map((b) => b.found)).toEqual(good.truth.bringUps.map(() => 'not reported'));
  });
});

test('a program that verifies whatever it is given is found out on every broken swap', async () => {
  const seeds = Array.from({ length: 60 }, (_, seed) => seed);
  const tally = await countSwaps(seeds.length, 0, async () => [saying('verified')]);
  const truly = seeds.filter((seed) => swapStory(seed).truth.checks.some((c) => c.holds === false));
  const counted = ['false verified', 'verified, break hidden'].flatMap((kind) => [
    ...(tally.misses.get(kind)?.values() ?? []),
  ]);
  expect(counted.flat().sort((a, b) => a - b)).toEqual(truly);
  expect(tally.misses.has('false not-verified')).toBe(false);
  expect(tallyText(tally)).toMatch(/^false verified: [1-9]/m);
});
