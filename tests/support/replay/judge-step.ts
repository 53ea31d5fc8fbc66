import { type Story, stateAt } from '../../../samples/story.ts';
import type { SwapNow } from '../../../src/vocabulary.ts';
import type { Dressed, Source } from '../stories/dressing.ts';
import { spellsOf, valueBefore } from '../stories/history.ts';
import { swapFacts } from '../stories/swap-facts.ts';
import type { ToldSwap } from '../stories/swap-story.ts';
import { truthOf } from '../stories/truth.ts';
import { isHidden } from '../swaps/is-hidden.ts';
import { earlyMet } from './early-met.ts';
import type { Told } from './true-conditions.ts';
import { nextWait, trueWait, upTo } from './true-waits.ts';

/** What is wrong at one step of a replay. */
export interface StepMiss {
  readonly kind: StepMissKind;
  readonly about: string;
}

export const stepMissKinds = [
  'met too early',
  'stop without a reason',
  'stop missing',
  'other step awaited',
  'open swap differs',
  'end differs from verify',
] as const;
export type StepMissKind = (typeof stepMissKinds)[number];

/** How exactly the files of a dressing tell, at their newest stamp. */
function toldBy({ sources }: Dressed, at: number): Told {
  const polls = sources.filter((s) => s.kind === 'poll').map((s) => s.spacingSeconds);
  const resolution = Math.max(0, ...sources.map((s) => s.resolutionSeconds));
  const spacing = Math.max(0, ...polls);
  return {
    at: at + 1000 * Math.min(1, resolution),
    lagMs: 1000 * (3 * spacing + resolution),
    hiddenMs: 1000 * spacing,
    tellsFaults: sources.some((s) => s.signals.has('fault') && s.isPart !== true),
  };
}

/** Compares one step of a replay with the truth. `time` is when the files were read; milliseconds UTC. */
export function judgeStep(told: ToldSwap, dressed: Dressed, now: SwapNow, time: number): readonly StepMiss[] {
  const by = toldBy(dressed, now.at);
  return [
    ...earlyMet(told, dressed, now, by, time).map((about): StepMiss => ({ kind: 'met too early', about })),
    ...falseStop(told, now, by),
    ...missingStop(told, dressed, now, by),
    ...otherWait(told.story, dressed, now, by),
    ...otherOpen(now),
  ];
}

/** A stop has a reason in what truly was. */
function falseStop({ story }: ToldSwap, now: SwapNow, by: Told): readonly StepMiss[] {
  const stop = now.holdPoint.conditions.find((c) => c.status === 'stop');
  if (stop === undefined || hasTrouble(story, by, now.holdPoint.id === 'leaving')) return [];
  return [{ kind: 'stop without a reason', about: stop.id }];
}

const ofTheEnd: ReadonlySet<string> = new Set([
  'baseline-redundant',
  'switchover-commanded',
  'links-restored',
  'models-matched',
  'configuration-current',
  'not-flapping',
  'nothing-at-fault',
  'soaked',
]);

function hasTrouble(whole: Story, { at, lagMs }: Told, isLeaving: boolean): boolean {
  return [at - lagMs, at - lagMs / 2, at].some((time) => {
    const story = upTo(whole, time);
    const { checks, switchovers } = truthOf(story);
    const isBroken = checks.some(
      ({ id, holds }) =>
        holds === false &&
        (isLeaving || !ofTheEnd.has(id)) &&
        (id !== 'firmware-matched' || isLeaving || switchovers.length > 0),
    );
    const wait = nextWait(story);
    const isLate = wait !== null && wait.id !== 'soak' && time - wait.since > wait.limit;
    return (
      isBroken ||
      isLate ||
      isActiveOut(story) ||
      lostSince(story) !== null ||
      (isLeaving && isLostInSoak(story))
    );
  });
}

/** A half was active as it was removed: the truth of the checks counts it once it is back in. */
function isActiveOut(story: Story): boolean {
  return story.events.some(
    (e) =>
      e.signal === 'removed' &&
      e.half !== null &&
      valueBefore(spellsOf(story, e.half, 'role'), e.time) === 'active',
  );
}

/** A partner that had settled was lost, be it back or not. */
function isLostInSoak(story: Story): boolean {
  const { settled } = swapFacts(story);
  const since = settled ?? Number.POSITIVE_INFINITY;
  return story.events.some((e) => e.signal === 'partner-ready' && e.value === 'no' && e.time > since);
}

