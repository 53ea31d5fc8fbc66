import { isFailed } from '../timeline/attempts.ts';
import { type Attempt, sayAbout, sayBounds } from '../vocabulary.ts';

/**
 * How many attempts were logged and how many of them certainly failed, to go into a sentence; `when` begins with a blank, or is empty.
 * A mere wait after a loss is none.
 */
export function sayCounts(attempts: readonly Attempt[], when = ''): string {
  const logged = attempts.filter((a) => a.cause !== 'loss');
  const failed = logged.filter((a) => isFailed(a));
  const open = logged.filter((a) => a.outcome === 'inconclusive').length;
  if (logged.length === 0) return `no attempt was logged${when}`;
  if (logged.length === 1) return `one attempt was logged${when}, which ${sayOne(logged, failed, open)}`;
  const unjudged = open === 0 ? '' : `; ${open === 1 ? 'one' : open} ${notJudged}`;
  if (failed.length === 0)
    return `none of ${logged.length} attempts${when} is known to have failed${unjudged}`;
  const which =
    failed.length < logged.length
      ? `${failed.length} of ${logged.length} attempts`
      : logged.length === 2
        ? 'both attempts'
        : `all ${logged.length} attempts`;
  return `${which}${when} failed${sayAfter(failed)}${unjudged}`;
}

const notJudged = 'could not be judged because readiness was not observed closely enough';

function sayOne(logged: readonly Attempt[], failed: readonly Attempt[], open: number): string {
  if (failed.length === 1) return `failed${sayAfter(failed)}`;
  if (logged[0]?.outcome === 'ready') return 'became ready';
  return open === 1 ? notJudged : 'is not known to have failed';
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
