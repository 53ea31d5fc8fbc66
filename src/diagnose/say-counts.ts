import { isFailed } from '../timeline/attempts.ts';
import { type Attempt, sayAbout, sayBounds } from '../vocabulary.ts';

/**
 * How many attempts were logged and how many of them failed for sure, to go into a sentence; `when` begins with a blank, or is empty.
 * A mere wait after a loss is none.
 */
export function sayCounts(attempts: readonly Attempt[], when = ''): string {
  const logged = attempts.filter((a) => a.cause !== 'loss');
  const failed = logged.filter((a) => isFailed(a));
  const open = logged.filter((a) => a.outcome === 'inconclusive').length;
  if (logged.length === 0) return `no attempt was logged${when}`;
  if (logged.length === 1) return `one attempt was logged${when}, which ${sayOne(logged, failed, open)}`;
  const all = failed.length === logged.length;
  const which = all
    ? logged.length === 2
      ? 'both'
      : 'all'
    : failed.length === 0
      ? 'none'
      : failed.length === 1
        ? 'one'
        : String(failed.length);
  const unjudged = open === 0 ? '' : `; ${open === 1 ? 'one' : open} ${notJudged}`;
  return `${logged.length} attempts were logged${when}, ${which} of which failed for sure${sayAfter(failed)}${unjudged}`;
}

const notJudged = 'could not be judged, since readiness was not observed closely enough';

function sayOne(logged: readonly Attempt[], failed: readonly Attempt[], open: number): string {
  if (failed.length === 1) return `failed for sure${sayAfter(failed)}`;
  if (logged[0]?.outcome === 'ready') return 'became ready';
  return open === 1 ? notJudged : 'did not fail for sure';
}

/** How long failed syncs took, where every failed attempt is one whose start was logged. */
function sayAfter(failed: readonly Attempt[]): string {
  const took = failed.flatMap((a) => a.abort ?? []).toSorted((a, b) => a.seconds - b.seconds);
  const [shortest, longest] = [took[0], took.at(-1)];
  if (shortest === undefined || longest === undefined || took.length < failed.length) return '';
  const [from, to] = [sayAbout(shortest), sayAbout(longest)];
  if (from === to) return ` after ${from}${took.length === 1 ? '' : ' each'}`;
  const isClose = took.every(({ low, high }) => high - low <= 2);
  const range = sayBounds(Math.min(...took.map((t) => t.low)), Math.max(...took.map((t) => t.high)));
  return ` after ${isClose ? `${from} to ${to.replace(/^about /, '')}` : range}`;
}
