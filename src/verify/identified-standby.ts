import { between, exactly, judge } from '../timeline/durations.ts';
import { linesOf, linesOfAll } from '../timeline/evidence.ts';
import type { ModuleChange } from '../timeline/module-changes.ts';
import { track, valueAt } from '../timeline/tracks.ts';
import { sayBounds, sayDuration } from '../vocabulary.ts';
import { type Check, type Outcome, type SwapCase, worstOf } from './check.ts';

export const identifiedStandby: Check = {
  id: 'identified-standby',
  title: 'New module took the standby role',
  judge(swap) {
    const [first, ...rest] = swap.changes;
    return worstOf([judgeRole(swap, first), ...rest.map((change) => judgeRole(swap, change))]);
  },
};

function judgeRole(swap: SwapCase, { half, inserted }: ModuleChange): Outcome {
  const { facts, limits } = swap;
  const roles = track(facts.timeline, half, 'role');
  const evidence = linesOf(inserted);
  if (roles.length === 0) {
    return { status: 'not-observed', statement: `The role of half ${half} was never logged.`, evidence };
  }
  const taken = roles.find((s) => s.time >= inserted.time && s.value !== 'none' && s.time <= swap.to);
  if (taken === undefined || (taken.value === 'active' && valueAt(roles, inserted.time) === 'standby')) {
    return judgeUnstated(swap, half, inserted);
  }
  if (taken.value !== 'standby') {
    return {
      status: 'fail',
      statement: `Half ${half} took the role ${taken.value ?? 'none'} after its insertion, not standby.`,
      evidence: linesOfAll([inserted, taken]),
    };
  }
  const wait = between(inserted, taken);
  const outcome = judge(wait.low, wait.high, limits.roleSeconds);
  const status = outcome === 'within' ? 'pass' : outcome === 'exceeded' ? 'fail' : 'inconclusive';
  return {
    status,
    statement:
      wait.high < 1
        ? `Half ${half} took the standby role at its insertion.`
        : `Half ${half} took the standby role ${sayBounds(wait.low, wait.high)} after its insertion.`,
    evidence: linesOfAll([inserted, taken]),
  };
}

/** The role was not stated anew after the insertion: it counts only if the partner then became ready. */
function judgeUnstated(
  { facts, limits, to }: SwapCase,
  half: string,
  inserted: ModuleChange['inserted'],
): Outcome {
  const evidence = linesOf(inserted);
  const roles = track(facts.timeline, half, 'role');
  const ready = facts.bringUps.find(
    (b) => b.half === half && b.start.time >= inserted.earliest && b.ready !== null,
  );
  if (valueAt(roles, inserted.time) === 'standby') {
    return ready === undefined
      ? {
          status: 'inconclusive',
          statement: `Half ${half} was standby before its removal; its role after the insertion was not logged.`,
          evidence,
        }
      : {
          status: 'pass',
          statement: `Half ${half} was standby, and became the ready partner.`,
          evidence: ready.evidence,
        };
  }
  const watched = between(inserted, exactly(Math.max(to, inserted.time)));
  return watched.low > limits.roleSeconds
    ? {
        status: 'fail',
        statement: `Half ${half} took no role in the ${sayDuration(watched.low)} it was watched.`,
        evidence,
      }
    : {
        status: 'inconclusive',
        statement: `Half ${half} was watched for only ${sayDuration(watched.seconds)} after its insertion.`,
        evidence,
      };
}
