import { predictTotals, type Try } from '../statistics/predict-totals.ts';
import { type ComparedBringUp, compareText, type Fleet } from '../vocabulary.ts';
import type { FleetLimits } from './limits.ts';

const hourSeconds = 3600;
/** A swap replaces the modules of both halves. */
const modulesOfSwap = 2;

/**
 * How many hours the bring-ups of the next swaps take, each of two modules, learnt from the newest reflashes; `steps` lead
 * there from one swap on. A reflash that did not settle is made again, as often as the logs show. `null` without a reflash
 * that settled or without a swap; limits are `null` where there are fewer than `needed`, since so few need not show that some
 * fail or take far longer. It is the time of bring-up alone: people and permits are not in the logs.
 */
export function forecastOf(
  attempts: readonly ComparedBringUp[],
  swaps: number,
  { forecast }: FleetLimits,
): Fleet['forecast'] {
  const tries = attempts
    .filter((a) => a.cause === 'reflash')
    .sort((a, b) => a.start.time - b.start.time || compareText(a.pair, b.pair) || compareText(a.half, b.half))
    .flatMap((a) => tryOf(a, forecast.stopSeconds))
    .slice(-forecast.newest);
  const settled = tries.filter((t) => t.succeeded).length;
  if (settled === 0) return null;
  const counts = stepsTo(swaps, forecast.steps);
  const sizes = counts.map((count) => count * modulesOfSwap);
  const perModule = tries.reduce((sum, { time }) => sum + time, 0) / settled;
  const limits = tries.length < forecast.least ? [] : predictTotals(tries, sizes, forecast);
  const steps = counts.map((count, index) => ({
    swaps: count,
    hours: perModule * count * modulesOfSwap,
    low: limits[index]?.low ?? null,
    high: limits[index]?.high ?? null,
  }));
  const last = steps.at(-1);
  if (last === undefined) return null;
  const { least: needed, confidence } = forecast;
  return { ...last, reflashes: tries.length, failed: tries.length - settled, needed, confidence, steps };
}

/**
 * A reflash as a try, in hours. It failed if it was lost or superseded, or watched for as long as one waits before one stops, and
 * counts as long as it was watched, at most so long. One that its log did not show to an end says nothing.
 */
function tryOf(
  { outcome, settledSeconds, held, start, watchedTo }: ComparedBringUp,
  stopSeconds: number,
): readonly Try[] {
  if (settledSeconds !== null) {
    const width = (held.high ?? settledSeconds) - (held.low ?? settledSeconds);
    return [{ time: settledSeconds / hourSeconds, width: width / hourSeconds, succeeded: true }];
  }
  const watched = (watchedTo - start.time) / 1000;
  if (outcome === 'unfinished' && watched < stopSeconds) return [];
  return [{ time: Math.min(watched, stopSeconds) / hourSeconds, width: 0, succeeded: false }];
}

/** Whole numbers up to the last, evenly apart, at most so many. */
function stepsTo(last: number, most: number): readonly number[] {
  const count = Math.min(last, most);
  return Array.from({ length: count }, (_, index) => Math.round(((index + 1) * last) / count));
}
