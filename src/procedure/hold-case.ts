import { endLines, linesOf, uniqueLines } from '../timeline/evidence.ts';
import type { PairFacts } from '../timeline/facts.ts';
import type { TimelineRules } from '../timeline/rules.ts';
import { linesOfStates, linesOr } from '../timeline/state-at.ts';
import {
  type Condition,
  type HoldStatus,
  type NonEmpty,
  type PlannedModule,
  type SourceLine,
  type StateSignal,
  sayDuration,
} from '../vocabulary.ts';
import type { HalfInWork } from './procedure.ts';
import { type StateNow, saySince, stateNow } from './state-now.ts';

/** What the conditions of a hold point look at. */
export interface HoldCase {
  readonly facts: PairFacts;
  /** The newest stamp that counts. */
  readonly at: number;
  readonly rules: TimelineRules;
  readonly plan: Readonly<Record<string, PlannedModule>>;
  /** The half that would be removed or take over; `null` where it is not known. */
  readonly half: string | null;
  /** The halves in work in the order of their removals; empty before the first. */
  readonly works: readonly HalfInWork[];
  /** The work had begun before the first line: what came before was not observed. */
  readonly isBeforeLog: boolean;
}

/** What a line must say; what none says is not observed, and a person looks. */
export const cabinet = 'check at the cabinet';

/** A condition with its lines; `stop` says so in front. */
export function conditionOf(
  id: string,
  half: string | null,
  status: HoldStatus,
  statement: string,
  evidence: NonEmpty<SourceLine>,
): Condition {
  const said = status === 'stop' ? stopWords(statement) : statement;
  return { id, half, status, statement: said, evidence };
}

/** That something is not known at an instant, why, and what to do about it. */
export function sayUnseen(what: string, { unseen, about, since }: StateNow): string {
  if (since !== undefined) return `${what} was not observed ${saySince(since)}; ${cabinet}.`;
  if (unseen !== undefined) {
    const seconds = (unseen.to - unseen.from) / 1000;
    return `${what} was not observed for the last ${sayDuration(seconds)}; ${cabinet}.`;
  }
  return about === undefined
    ? `${what} was not observed; ${cabinet}.`
    : `${what} is not known: it became ${about.value ?? 'blank'} about then; ${cabinet}.`;
}

/** Every stop is said alike. */
function stopWords(statement: string): string {
  return `Stop and call for support: ${statement.charAt(0).toLowerCase()}${statement.slice(1)}`;
}

/** What each half reports of a signal by now. */
export function ofHalves({ facts, at }: HoldCase, signal: StateSignal): readonly StateNow[] {
  return facts.timeline.halves.map((half) => stateNow(facts.timeline, half, signal, at));
}

/** The lines of some states; where there are none the first and the last that were read. */
export function linesFor({ facts }: HoldCase, states: readonly StateNow[]): NonEmpty<SourceLine> {
  const later = states.flatMap(({ since }) => (since === undefined ? [] : linesOf(since)));
  const lines = linesOr([...linesOfStates(states), ...later], endLines(facts.timeline));
  return later.length === 0 ? lines : uniqueLines(lines);
}
