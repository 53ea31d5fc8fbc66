import { holm } from '../statistics/holm.ts';
import type { PairFacts } from '../timeline/facts.ts';
import { groupBy } from '../timeline/groups.ts';
import type { Finding } from '../vocabulary.ts';
import type { Analysis, Analyzer, Question } from './analyzer.ts';
import type { Limits } from './limits.ts';

/** What one analyzer said of one pair, or why it said nothing. */
export interface Answer {
  readonly analyzer: string;
  readonly question: string;
  readonly pair: string;
  readonly checked: number;
  readonly notObserved: number;
  /** A signal it needs was never logged of this pair. */
  readonly missing: readonly string[];
  /** It failed: a defect, told by name so that "no finding" never stands for "no answer". */
  readonly failed: string | null;
  readonly findings: readonly Finding[];
}

/**
 * Runs every analyzer on every pair. One that throws does not stop the others: it is reported as failed. Questions of chance
 * share the significance over all pairs, each analyzer's own (Holm).
 */
export function runAnalyzers(
  analyzers: readonly Analyzer[],
  pairs: readonly PairFacts[],
  limits: Limits,
): readonly Answer[] {
  const runs = pairs.flatMap((facts) => analyzers.map((analyzer) => runOne(analyzer, facts, limits)));
  const shared = new Map(
    [...groupBy(runs, ({ answer }) => answer.analyzer).values()].flatMap((own) => sharedAmong(own)),
  );
  return runs.map((run) => told(run, shared, limits));
}

interface Run {
  readonly answer: Answer;
  readonly questions: readonly Question[];
}

function runOne(analyzer: Analyzer, facts: PairFacts, limits: Limits): Run {
  const { id, question, needs } = analyzer.meta;
  const { pair, events } = facts.timeline;
  const missing = needs.filter((signal) => !events.some((e) => e.signal === signal));
  const frame = { analyzer: id, question, pair, missing };
  const nothing = { checked: 0, notObserved: 0, findings: [], failed: null };
  if (missing.length > 0) return { answer: { ...frame, ...nothing }, questions: [] };
  const outcome = attempt((): Analysis => analyzer.analyze(facts, limits));
  if (typeof outcome === 'string')
    return { answer: { ...frame, ...nothing, failed: outcome }, questions: [] };
  const { questions = [], ...analysis } = outcome;
  return { answer: { ...frame, ...analysis, failed: null }, questions };
}

type Shared = ReadonlyMap<Question, { readonly p: number; readonly questions: number }>;

/** The questions that one analyzer asked of all pairs, each with its chance among all of them. */
function sharedAmong(
  runs: readonly Run[],
): readonly (readonly [Question, { p: number; questions: number }])[] {
  const asked = runs.flatMap((run) => run.questions);
  const adjusted = holm(asked.map(({ p }) => p));
  return asked.map((question, index) => [question, { p: adjusted[index] ?? 1, questions: asked.length }]);
}

function told({ answer, questions }: Run, shared: Shared, { significance }: Limits): Answer {
  const outcome = attempt(() =>
    questions.flatMap((question) => {
      const chance = shared.get(question);
      return chance !== undefined && chance.p <= significance ? [question.tell(chance)] : [];
    }),
  );
  if (typeof outcome === 'string') return { ...answer, findings: [], failed: outcome };
  return { ...answer, findings: [...answer.findings, ...outcome] };
}

function attempt<T>(run: () => T): T | string {
  try {
    return run();
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}
