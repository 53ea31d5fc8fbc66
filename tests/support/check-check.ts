import { describe, expect, test } from 'vitest';
import { defaultRules } from '../../src/timeline/rules.ts';
import type { Check } from '../../src/verify/check.ts';
import { findSwaps } from '../../src/verify/find-swaps.ts';
import { defaultVerifyLimits } from '../../src/verify/limits.ts';
import type { CheckStatus, Job } from '../../src/vocabulary.ts';
import { analyseTexts, journalText } from './read-text.ts';

export interface CheckCase {
  readonly name: string;
  readonly status: CheckStatus;
  /** A change of the clean journal: lines to leave out, and lines to add. */
  readonly without?: readonly string[];
  readonly plus?: readonly string[];
  /** Files of their own in place of the journal. */
  readonly files?: Readonly<Record<string, string>>;
  readonly job?: Job;
}

/** A swap of half B of RO1 as it should be, with a switchover, each fact once: every check holds on it. */
export const cleanJournal: readonly string[] = [
  '08:40:00  RO1 A  role active',
  '08:40:00  RO1 B  role standby',
  '08:40:00  RO1    partner ready',
  '08:40:00  RO1    configuration current',
  '08:40:00  RO1 A  firmware 6.4.1',
  '08:40:00  RO1 B  firmware 6.4.1',
  '08:40:00  RO1 A  model Tern-4',
  '08:40:00  RO1 B  model Tern-2',
  '08:40:00  RO1 B  serial T2-1',
  '08:40:00  RO1 A  link a up',
  '08:40:00  RO1 A  link b up',
  '08:40:00  RO1 B  link a up',
  '08:40:00  RO1 B  link b up',
  '09:00:00  RO1 B  module removed',
  '09:00:00  RO1    partner not ready',
  '09:00:00  RO1 B  role none',
  '09:02:00  RO1 B  module inserted',
  '09:02:00  RO1 B  role standby',
  '09:02:00  RO1 B  model Tern-4',
  '09:02:00  RO1 B  serial T4-2',
  '09:02:00  RO1 B  firmware 6.2.0',
  '09:02:00  RO1 B  light flashing',
  '09:03:00  RO1 B  reflash start',
  '09:05:00  RO1 B  reflash end',
  '09:05:00  RO1 B  firmware 6.4.1',
  '09:07:00  RO1    partner ready',
  '09:09:00  RO1 B  light steady',
  '09:20:00  RO1    switchover command',
  '09:20:01  RO1 A  role standby',
  '09:20:01.1  RO1 B  role active',
  '09:45:00  RO1    configuration current',
];

/** Runs a table of variants of the clean journal through one check; it must pass, fail and stay undecided. */
export function checkCheck(check: Check, cases: readonly CheckCase[]): void {
  describe(check.id, () => {
    test('is tried both ways and undecided', () => {
      const tried = new Set(cases.map((c) => c.status));
      expect(tried).toContain('fail');
      expect(tried.has('inconclusive') || tried.has('not-observed')).toBe(true);
    });
    test('holds on the clean swap', async () => {
      expect(await statusOf(check, { name: '', status: 'pass' })).toBe('pass');
    });
    for (const c of cases) {
      test(`${c.status}: ${c.name}`, async () => {
        expect(await statusOf(check, c)).toBe(c.status);
      });
    }
  });
}

async function statusOf(
  check: Check,
  { without = [], plus = [], files, job }: CheckCase,
): Promise<CheckStatus> {
  const unknown = without.filter((part) => !cleanJournal.some((line) => line.includes(part)));
  if (unknown.length > 0) throw new Error(`The clean journal has no line with ${unknown.join(', ')}.`);
  const kept = cleanJournal.filter((line) => !without.some((part) => line.includes(part)));
  const journal = [...kept, ...plus].sort();
  const { facts } = await analyseTexts(files ?? { 'ro1.log': journalText(journal.join('\n')) });
  const [swap] = facts.flatMap((f) =>
    findSwaps(f, { from: null, to: null }, job ?? null, defaultVerifyLimits, defaultRules),
  );
  if (swap === undefined) throw new Error('No swap was found.');
  const outcome = check.judge(swap);
  expect(outcome.statement).toMatch(/^[A-Z].*[.]$/);
  expect(outcome.evidence.length).toBeGreaterThan(0);
  return outcome.status;
}
