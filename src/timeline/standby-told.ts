import type {
  NonEmpty,
  PairTimeline,
  SourceLine,
  StandbyAsOf,
  TimelineEvent,
  UnnamedKind,
} from '../vocabulary.ts';
import { endLines, linesOf, linesOfAll, uniqueLines } from './evidence.ts';
import { observationFor } from './observation.ts';
import { stepAt, track } from './tracks.ts';

/** Which half was standby where a log ends, by which lines, and when those were read last. */
export interface StandbyTold {
  /** `null`: no line tells, `because` of that. */
  readonly half: string | null;
  readonly because: Extract<UnnamedKind, 'none' | 'several' | 'not-logged'> | null;
  readonly restsOn: StandbyAsOf['restsOn'];
  readonly seenAt: number;
  readonly evidence: NonEmpty<SourceLine>;
}

interface RoleNow {
  readonly half: string;
  readonly step: TimelineEvent;
}

/**
 * The half that lines state as standby where the log ends, or that is concluded to be. That the other half is active is not enough: the
 * place may be empty. Where no role was ever logged, the only half whose light flashes or is steady: that of the active half is off.
 */
export function standbyTold(timeline: PairTimeline): StandbyTold {
  const roles = rolesNow(timeline);
  const [first, ...rest] = roles;
  if (first === undefined) return litHalf(timeline);
  const known = linesOfAll([first.step, ...rest.map((r) => r.step)]);
  const evidence = withEnd(known, timeline);
  const seenAt = lastRead(timeline, roles, 'role');
  const [standby, second] = roles.filter((r) => r.step.value === 'standby');
  if (standby === undefined || second !== undefined) {
    const because = standby === undefined ? 'none' : 'several';
    return { half: null, because, restsOn: null, seenAt, evidence };
  }
  const restsOn = standby.step.concluded ? 'other-half' : 'role';
  return { half: standby.half, because: null, restsOn, seenAt, evidence };
}

/** How many halves are active where the log ends; `null` where the role of one is not known. */
export function activeCount(timeline: PairTimeline): {
  readonly count: number | null;
  readonly evidence: NonEmpty<SourceLine>;
} {
  const roles = rolesNow(timeline);
  const [first, ...rest] = roles;
  if (first === undefined) return { count: null, evidence: endLines(timeline) };
  const count = roles.filter((r) => r.step.value === 'active').length;
  const evidence = linesOfAll([first.step, ...rest.map((r) => r.step)]);
  return { count: roles.length < timeline.halves.length && count < 2 ? null : count, evidence };
}

/** The role of each half where it is known. */
function rolesNow(timeline: PairTimeline): readonly RoleNow[] {
  return timeline.halves.flatMap((half) => {
    const step = stepAt(track(timeline, half, 'role'), timeline.to);
    return step === undefined || step.value === null ? [] : [{ half, step }];
  });
}

function litHalf(timeline: PairTimeline): StandbyTold {
  const lit = timeline.halves.flatMap((half) => {
    const step = stepAt(track(timeline, half, 'light'), timeline.to);
    return step?.value === 'flashing' || step?.value === 'steady' ? [{ half, step }] : [];
  });
  const [only, second] = lit;
  if (only === undefined || second !== undefined) {
    const evidence = endLines(timeline);
    return { half: null, because: 'not-logged', restsOn: null, seenAt: timeline.to, evidence };
  }
  return {
    half: only.half,
    because: null,
    restsOn: 'light',
    seenAt: lastRead(timeline, lit, 'light'),
    evidence: withEnd(linesOf(only.step), timeline),
  };
}

/** When a signal was read last of the halves of which it is stated: of the one that was read the longest ago. */
function lastRead(timeline: PairTimeline, told: readonly RoleNow[], signal: 'role' | 'light'): number {
  const stated = told.filter(({ step }) => !step.concluded);
  const read = stated.flatMap(({ half }) => observationFor(timeline, half, signal).seenUntil ?? []);
  return Math.min(timeline.to, ...read);
}

/** The lines of a state, and the last one of the pair: until then nothing said otherwise. */
function withEnd(lines: NonEmpty<SourceLine>, timeline: PairTimeline): NonEmpty<SourceLine> {
  return uniqueLines([...lines, ...endLines(timeline).slice(-1)]);
}
