import type { BringUp, PairTimeline, Switchover } from '../vocabulary.ts';
import { type Bout, boutsOf } from './bouts.ts';
import { bringUpsOf } from './bring-ups.ts';
import { commandFiles, observesCommands } from './commands.ts';
import { type Exposed, exposedSpans } from './exposure.ts';
import { type Loss, lossesOf, type PlannedWork, plannedWorkOf } from './losses.ts';
import { type Absence, absencesOf, type ModuleChange, moduleChangesOf } from './module-changes.ts';
import { type Readiness, readinessOf } from './readiness.ts';
import { type Conflict, conflictsOf } from './role-conflicts.ts';
import type { TimelineRules } from './rules.ts';
import { switchoversOf } from './switchovers.ts';

/** Everything that several analyses need of one pair, read off its timeline once. */
export interface PairFacts {
  readonly timeline: PairTimeline;
  readonly readiness: Readiness;
  readonly bringUps: readonly BringUp[];
  readonly plannedWork: readonly PlannedWork[];
  readonly losses: readonly Loss[];
  readonly bouts: readonly Bout[];
  readonly exposed: readonly Exposed[];
  /** A source that logs switchover commands names the pair. */
  readonly isCommandLogged: boolean;
  readonly switchovers: readonly Switchover[];
  readonly conflicts: readonly Conflict[];
  readonly moduleChanges: readonly ModuleChange[];
  readonly absences: readonly Absence[];
}

/** The facts of every pair. */
export function factsOf(timelines: readonly PairTimeline[], rules: TimelineRules): readonly PairFacts[] {
  const logsCommands = commandFiles(timelines);
  return timelines.map((timeline) => {
    const bringUps = bringUpsOf(timeline, rules);
    const plannedWork = plannedWorkOf(timeline, bringUps, rules);
    const losses = lossesOf(timeline, plannedWork, rules);
    return {
      timeline,
      readiness: readinessOf(timeline),
      bringUps,
      plannedWork,
      losses,
      bouts: boutsOf(losses, rules),
      exposed: exposedSpans(timeline),
      isCommandLogged: observesCommands(timeline, logsCommands),
      switchovers: switchoversOf(timeline, logsCommands, rules),
      conflicts: conflictsOf(timeline),
      moduleChanges: moduleChangesOf(timeline, rules),
      absences: absencesOf(timeline, rules),
    };
  });
}
