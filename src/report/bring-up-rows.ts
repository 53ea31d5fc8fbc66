import type { BringUpRow } from '../charts/bring-ups.ts';
import { type BringUp, sayDuration } from '../vocabulary.ts';
import { terminal } from './escape.ts';

const causes: Readonly<Record<BringUp['cause'], string>> = {
  inserted: 'insertion',
  restart: 'restart',
  reflash: 'reflash',
};

/** One row per bring-up that was watched to an outcome; one that the next start superseded is left to that one. */
export function bringUpRows(bringUps: readonly BringUp[], limitSeconds: number): readonly BringUpRow[] {
  return bringUps
    .filter((b) => b.outcome !== 'superseded' || b.ready !== null || b.light.outcome === 'exceeded')
    .map((b, index) => {
      const seen = !b.light.censored && b.light.seconds !== null;
      const readySeen = b.ready !== null;
      return {
        name: `half ${terminal(b.half)}, ${causes[b.cause]}`,
        ready: readySeen ? b.sync.seconds : null,
        readyLow: readySeen ? b.sync.low : null,
        readyHigh: readySeen ? b.sync.high : null,
        steady: seen ? b.light.seconds : null,
        steadyLow: seen ? b.light.low : null,
        steadyHigh: seen ? b.light.high : null,
        watched: seen ? null : b.light.seconds,
        limit: limitSeconds,
        // Said once: the rows share the line.
        limitWord: index === 0 ? (limitSeconds === 300 ? 'five minutes' : sayDuration(limitSeconds)) : '',
        late:
          b.light.outcome === 'exceeded'
            ? 'not steady, past the limit'
            : b.light.censored
              ? 'not steady'
              : '',
      };
    });
}
