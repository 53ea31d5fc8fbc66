import { describe, expect, test } from 'vitest';
import type { Analyzer } from '../../src/analyze/analyzer.ts';
import { defaultLimits } from '../../src/analyze/limits.ts';
import { runAnalyzers } from '../../src/analyze/run-analyzers.ts';
import { analyseTexts, journalText } from './read-text.ts';

interface Case {
  readonly name: string;
  /** A journal in the short form; or files with their own text. */
  readonly journal?: string;
  readonly files?: Readonly<Record<string, string>>;
}

export interface Expected {
  readonly id: string;
  readonly half?: string;
  readonly lines?: readonly number[];
  /** Numbers, or matchers of numbers. */
  readonly figures?: Readonly<Record<string, unknown>>;
}

/** Runs tables of cases through one analyzer; every finding id must occur, and no two cases are alike. */
export function checkAnalyzer(
  analyzer: Analyzer,
  cases: {
    readonly reports: readonly (Case & { readonly findings: readonly Expected[] })[];
    readonly quiet: readonly Case[];
    readonly notObserved: readonly Case[];
  },
): void {
  const all = [...cases.reports, ...cases.quiet, ...cases.notObserved];
  describe(analyzer.meta.id, () => {
    test('has no two cases alike, and a case for every finding id', () => {
      expect(new Set(all.map((c) => JSON.stringify(c.journal ?? c.files))).size).toBe(all.length);
      const told = new Set(cases.reports.flatMap((c) => c.findings.map((f) => f.id)));
      expect([...told].sort()).toEqual([...analyzer.meta.findings].sort());
    });
    for (const c of cases.reports) {
      test(`reports: ${c.name}`, async () => {
        const { findings } = await run(analyzer, c);
        for (const expected of c.findings) expect(findings).toContainEqual(matching(expected));
        expect(findings.map((f) => f.id).sort()).toEqual(c.findings.map((f) => f.id).sort());
      });
    }
    for (const c of cases.quiet) {
      test(`is quiet: ${c.name}`, async () => {
        const { findings, missing } = await run(analyzer, c);
        expect(missing).toEqual([]);
        expect(findings.filter((f) => f.severity !== 'info')).toEqual([]);
      });
    }
    for (const c of cases.notObserved) {
      test(`can not judge: ${c.name}`, async () => {
        const { findings, missing, notObserved } = await run(analyzer, c);
        expect(findings.filter((f) => f.severity !== 'info')).toEqual([]);
        expect(missing.length + notObserved).toBeGreaterThan(0);
      });
    }
  });
}

function matching({ id, half, lines, figures }: Expected): unknown {
  return expect.objectContaining({
    id,
    ...(half === undefined ? {} : { half }),
    ...(lines === undefined ? {} : { evidence: lines.map((line) => expect.objectContaining({ line })) }),
    ...(figures === undefined ? {} : { figures: expect.objectContaining(figures) }),
  });
}

async function run(
  analyzer: Analyzer,
  { journal, files }: Case,
): Promise<ReturnType<typeof runAnalyzers>[number]> {
  const { facts } = await analyseTexts(files ?? { 'ro1.log': journalText(journal ?? '') });
  const frozen = JSON.stringify(facts.map((f) => f.timeline.events));
  const answers = runAnalyzers([analyzer], facts, defaultLimits);
  expect(JSON.stringify(facts.map((f) => f.timeline.events))).toBe(frozen);
  const answer = answers[0];
  expect(answer?.failed).toBeNull();
  if (answer === undefined) throw new Error('The case speaks of no pair.');
  return answer;
}
