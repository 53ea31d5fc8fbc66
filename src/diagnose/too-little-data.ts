import { type Point, sayDuration, sayTimes } from '../vocabulary.ts';
import { type Cause, doubted, type Trouble, type Weighed } from './cause.ts';
import { exportsFor } from './exports-for.ts';
import { sayCounts } from './say-counts.ts';

/** What is said where no cause reaches its least evidence: what there is, what could not be judged, what to export next. */
export const tooLittleData: Cause = {
  meta: {
    id: 'too-little-data',
    title: 'Too little data to name a cause',
    kind: 'neither',
    explains: 'A pair in trouble whose logs support no cause strongly.',
    shows: 'No cause reaches 10 to 1 with what was exported.',
    needs: [],
    next: 'Export more and read it together with these files.',
  },
  weigh(trouble, others) {
    const best = Math.max(0, ...others.map((o) => o.weighing.decibans));
    if (best >= trouble.limits.leadDecibans) return doubted([]);
    const missing = others.filter((o) => o.missing.length > 0);
    const { evidence } = trouble;
    const points: Point[] = [{ statement: sayWhatThereIs(trouble), evidence }];
    if (missing.length > 0)
      points.push({
        statement: `Not enough data to judge: ${missing.map((o) => o.cause.meta.id).join(', ')}.`,
        evidence,
      });
    return { decibans: 0, for: points, against: [], next: nextExport(trouble, others) };
  },
};

function sayWhatThereIs({ attempts, observations, from, to }: Trouble): string {
  const ready = observations.filter((o) => o.ready).length;
  const compared = ready === 0 ? 'no partner stayed ready' : `a partner was ready ${sayTimes(ready)}`;
  return `In ${sayDuration((to - from) / 1000)} ${sayCounts(attempts)}; for comparison, ${compared}.`;
}

/** What to export next: what the causes that could not be judged need, the first of them first; else more of the same. */
function nextExport({ facts, kind, attempts, failed, rules }: Trouble, others: readonly Weighed[]): string {
  const { pair } = facts.timeline;
  const missing = [
    ...new Set([...(kind === 'unknown' ? ['partner-ready'] : []), ...others.flatMap((o) => o.missing)]),
  ];
  const wanted = exportsFor(missing);
  const limit = sayDuration(rules.lightLimitSeconds);
  const early = failed.length === 0 && attempts.at(-1)?.outcome === 'unfinished';
  const wait = early
    ? `No attempt is known to have failed yet: wait until ${limit} after the start, then export again. `
    : '';
  if (wanted.length > 0) return `${wait}Export for ${pair}, over the same time: ${wanted.join('; ')}.`;
  return `${wait}All signals needed were logged for ${pair}, but too little happened: export a longer time with the last successful bring-up, and other pairs of the same model and firmware for comparison.`;
}
