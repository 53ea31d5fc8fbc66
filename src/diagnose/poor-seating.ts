import { decibans, evidenceBound } from '../statistics/evidence-bound.ts';
import { rateRatio } from '../statistics/rate-ratio.ts';
import { clip, total } from '../timeline/coverage.ts';
import { between } from '../timeline/durations.ts';
import { linesOfAll } from '../timeline/evidence.ts';
import { spells, track } from '../timeline/tracks.ts';
import { type Point, sayDuration, type TimelineEvent } from '../vocabulary.ts';
import { dropOuts } from './begins.ts';
import { type Cause, capped, doubted, type Trouble } from './cause.ts';
import { coincidenceOf, sayCoincidence } from './coincidence.ts';

/**
 * Least evidence with which a good engineer would name it: four drop-outs of presence for moments in one trouble, with no removal,
 * restart or supply fault that would explain them and rarer or none before; or three that failures follow, or that come so much more
 * often than before. One that lasts over a minute is no moment: somebody may have pulled the module. Common practice, no source.
 */
export const poorSeating: Cause = {
  meta: {
    id: 'poor-seating',
    title: 'The module makes poor contact',
    kind: 'condition',
    explains: 'A module that drops out briefly and comes back, without being pulled.',
    shows:
      'Presence that comes and goes without a removal, a restart or a supply fault, more often than before.',
    needs: [['partner-present']],
    next: 'With the permit for it, and only once the cabinet shows which half is standby, reseat the standby module: guides, latch, screws, and a look at the contacts for dirt or a bent pin.',
  },
  weigh(trouble) {
    const { episode, limits, evidence } = trouble;
    const all = momentsOf(trouble);
    const drops = all.filter((e) => e.time >= episode.from - limits.coincidenceSeconds * 1000);
    const [first, ...rest] = drops;
    if (first === undefined) {
      const statement =
        'The second module did not drop out in this time without a removal, restart or supply fault.';
      return doubted([{ statement, evidence }]);
    }
    if (drops.length < limits.patternCount) {
      const statement = `The second module dropped out ${drops.length === 1 ? 'once' : 'twice'}: too few to tell.`;
      return doubted([{ statement, evidence: linesOfAll([first, ...rest]) }]);
    }
    return weighDrops(trouble, [first, ...rest], all.length - drops.length);
  },
};

/** Drop-outs that nothing else explains and after which the module was seen again, maybe within the time of a moment. */
function momentsOf({ facts: { timeline }, rules, limits }: Trouble): readonly TimelineEvent[] {
  const moments = spells(track(timeline, null, 'partner-present'), 'no').filter(
    ({ start, end }) => end !== null && between(start, end).low <= limits.momentSeconds,
  );
  const starts = new Set(moments.map((m) => m.start));
  return dropOuts(timeline, rules).filter((e) => starts.has(e));
}

/** What common practice says of so many, and the stronger of two counts of them: more often than before, and just before failures. */
function weighDrops(
  trouble: Trouble,
  drops: readonly [TimelineEvent, ...TimelineEvent[]],
  before: number,
): ReturnType<Cause['weigh']> {
  const { limits, facts, episode, to } = trouble;
  // Where only presence is logged the losses are the drop-outs themselves.
  const coming = facts.readiness.signal === 'partner-ready' ? coincidenceOf(trouble, drops) : null;
  const hours = (from: number, until: number): number =>
    total(clip(facts.timeline.observed, from, until)) / 3_600_000;
  const earlierHours = hours(facts.timeline.from, episode.from);
  const rate = rateRatio(
    { count: drops.length, exposure: hours(episode.from, to) },
    { count: before, exposure: earlierHours },
    limits.confidence,
  );
  const rarer = rate === null ? 0 : decibans(evidenceBound(rate.p));
  const isPattern = drops.length > limits.patternCount && (before === 0 || rarer > 0);
  const counted: Point = {
    statement: `The second module dropped out ${drops.length} times in this time, and ${before} times in the ${sayDuration(earlierHours * 3600)} before, with no removal, restart or supply fault.`,
    evidence: linesOfAll(drops),
  };
  const followed: readonly Point[] =
    coming === null
      ? []
      : [{ statement: sayCoincidence(coming, 'it dropped out'), evidence: coming.evidence }];
  const prior = isPattern ? limits.forbiddingDecibans : limits.hinderingDecibans;
  return {
    decibans: capped(Math.max(rarer, coming?.decibans ?? 0) + prior, limits),
    for: [counted, ...followed],
    against: [],
  };
}
