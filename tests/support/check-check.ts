import { describe, expect, test } from 'vitest';
import { defaultRules } from '../../src/timeline/rules.ts';
import type { Check, SwapCase } from '../../src/verify/check.ts';
import { findSwaps } from '../../src/verify/find-swaps.ts';
import { defaultVerifyLimits } from '../../src/verify/limits.ts';
import type { CheckStatus, Job, SourceLine } from '../../src/vocabulary.ts';
import { analyseTexts, journalText } from './read-text.ts';

/** What a check says of a case. */
export interface Said {
  /** Its sentence, or the part of it that this case is about. */
  readonly says: string;
  /** Its evidence, in its order: lines of the journal as they stand in it, or in files of their own `poll.csv:3`. */
  readonly lines: readonly string[];
}

export interface CheckCase extends Said {
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
export function checkCheck(check: Check, clean: Said, cases: readonly CheckCase[]): void {
  const all: readonly CheckCase[] = [{ name: 'the clean swap', status: 'pass', ...clean }, ...cases];
  describe(check.id, () => {
    test('is tried both ways and undecided, no two cases alike', () => {
      const tried = new Set(all.map((c) => c.status));
      expect(tried).toContain('fail');
      expect(tried.has('inconclusive') || tried.has('not-observed')).toBe(true);
      const stories = all.map(({ without, plus, files, job }) => JSON.stringify([without, plus, files, job]));
      expect(new Set(stories).size).toBe(all.length);
    });
    for (const c of all) {
      test(`${c.status}: ${c.name}`, async () => {
        const { texts, journal } = storyOf(c);
        const { status, statement, evidence } = check.judge(await swapOf(texts, c.job ?? null));
        expect(statement).toContain(c.says);
        expect(status).toBe(c.status);
        expect(statement).toMatch(/^[A-Z].*[.]$/);
        expect(evidence.map((line) => shown(line, journal))).toEqual(c.lines);
      });
    }
  });
}

/** The files of a case, and the lines of its journal in their order; none where it has files of its own. */
function storyOf({ without = [], plus = [], files }: CheckCase): {
  readonly texts: Readonly<Record<string, string>>;
  readonly journal: readonly string[];
} {
  const unknown = without.filter((part) => !cleanJournal.some((line) => line.includes(part)));
  if (unknown.length > 0) throw new Error(`The clean journal has no line with ${unknown.join(', ')}.`);
  if (files !== undefined) return { texts: files, journal: [] };
  const kept = cleanJournal.filter((line) => !without.some((part) => line.includes(part)));
  const journal = [...kept, ...plus].sort();
  return { texts: { 'ro1.log': journalText(journal.join('\n')) }, journal };
}

async function swapOf(texts: Readonly<Record<string, string>>, job: Job | null): Promise<SwapCase> {
  const { facts } = await analyseTexts(texts);
  const swaps = facts.flatMap((f) =>
    findSwaps(f, { from: null, to: null }, job, defaultVerifyLimits, defaultRules),
  );
  const [swap] = swaps;
  if (swap === undefined || swaps.length > 1) throw new Error(`${swaps.length} swaps were found.`);
  return swap;
}

/** A line of evidence as the journal has it at that number, with single blanks; else its file and number. */
function shown({ file, line }: SourceLine, journal: readonly string[]): string {
  return journal[line - 1]?.replaceAll(/ +/g, ' ') ?? `${file}:${line}`;
}
