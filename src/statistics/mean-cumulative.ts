/** One unit that was watched from 0 to `end`, with the times of its events: any order, the same time twice counts twice. */
export interface WatchedUnit {
  readonly events: readonly number[];
  readonly end: number;
}

/** The mean number of events of a unit up to a time, from units that were watched for so long. */
export interface MeanCumulative {
  readonly time: number;
  readonly watched: number;
  readonly mean: number;
  readonly standardError: number;
}

/**
 * The mean cumulative function of repeated events, a step at each time at which there is one, with the robust standard
 * error, which rests on the spread between the units and needs no Poisson process. A unit whose watch ends at a time is
 * watched then; an event after its end is an error of the caller. Sources: Nelson, Confidence Limits for Recurrence Data - Applied to Cost or Number of Product Repairs,
 * Technometrics 37 (1995), section 2; Lawless and Nadeau, Some Simple Robust Methods for the Analysis of Recurrent
 * Events, Technometrics 37 (1995), section 2 (both from memory).
 */
export function meanCumulative(units: readonly WatchedUnit[]): readonly MeanCumulative[] {
  const sorted = [...units].sort((a, b) => a.end - b.end);
  const events = sorted
    .flatMap((unit, index) => unit.events.map((time) => ({ time, index })))
    .sort((a, b) => a.time - b.time);
  const own = new Float64Array(sorted.length);
  const steps: MeanCumulative[] = [];
  // Each step lowers the deviations of all that are watched by as much: what it is so far is kept once for all of them.
  let [ended, mean, lowered, next] = [0, 0, 0, 0];
  let [sum, squares, squaresOfEnded] = [0, 0, 0];
  while (next < events.length) {
    const time = events[next]?.time ?? Number.POSITIVE_INFINITY;
    for (; (sorted[ended]?.end ?? Number.POSITIVE_INFINITY) < time; ended += 1) {
      const deviation = (own[ended] ?? 0) - lowered;
      sum -= deviation;
      squares -= deviation ** 2;
      squaresOfEnded += deviation ** 2;
    }
    const watched = sorted.length - ended;
    const first = next;
    for (; events[next]?.time === time; next += 1) {
      const index = events[next]?.index ?? 0;
      const before = (own[index] ?? 0) - lowered;
      own[index] = (own[index] ?? 0) + 1 / watched;
      sum += 1 / watched;
      squares += (2 * before + 1 / watched) / watched;
    }
    const increase = (next - first) / watched;
    const by = increase / watched;
    squares += by * (increase - 2 * sum);
    sum -= increase;
    lowered += by;
    mean += increase;
    // Rounding may take a sum of squares below zero.
    const variance = Math.max(0, squares) + squaresOfEnded;
    steps.push({ time, watched, mean, standardError: Math.sqrt(variance) });
  }
  return steps;
}
