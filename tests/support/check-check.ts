import { describe, expect, test } from 'vitest';
import { defaultRules } from '../../src/timeline/rules.ts';
import type { Check } from '../../src/verify/check.ts';
import { findSwaps } from '../../src/verify/find-swaps.ts';
import { defaultVerifyLimits } from '../../src/verify/limits.ts';
import type { CheckStatus, Job } from '../../src/vocabulary.ts';
import { analyseSwap, type SwapStory } from './clean-swap.ts';

/** What a check says of a case. */
export interface Said {
  /** Its sentence, or the part of it that this case is about. */
  readonly says: string;
  /** Its evidence, in its order: the lines as they stand in their file. */
  readonly lines: readonly string[];
}

export interface CheckCase extends Said, SwapStory {
  readonly name: string;
  readonly status: CheckStatus;
  readonly job?: Job;
}

/** Runs a table of variants of the clean journal through one check; it must pass, fail and stay undecided. */
export function checkCheck(check: Check, clean: Said, cases: readonly CheckCase[]): void {
  const all: readonly CheckCase[] = [{ name: 'the clean swap', status: 'pass', ...clean }, ...cases];
  describe(check.id, () => {
    test('is tried both ways and undecided, no two cases alike', () => {
      const tried = new Set(all.map((c) => c.status));
      expect(tried).toContain('fail');
      expect(tried.has('inconclusive') || tried.has('not-observed')).toBe(true);
      const stories = all.map(({ name, status, says, lines, ...story }) => JSON.stringify(story));
      expect(new Set(stories).size).toBe(all.length);
    });
    for (const c of all) {
      test(`${c.status}: ${c.name}`, async () => {
        const { analysed, shown } = await analyseSwap(c);
        const swaps = analysed.facts.flatMap((f) =>
          findSwaps(f, { from: null, to: null }, c.job ?? null, defaultVerifyLimits, defaultRules),
        );
        expect(swaps).toHaveLength(1);
        const [outcome] = swaps.map((swap) => check.judge(swap));
        expect(outcome?.statement).toContain(c.says);
        expect(outcome?.status).toBe(c.status);
        expect(outcome?.statement).toMatch(/^[A-Z].*[.]$/);
        expect(outcome?.evidence.map(shown)).toEqual(c.lines);
      });
    }
  });
}
