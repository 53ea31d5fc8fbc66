import { predictCount } from '../statistics/predict-count.ts';
import { total } from '../timeline/coverage.ts';
import type { BoutsAhead, ComparedPair } from '../vocabulary.ts';
import { type FleetLimits, yearSeconds } from './limits.ts';

/** What is asked of a pair. */
export type PairBouts = Pick<ComparedPair, 'pair' | 'observed' | 'bouts'>;

/**
 * How many bouts of losses the next year brings, if all goes on as it was: over the pairs that were observed for at least
 * `leastSeconds` together, and for each of them. `null` without such a pair.
 *
 * Bouts of several pairs that begin within `waveMs` of each other came from one trouble: waves of `k` bouts on average (each
 * bout counted once, so a large wave weighs more) make the count scatter as `count / k` waves of `k` would, and so it is
 * predicted. Source: McCullagh and Nelder, Generalized Linear Models (1989), section 6.2.3, clustered counts (from memory).
 */
export function boutsAhead(fleet: readonly PairBouts[], limits: FleetLimits): BoutsAhead | null {
  const { leastSeconds, waveMs } = limits.nextYear;
  const counted = fleet
    .map(({ pair, observed, bouts }) => ({
      pair,
      times: bouts.map((b) => b.time),
      observedSeconds: total(observed) / 1000,
    }))
    .filter((c) => c.observedSeconds >= leastSeconds);
  const times = counted.flatMap((c) => c.times);
  const observedSeconds = counted.reduce((sum, c) => sum + c.observedSeconds, 0);
  const size = waveSize(times, waveMs);
  const waves = predictCount(
    { count: times.length / size, exposure: observedSeconds / yearSeconds },
    counted.length,
    limits.confidence,
  );
  if (waves === null) return null;
  const pairs = counted.flatMap((c) => {
    const seen = { count: c.times.length, exposure: c.observedSeconds / yearSeconds };
    const found = predictCount(seen, 1, limits.confidence);
    return found === null ? [] : [{ pair: c.pair, bouts: c.times.length, ...found }];
  });
  return {
    bouts: times.length,
    observedSeconds,
    value: waves.value * size,
    low: Math.floor(waves.low * size + rounding),
    high: Math.ceil(waves.high * size - rounding),
    pairs,
  };
}

const rounding = 1e-9;

/** The size of the wave that a bout belongs to, on average over all bouts; 1 where none came together with another. */
function waveSize(times: readonly number[], waveMs: number): number {
  const sizes: number[] = [];
  let before = Number.NEGATIVE_INFINITY;
  for (const time of [...times].sort((a, b) => a - b)) {
    if (time - before <= waveMs) sizes.push((sizes.pop() ?? 0) + 1);
    else sizes.push(1);
    before = time;
  }
  return sizes.reduce((sum, size) => sum + size ** 2, 0) / Math.max(1, times.length) || 1;
}
