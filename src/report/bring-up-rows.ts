import type { BringUpRow } from '../charts/bring-ups.ts';
import { type BringUp, type Measure, sayLimit } from '../vocabulary.ts';
import { terminal } from './escape.ts';

const causes: Readonly<Record<BringUp['cause'], string>> = {
  inserted: 'insertion',
  restart: 'restart',
  reflash: 'reflash',
};

/** Width of the drawing, and of a word over a mark: two words that would meet are not both drawn. */
const width = 400;
const wordWidth = 48;

/** One row per bring-up that was watched to an outcome; one that the next start superseded is left to that one. */
export function bringUpRows(bringUps: readonly BringUp[], limitSeconds: number): readonly BringUpRow[] {
  const shown = bringUps.filter(
    (b) => b.outcome !== 'superseded' || b.ready !== null || b.light.outcome === 'exceeded',
  );
  const longest = Math.max(limitSeconds, ...shown.flatMap((b) => [b.sync.high ?? 0, b.light.high ?? 0]));
  const apart = (longest / width) * wordWidth;
  return shown.map((b, index) => ({
    name: nameOf(b, shown.slice(0, index)),
    ...times(b, limitSeconds, apart),
    limit: limitSeconds,
    // Said once: the rows share the line.
    limitWord: index === 0 ? sayLimit(limitSeconds) : '',
    outcome: outcomeOf(b.light),
    outcomeWord: sayOutcome(b.light),
  }));
}

/** `half B, reflash`; the second of a half and cause ends in 2, and so on. */
function nameOf({ half, cause }: BringUp, earlier: readonly BringUp[]): string {
  const name = `half ${terminal(half)}, ${causes[cause]}`;
  const same = earlier.filter((b) => b.half === half && b.cause === cause).length;
  return same === 0 ? name : `${name} ${same + 1}`;
}

function times(
  { ready, sync, light }: BringUp,
  limit: number,
  apart: number,
): Omit<BringUpRow, 'name' | 'limit' | 'limitWord' | 'outcome' | 'outcomeWord'> {
  const readyAt = ready === null ? null : sync.seconds;
  const steady = light.censored ? null : light.seconds;
  const end = light.seconds ?? sync.seconds;
  // A light may be steady before the partner is ready: then there is no stretch of ready before it.
  const notReadyTo = readyAt === null || end === null ? end : Math.min(readyAt, end);
  const late = light.outcome === 'exceeded' && end !== null && end > limit;
  const together = readyAt !== null && steady !== null && Math.abs(steady - readyAt) < apart;
  return {
    ready: readyAt,
    readyLow: readyAt === null ? null : sync.low,
    readyHigh: readyAt === null ? null : sync.high,
    readyWord: together ? '' : 'ready',
    steady,
    steadyLow: steady === null ? null : light.low,
    steadyHigh: steady === null ? null : light.high,
    steadyWord: together ? 'ready, steady' : 'steady',
    notReadyTo,
    end,
    lateFrom: late ? limit : null,
  };
}

function outcomeOf({ outcome }: Measure): BringUpRow['outcome'] {
  return outcome ?? 'not-observed';
}

function sayOutcome({ outcome, censored }: Measure): string {
  if (outcome === 'exceeded') return censored ? 'not steady, past the limit' : 'past the limit';
  if (outcome === 'inconclusive') return censored ? 'observation ended before the limit' : 'inconclusive';
  return outcome === 'within' ? '' : 'light not observed';
}