/** Since when a partner that had come up is lost without work that explains it; `null` where it is not so. */
function lostSince(story: Story): number | null {
  if (story.events.every((e) => e.signal !== 'removed')) return null;
  if (stateAt(story, story.to).pair['partner-ready'] === 'yes') return null;
  const last = story.events.findLastIndex((e) => e.signal === 'partner-ready');
  const before = story.events.slice(0, last);
  const isWork = story.events.some(
    (e, index) =>
      (e.signal === 'removed' || e.signal === 'reflash-start') &&
      !story.events
        .slice(index, last)
        .some((later) => later.signal === 'partner-ready' && later.value === 'yes'),
  );
  const isUp = before.some((e) => e.signal === 'partner-ready' && e.value === 'yes');
  return isWork || !isUp ? null : (story.events[last]?.time ?? null);
}

/** What stops the work has stopped it by the next step. */
function missingStop(told: ToldSwap, dressed: Dressed, now: SwapNow, by: Told): readonly StepMiss[] {
  if (now.holdPoint.status === 'stop' || now.swap === null || !isFullyTold(dressed.sources)) return [];
  const { story } = told;
  const late = 2 * by.lagMs + 2000;
  const early = upTo(story, by.at - late);
  const isSame = trueWait(story, by.at - late) === trueWait(story, by.at);
  const wait = nextWait(early);
  const isLate = wait !== null && wait.id !== 'soak' && early.to - wait.since > wait.limit;
  const missing: StepMiss[] = [];
  if (isLate && isSame && nextWait(upTo(story, by.at))?.since === wait.since)
    missing.push({ kind: 'stop missing', about: `limit of ${wait.id}` });
  const loss = lostSince(upTo(story, by.at));
  if (loss !== null && by.at - loss > late + 5000)
    missing.push({ kind: 'stop missing', about: 'partner lost' });
  const broken = truthOf(early).checks.filter(
    (c) =>
      stopping.has(c.id) &&
      c.holds === false &&
      !isHidden(c, dressed.sources) &&
      (c.id !== 'removed-standby' || tellsOrder(dressed.sources)),
  );
  return [...missing, ...broken.map((c): StepMiss => ({ kind: 'stop missing', about: c.id }))];
}

const stopping: ReadonlySet<string> = new Set([
  'removed-standby',
  'one-half-at-a-time',
  'ready-before-switchover',
  'never-without-active',
]);

/** Between two looks nobody can tell whether the roles were exchanged before a removal or by it. */
function tellsOrder(sources: readonly Source[]): boolean {
  return sources.some((s) => s.kind === 'journal' && s.signals.has('role') && s.signals.has('removed'));
}

const needed = ['role', 'partner-ready', 'light', 'serial', 'firmware', 'model'];

/** Every state that the work is seen by is told by one source, whole and exact. */
function isFullyTold(sources: readonly Source[]): boolean {
  return sources.some(
    (s) => s.isPart !== true && s.kind !== 'notes' && needed.every((signal) => s.signals.has(signal)),
  );
}

function otherWait(story: Story, dressed: Dressed, now: SwapNow, by: Told): readonly StepMiss[] {
  if (!isFullyTold(dressed.sources)) return [];
  const { at, lagMs } = by;
  const [from, to] = [at - lagMs, at + lagMs];
  const instants = [from, at, to, ...story.events.map((e) => e.time).filter((t) => t > from && t <= to)];
  const allowed = new Set(instants.map((time) => trueWait(story, time)));
  const said = now.awaits === 'baseline' || now.awaits === 'out' ? 'before' : (now.awaits ?? 'over');
  if (allowed.has(said)) return [];
  // A module that was pushed in looks to a poll as if the place were empty, until it reports itself.
  const isPolled = dressed.sources.every((s) => s.kind !== 'journal');
  if (isPolled && said === 'in' && allowed.has('identified')) return [];
  return [{ kind: 'other step awaited', about: `${said} for ${[...allowed].join(' or ')}` }];
}

/** The open swap of the verification says the same. */
function otherOpen({ awaits, since, limitSeconds, swap }: SwapNow): readonly StepMiss[] {
  if (swap === null) return [];
  const { open } = swap;
  const isSame =
    open === null
      ? awaits === null
      : awaits === open.awaits &&
        since?.time === open.since.time &&
        since.earliest === open.since.earliest &&
        limitSeconds === open.limitSeconds;
  return isSame ? [] : [{ kind: 'open swap differs', about: `${awaits} for ${open?.awaits ?? 'over'}` }];
}
