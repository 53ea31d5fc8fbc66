import { decibans, evidenceBound } from '../statistics/evidence-bound.ts';
import { rateRatio } from '../statistics/rate-ratio.ts';
import { clip, total } from '../timeline/coverage.ts';
import { linesOfAll } from '../timeline/evidence.ts';
import { type Point, sayDuration, type TimelineEvent } from '../vocabulary.ts';
import { dropOuts } from './begins.ts';
import { type Cause, capped, doubted, type Trouble } from './cause.ts';
import { coincidenceOf, sayCoincidence } from './coincidence.ts';

export const poorSeating: Cause = {
  meta: {
    id: 'poor-seating',
    title: 'The module makes poor contact',
    kind: 'condition',
    explains: 'A module that drops out for moments and comes back, with no one pulling it.',
    shows:
      'Presence that comes and goes without a removal, a restart or a supply fault, more often than before.',
    needs: [['partner-present']],
    next: 'With the permit for it, and only once the cabinet shows which half is standby, reseat the standby module: guides, latch, screws, and a look at the contacts for dirt or a bent pin.',
  },
  weigh(trouble) {
    const drops = dropOuts(trouble.facts.timeline, trouble.rules).filter(
      (e) => e.time >= trouble.episode.from - trouble.limits.coincidenceSeconds * 1000,
    );
    const [first, ...rest] = drops;
    if (first === undefined)
      return doubted([
        {
          statement:
            'The second module did not drop out in this time without a removal, restart or supply fault.',
          evidence: trouble.evidence,
        },
      ]);
    const evidence = linesOfAll([first, ...rest]);
    if (drops.length < trouble.limits.patternCount)
      return doubted([
        {
          statement: `The second module dropped out ${drops.length === 1 ? 'once' : 'twice'}: too few to tell.`,
          evidence,
        },
      ]);
    return weighDrops(trouble, [first, ...rest]);
  },
};

/** The stronger of two counts of the same drop-outs: more often than before, and just before failures. */
function weighDrops(
  trouble: Trouble,
  drops: readonly [TimelineEvent, ...TimelineEvent[]],
): ReturnType<Cause['weigh']> {
  const { limits, facts, episode, to } = trouble;
  const coming = coincidenceOf(trouble, drops);
  const before = dropOuts(facts.timeline, trouble.rules).length - drops.length;
  const hours = (from: number, to: number): number =>
    total(clip(facts.timeline.observed, from, to)) / 3_600_000;
  const earlierHours = hours(facts.timeline.from, episode.from);
  const rate = rateRatio(
    { count: drops.length, exposure: hours(episode.from, to) },
    { count: before, exposure: earlierHours },
    limits.confidence,
  );
  const rarer = rate === null ? 0 : decibans(evidenceBound(rate.p));
  const counted: Point = {
    statement: `The second module dropped out ${drops.length} times in this time, and ${before} times in the ${sayDuration(earlierHours * 3600)} before, with no removal, restart or supply fault.`,
    evidence: linesOfAll(drops),
  };
  const followed: readonly Point[] =
    coming === null
      ? []
      : [{ statement: sayCoincidence(coming, 'it dropped out'), evidence: coming.evidence }];
  return {
    decibans: capped(Math.max(rarer, coming?.decibans ?? 0) + limits.hinderingDecibans, limits),
    for: [counted, ...followed],
    against: [],
  };
}
