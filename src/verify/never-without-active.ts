import { clip } from '../timeline/coverage.ts';
import { endLines } from '../timeline/readiness.ts';
import { track } from '../timeline/tracks.ts';
import { type NonEmpty, type SourceLine, sayBounds, sayDuration } from '../vocabulary.ts';
import type { Check } from './check.ts';

export const neverWithoutActive: Check = {
  id: 'never-without-active',
  title: 'Always exactly one half active',
  judge({ facts, changes, to, limits, switchovers }) {
    const { timeline, conflicts } = facts;
    const from = changes[0].removed.earliest;
    const evidence = endLines(timeline);
    const silent = timeline.halves.filter((half) => track(timeline, half, 'role').length === 0);
    if (silent.length > 0) {
      const whose = `half ${silent.join(' and half ')}`;
      return { status: 'not-observed', statement: `The role of ${whose} was never logged.`, evidence };
    }
    const inside = conflicts.filter((c) => c.to > from && c.from < to);
    const certain = inside.find((c) => c.low > Math.max(limits.conflictSeconds, c.spacingSeconds));
    if (certain !== undefined) {
      const who = certain.kind === 'two-active' ? 'Both halves were active' : 'Neither half was active';
      return {
        status: 'fail',
        statement: `${who} for ${sayBounds(certain.low, certain.high)}.`,
        evidence: certain.evidence,
      };
    }
    const unseen = clip(timeline.unobserved, from, to)[0];
    if (unseen !== undefined) {
      const span = sayDuration((unseen.to - unseen.from) / 1000);
      return {
        status: 'inconclusive',
        statement: `The roles are not known for an unobserved span of ${span}.`,
        evidence,
      };
    }
    const longest = Math.max(0, ...switchovers.map((s) => s.gapSeconds.high));
    const lines: readonly SourceLine[] = switchovers.flatMap((s) => [...s.evidence]);
    const [first, ...rest] = lines;
    const proof: NonEmpty<SourceLine> = first === undefined ? evidence : [first, ...rest];
    const gap =
      switchovers.length === 0
        ? ''
        : `; at a switchover at most ${sayDuration(longest)} without one can be hidden`;
    return {
      status: 'pass',
      statement: `One half, and only one, was active throughout${gap}.`,
      evidence: proof,
    };
  },
};
