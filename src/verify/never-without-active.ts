import { endLines } from '../timeline/evidence.ts';
import { unobservedIn } from '../timeline/observation.ts';
import type { Conflict } from '../timeline/role-conflicts.ts';
import { statedRoles } from '../timeline/tracks.ts';
import { sayBounds, sayDuration } from '../vocabulary.ts';
import type { Check, Outcome, SwapCase } from './check.ts';

export const neverWithoutActive: Check = {
  id: 'never-without-active',
  title: 'Exactly one half active throughout',
  judge(swap) {
    const { timeline } = swap.facts;
    const silent = timeline.halves.filter((half) => statedRoles(timeline, half).length === 0);
    if (silent.length > 0) {
      const statement = `The role of half ${silent.join(' and half ')} was never logged.`;
      return { status: 'not-observed', statement, evidence: endLines(timeline) };
    }
    return conflict(swap) ?? unobserved(swap) ?? throughout(swap);
  },
};

/** Both halves active, or neither: for certain, or perhaps: at some instant at least, or since just before the log ends. */
function conflict({ facts, changes, to, limits }: SwapCase): Outcome | null {
  const from = changes[0].removed.earliest;
  const inside = facts.conflicts.filter((c) => (c.to > from && c.from < to) || (c.goesOn && c.from <= to));
  const certain = inside.find((c) => c.low > limits.conflictSeconds);
  if (certain !== undefined) {
    const statement = `${whoWas(certain)} for ${sayBounds(certain.low, certain.high)}.`;
    return { status: 'fail', statement, evidence: certain.evidence };
  }
  const possible = inside.find((c) => c.goesOn || (c.isSeen && c.high > limits.conflictSeconds));
  if (possible === undefined) return null;
  const statement = possible.goesOn
    ? `${whoWas(possible)} at the end of the log, for ${sayBounds(possible.low, possible.high)} so far.`
    : `${whoWas(possible)} at least briefly, for ${sayBounds(possible.low, possible.high)}.`;
  return { status: 'inconclusive', statement, evidence: possible.evidence };
}

function unobserved({ facts: { timeline }, changes, to }: SwapCase): Outcome | null {
  const from = changes[0].removed.earliest;
  const gap = timeline.halves.flatMap((half) => unobservedIn(timeline, half, 'role', from, to))[0];
  if (gap === undefined) return null;
  const statement = `The roles were not observed for ${sayDuration((gap.to - gap.from) / 1000)}.`;
  return { status: 'inconclusive', statement, evidence: gap.evidence };
}

function throughout({ facts, switchovers }: SwapCase): Outcome {
  const gaps = switchovers.flatMap((s) => s.gapSeconds.high ?? []);
  const untold = switchovers.length - gaps.length;
  const longest = Math.max(0, ...gaps);
  const gap = longest === 0 ? '' : `, except for at most ${sayDuration(longest)} at a switchover`;
  const which = untold === 1 ? 'the switchover' : 'some switchovers';
  const silent = untold === 0 ? '' : `; how long ${which} took was not logged`;
  const [first, ...rest] = switchovers.flatMap((s) => [...s.evidence]);
  return {
    status: 'pass',
    statement: `Exactly one half was active throughout${gap}${silent}.`,
    evidence: first === undefined ? endLines(facts.timeline) : [first, ...rest],
  };
}

function whoWas({ kind }: Conflict): string {
  return kind === 'two-active' ? 'Both halves were active' : 'Neither half was active';
}
