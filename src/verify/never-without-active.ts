import { endLines } from '../timeline/evidence.ts';
import { unobservedIn } from '../timeline/observation.ts';
import type { Conflict } from '../timeline/role-conflicts.ts';
import { track } from '../timeline/tracks.ts';
import { type NonEmpty, type PairTimeline, type SourceLine, sayBounds, sayDuration } from '../vocabulary.ts';
import type { Check } from './check.ts';

export const neverWithoutActive: Check = {
  id: 'never-without-active',
  title: 'Always exactly one half active',
  judge({ facts, changes, to, limits, switchovers }) {
    const { timeline, conflicts } = facts;
    const from = changes[0].removed.earliest;
    const evidence = endLines(timeline);
    if (timeline.halves.some((half) => !isStated(timeline, half))) {
      return { status: 'not-observed', statement: 'No line states the roles of both halves.', evidence };
    }
    const inside = conflicts.filter((c) => c.to > from && c.from < to);
    const certain = inside.find((c) => c.low > limits.conflictSeconds);
    if (certain !== undefined) {
      return {
        status: 'fail',
        statement: `${whoWas(certain)} for ${sayBounds(certain.low, certain.high)}.`,
        evidence: certain.evidence,
      };
    }
    const possible = inside.find((c) => c.isSeen && c.high > limits.conflictSeconds);
    if (possible !== undefined) {
      return {
        status: 'inconclusive',
        statement: `${whoWas(possible)} at one reading at least, for ${sayBounds(possible.low, possible.high)}.`,
        evidence: possible.evidence,
      };
    }
    const unseen = timeline.halves.flatMap((half) => unobservedIn(timeline, half, 'role', from, to))[0];
    if (unseen !== undefined) {
      const span = sayDuration((unseen.to - unseen.from) / 1000);
      return {
        status: 'inconclusive',
        statement: `The roles were not observed for ${span}.`,
        evidence: unseen.evidence,
      };
    }
    const gaps = switchovers.flatMap((s) => s.gapSeconds.high ?? []);
    const lines: readonly SourceLine[] = switchovers.flatMap((s) => [...s.evidence]);
    const [first, ...rest] = lines;
    const proof: NonEmpty<SourceLine> = first === undefined ? evidence : [first, ...rest];
    const untold = switchovers.length - gaps.length;
    const gap =
      gaps.length === 0 || Math.max(...gaps) === 0
        ? ''
        : `; at a switchover at most ${sayDuration(Math.max(...gaps))} without one can be hidden`;
    const silent =
      untold === 0
        ? ''
        : `; how long the roles took to change at ${untold === 1 ? 'the switchover' : 'some switchovers'} was not logged`;
    return {
      status: 'pass',
      statement: `One half, and only one, was active throughout${gap}${silent}.`,
      evidence: proof,
    };
  },
};

/** True if a line states the role of a half, if only once. */
function isStated(timeline: PairTimeline, half: string): boolean {
  return track(timeline, half, 'role').some((s) => !s.concluded && s.value !== 'none');
}

function whoWas({ kind }: Conflict): string {
  return kind === 'two-active' ? 'Both halves were active' : 'Neither half was active';
}
