import { linesOf, linesOfAll } from '../timeline/evidence.ts';
import type { ModuleChange } from '../timeline/module-changes.ts';
import { standbyAt } from '../timeline/standby.ts';
import { track } from '../timeline/tracks.ts';
import type { TimelineEvent } from '../vocabulary.ts';
import { type AtEnd, atEnd, endEvidence, stateAtEnd, whyUnknown } from './at-end.ts';
import { type Check, type Outcome, onceOver, type SwapCase, worstOf } from './check.ts';

export const nothingAtFault: Check = {
  id: 'nothing-at-fault',
  title: 'No fault at the end',
  judge(swap) {
    const parts = [judgeSupplies(swap), judgeLight(swap), judgeFaults(swap)];
    const [first, ...rest] = parts.filter((part) => part.status !== 'not-observed');
    if (first === undefined) {
      return {
        status: 'not-observed',
        statement: 'Neither supplies nor the light of the standby nor faults were ever logged.',
        evidence: endEvidence(swap, []),
      };
    }
    const worst = worstOf([first, ...rest]);
    const silent = parts.filter((part) => part.status === 'not-observed').map((part) => part.statement);
    return onceOver(swap, { ...worst, statement: [worst.statement, ...silent].join(' ') });
  },
};

function judgeSupplies(swap: SwapCase): Outcome {
  const states = atEnd(swap, 'supply');
  const evidence = endEvidence(swap, states);
  if (!states.some((s) => s.everLogged))
    return { status: 'not-observed', statement: 'Supplies were never logged.', evidence };
  const bad = states.filter((s) => s.value === 'fault');
  if (bad.length > 0) {
    const statement = `At the end the supply of half ${bad.map((s) => s.half).join(' and ')} is at fault.`;
    return { status: 'fail', statement, evidence: endEvidence(swap, bad) };
  }
  const silent = states.find((s) => s.value === null);
  return silent === undefined
    ? { status: 'pass', statement: 'At the end both supplies are good.', evidence }
    : {
        status: 'inconclusive',
        statement: `The supply of half ${silent.half} at the end is not known${whyUnknown(silent)}.`,
        evidence,
      };
}

/** A light that was never steady belongs to the check of that; one that was and flashes again says that something is wrong. */
function judgeLight(swap: SwapCase): Outcome {
  const { facts, to, changes } = swap;
  const { timeline } = facts;
  const half = standbyAt(timeline, to);
  const state = stateAtEnd(swap, half, 'light');
  const evidence = endEvidence(swap, [state]);
  if (half === null || !state.everLogged) {
    const whose = half === null ? 'the standby' : `half ${half}, the standby at the end,`;
    return { status: 'not-observed', statement: `The light of ${whose} was never logged.`, evidence };
  }
  const last = changes.findLast((c) => c.half === half);
  const silence = last === undefined ? null : whyDark(last, half, state);
  if (silence !== null) return { status: 'not-observed', statement: silence, evidence };
  const since = last?.inserted?.time ?? timeline.from;
  const own = track(timeline, half, 'light').filter((s) => s.time >= since && s.time <= to);
  const wasSteady = last === undefined || own.some((s) => s.value === 'steady' || wasReadSteady(s, since));
  if (state.value === 'flashing' && wasSteady)
    return {
      status: 'fail',
      statement: `At the end the light of half ${half}, the standby, flashes again.`,
      evidence,
    };
  if (state.value === null) {
    const statement = `The light of half ${half} at the end is not known${whyUnknown(state)}.`;
    return { status: 'inconclusive', statement, evidence };
  }
  const statement =
    state.value === 'flashing'
      ? `The light of half ${half} was never steady after its insertion.`
      : `At the end the light of half ${half}, the standby, is ${state.value}.`;
  return { status: 'pass', statement, evidence };
}

/** A poll that lost sight of the insertion read the light steady after it, up to this change. */
function wasReadSteady({ kind, before, earliest }: TimelineEvent, since: number): boolean {
  return kind === 'reading' && before === 'steady' && earliest >= since;
}

/** Why nothing is known of the light of a half in work; `null` where something is. */
function whyDark({ inserted }: ModuleChange, half: string, { step }: AtEnd): string | null {
  if (inserted === null) return `No module is in half ${half} at the end, and so no light.`;
  // A poll that goes on reading the same has read it of the new module too.
  const isOld = step !== undefined && step.kind !== 'reading' && step.time < inserted.earliest;
  return isOld ? `The light of half ${half} was not logged after its insertion.` : null;
}

/** Faults of a new module since its insertion must be followed by a ready partner that held. */
function judgeFaults(swap: SwapCase): Outcome {
  const { facts, to } = swap;
  const all = facts.timeline.events.filter((e) => e.signal === 'fault');
  const [firstFault] = all;
  if (firstFault === undefined)
    return {
      status: 'not-observed',
      statement: 'Faults were never logged.',
      evidence: endEvidence(swap, []),
    };
  const ofNew = all.filter((e) => e.time <= to && isOfNewModule(swap, e));
  const left = ofNew.filter((e) => !isSettledAfter(swap, e));
  const [own, ...others] = left.filter((e) => e.half !== null);
  if (own !== undefined) {
    const statement = `A fault of half ${own.half} was logged after its insertion, and no bring-up settled after it.`;
    return { status: 'fail', statement, evidence: linesOfAll([own, ...others]) };
  }
  const [unnamed] = left;
  if (unnamed !== undefined) {
    const statement =
      'A fault that names no half was logged after the insertion, and no bring-up settled after it.';
    return { status: 'inconclusive', statement, evidence: linesOf(unnamed) };
  }
  const [first, ...rest] = ofNew;
  return first === undefined
    ? { status: 'pass', statement: 'No fault of a new module was logged.', evidence: linesOf(firstFault) }
    : {
        status: 'pass',
        statement: 'Every fault of a new module was followed by a bring-up that settled.',
        evidence: linesOfAll([first, ...rest]),
      };
}

function isOfNewModule({ changes }: SwapCase, fault: TimelineEvent): boolean {
  return changes.some(
    ({ half, inserted }) =>
      inserted !== null && (fault.half === null || fault.half === half) && fault.time >= inserted.earliest,
  );
}

function isSettledAfter({ facts, to }: SwapCase, fault: TimelineEvent): boolean {
  return facts.bringUps.some(
    ({ half, settled }) =>
      settled !== null &&
      (fault.half === null || half === fault.half) &&
      settled.earliest >= fault.time &&
      settled.time <= to,
  );
}
