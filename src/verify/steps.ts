import { between, measured } from '../timeline/durations.ts';
import { linesOf } from '../timeline/evidence.ts';
import { countUntil, track } from '../timeline/tracks.ts';
import {
  type BringUp,
  type Measure,
  type Step,
  type Switchover,
  sayDuration,
  type TimelineEvent,
} from '../vocabulary.ts';
import type { SwapCase } from './check.ts';

/** The steps of a swap in the order of time: what was done, and how long the pair took. */
export function stepsOf(swap: SwapCase): readonly Step[] {
  const { facts, changes, bringUps, switchovers, to } = swap;
  const begin = changes[0].removed.earliest;
  const moves = facts.timeline.events.filter((e) => e.time >= begin && e.time <= to);
  return [
    ...moves.flatMap(moveStep),
    ...bringUps.flatMap((b) => [...readyStep(b), ...lightStep(swap, b)]),
    ...switchovers.map(switchoverStep),
  ].sort((a, b) => a.earliest - b.earliest || a.time - b.time);
}

const sayings: Readonly<Record<string, readonly [string, readonly string[]]>> = {
  removed: ['Module removed', ['removed-standby', 'one-half-at-a-time']],
  inserted: ['New module inserted', ['identified-standby']],
  'reflash-start': ['Reflash started', []],
  'reflash-end': ['Reflash ended', ['firmware-matched']],
  restart: ['Module restarted', []],
  'sync-failed': ['Sync failed', ['synchronised']],
  'switchover-command': ['Switchover commanded', ['switchover-commanded']],
};

function moveStep(event: TimelineEvent): readonly Step[] {
  const saying = sayings[event.signal];
  if (saying === undefined) return [];
  const [words, checks] = saying;
  const half = event.half === null ? '' : `, half ${event.half}`;
  return [
    {
      ...instant(event),
      half: event.half,
      statement: `${words}${half}`,
      duration: null,
      checks,
      evidence: linesOf(event),
    },
  ];
}

function readyStep(bringUp: BringUp): readonly Step[] {
  const { half, ready, sync, cause, evidence } = bringUp;
  if (ready === null) return [];
  const since = cause === 'inserted' ? 'insertion' : cause;
  return [
    {
      ...ready,
      half,
      statement: `Partner ready${whetherHeld(bringUp)}; time from the ${since} of half ${half}`,
      duration: sync,
      checks: ['synchronised', 'soaked'],
      evidence,
    },
  ];
}

function whetherHeld({ settled, mayHaveSettledAt, outcome }: BringUp): string {
  if (settled !== null) return ' and stayed ready';
  return mayHaveSettledAt === null ? ` but did not stay ready (${outcome})` : `, ${unheld} ready`;
}

function unsettled(steady: TimelineEvent | undefined): string {
  return steady === undefined ? 'still not steady' : `steady, ${unheld} steady`;
}

const unheld = 'observation too short to tell whether it stayed';

function lightStep({ facts }: SwapCase, bringUp: BringUp): readonly Step[] {
  const { half, light, start, lightEvidence, watchedTo } = bringUp;
  if (light.seconds === null) return [];
  const steps = track(facts.timeline, half, 'light');
  const watched = steps.slice(countUntil(steps, start.time, 'before'), countUntil(steps, watchedTo));
  const steady = light.censored
    ? watched.slice(-1).find((s) => s.value === 'steady')
    : watched.find(
        (s) => s.value === 'steady' && between({ ...start, resolution: 0 }, s).seconds === light.seconds,
      );
  // A bring-up that another start superseded says nothing of its light: the next one does.
  if (light.censored && bringUp.outcome === 'superseded' && light.outcome !== 'exceeded') return [];
  const at = steady === undefined ? { time: watchedTo, earliest: watchedTo } : instant(steady);
  const statement = `Light of half ${half} ${light.censored ? unsettled(steady) : 'steady'}`;
  return [{ ...at, half, statement, duration: light, checks: ['light-steady'], evidence: lightEvidence }];
}

function switchoverStep({
  at,
  fromHalf,
  toHalf,
  gapSeconds,
  readySeconds,
  partnerReady,
  evidence,
}: Switchover): Step {
  const ready = partnerReady === null ? '' : partnerReady ? '' : ', partner not ready';
  const since = readySeconds === null ? '' : `, partner ready for ${sayDuration(readySeconds)}`;
  const { low, high } = gapSeconds;
  const gap: Measure | null = low === null || high === null ? null : measured({ seconds: low, low, high });
  const passed = fromHalf === null || toHalf === null ? '' : ` from half ${fromHalf} to half ${toHalf}`;
  const took = gap === null ? '' : '; time without an active half';
  return {
    ...at,
    half: toHalf,
    statement: `Switchover${passed}${ready}${since}${took}`,
    duration: gap,
    checks: ['ready-before-switchover', 'never-without-active'],
    evidence,
  };
}

function instant({ time, earliest }: { readonly time: number; readonly earliest: number }): {
  time: number;
  earliest: number;
} {
  return { time, earliest };
}
