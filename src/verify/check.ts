import type { PairFacts } from '../timeline/facts.ts';
import type { FlappingSpell } from '../timeline/flapping.ts';
import type { ModuleChange } from '../timeline/module-changes.ts';
import type { TimelineRules } from '../timeline/rules.ts';
import type {
  BringUp,
  CheckStatus,
  NonEmpty,
  OpenSwap,
  PlannedModule,
  SourceLine,
  Switchover,
} from '../vocabulary.ts';
import type { VerifyLimits } from './limits.ts';

/** One swap as the logs show it: what the checks look at. */
export interface SwapCase {
  readonly facts: PairFacts;
  /** Module changes in the order of their removals. */
  readonly changes: NonEmpty<ModuleChange>;
  /** 15 minutes before the first removal. */
  readonly from: number;
  /** The end of the swap; "at the end" means here. */
  readonly to: number;
  /** The last settled bring-up of the swap; `null` if none settled. */
  readonly settledAt: number | null;
  /** What is waited for where the log ends; `null` where the swap is over. */
  readonly open: OpenSwap | null;
  /** Bring-ups and switchovers between the first removal and the end. */
  readonly bringUps: readonly BringUp[];
  readonly switchovers: readonly Switchover[];
  readonly flapping: readonly FlappingSpell[];
  /** What was planned for each half; empty without a plan. */
  readonly plan: Readonly<Record<string, PlannedModule>>;
  readonly limits: VerifyLimits;
  readonly rules: TimelineRules;
}

export interface Outcome {
  readonly status: CheckStatus;
  /** One plain sentence. */
  readonly statement: string;
  readonly evidence: NonEmpty<SourceLine>;
}

export interface Check {
  readonly id: string;
  /** What must hold, in a few words. */
  readonly title: string;
  judge(swap: SwapCase): Outcome;
}

/** What must hold at the end is not decided while the swap is open, however it stands so far. */
export function onceOver({ open }: SwapCase, outcome: Outcome): Outcome {
  if (open === null || outcome.status === 'not-observed') return outcome;
  const statement = `The swap is still open. So far: ${outcome.statement.charAt(0).toLowerCase()}${outcome.statement.slice(1)}`;
  return { ...outcome, status: 'inconclusive', statement };
}

/**
 * The outcome of several parts, as of several halves: failed if one failed, else undecided if one is, else not observed
 * if one was not; the statements of the parts that decided it.
 */
export function worstOf(parts: NonEmpty<Outcome>): Outcome {
  const order: readonly CheckStatus[] = ['fail', 'inconclusive', 'not-observed', 'pass'];
  const status = order.find((s) => parts.some((p) => p.status === s)) ?? 'pass';
  const [first, ...rest] = parts.filter((p) => p.status === status);
  const deciding: NonEmpty<Outcome> = first === undefined ? parts : [first, ...rest];
  const lines = deciding.flatMap((p) => [...p.evidence]);
  const [line, ...others] = lines;
  return {
    status,
    statement: [...new Set(deciding.map((p) => p.statement))].join(' '),
    evidence: line === undefined ? deciding[0].evidence : [line, ...others],
  };
}
