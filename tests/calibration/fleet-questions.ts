import type { Random } from '../../samples/random.ts';
import type { Analyzer } from '../../src/analyze/analyzer.ts';
import { coincidence } from '../../src/analyze/coincidence.ts';
import { defaultLimits } from '../../src/analyze/limits.ts';
import { rhythm } from '../../src/analyze/rhythm.ts';
import { runAnalyzers } from '../../src/analyze/run-analyzers.ts';
import { factsOf } from '../../src/timeline/facts.ts';
import type { PairTimeline } from '../../src/vocabulary.ts';
import { countHits } from './count-hits.ts';
import { characters, type MadeFleet, madeFleet } from './made-fleets.ts';
import { hourMs, lossAt, madeFrom, madeTimeline, poissonTimes, secondMs } from './made-timelines.ts';
import type { Study, Trial } from './study.ts';

const sizes = [
  { pairs: 2, years: 2, cases: 1000 },
  { pairs: 20, years: 2, cases: 200 },
  { pairs: 100, years: 1, cases: 60 },
  { pairs: 20, years: 10, cases: 30 },
];
/** A fleet of storms in which one more pair has something to find. */
const others: MadeFleet = { character: 'stormy', pairs: 19, years: 2 };

/** Sound fleets in which losses, changes and hours have nothing to do with each other; and one pair in which they have. */
function studyOf(analyzer: Analyzer, setting: string, troubled: (random: Random) => PairTimeline): Study {
  return {
    name: `${analyzer.meta.id}: sound fleets with any finding`,
    run: (random, scale) => [
      ...characters.flatMap((character) =>
        sizes.map(({ cases: most, ...size }): Trial => {
          const cases = Math.ceil(most * scale);
          return {
            setting: `${character} losses, ${size.pairs} pairs, ${size.years === 1 ? '1 year' : `${size.years} years`}`,
            promised: { low: 0, high: defaultLimits.significance },
            hits: countHits(cases, () => isFound(analyzer, madeFleet(random, { character, ...size }))),
            cases,
          };
        }),
      ),
      foundAmongOthers(analyzer, setting, troubled, random, Math.ceil(100 * scale)),
    ],
  };
}

function foundAmongOthers(
  analyzer: Analyzer,
  setting: string,
  troubled: (random: Random) => PairTimeline,
  random: Random,
  cases: number,
): Trial {
  return {
    setting,
    promised: { low: 0.95, high: 1 },
    hits: countHits(cases, () => isFound(analyzer, [...madeFleet(random, others), troubled(random)])),
    cases,
  };
}

function isFound(analyzer: Analyzer, timelines: readonly PairTimeline[]): boolean {
  const facts = factsOf(timelines, defaultLimits.rules);
  const answers = runAnalyzers([analyzer], facts, defaultLimits);
  const failed = answers.find((answer) => answer.failed !== null);
  if (failed !== undefined) throw new Error(`${failed.analyzer} failed: ${failed.failed}`);
  return answers.some((answer) => answer.findings.length > 0);
}

export const coincidenceStudy = studyOf(
  coincidence,
  '6 losses after a change, stormy, 20 pairs: found',
  (random) => {
    const downs = poissonTimes(random, 100, 2).slice(0, 6);
    const changes = downs.map((time) => ({ time, half: 'B', signal: 'link-a', value: 'down' }) as const);
    const losses = downs.map((time) => lossAt(random, time + 10 * secondMs));
    return madeTimeline('BAD', 2, losses, changes);
  },
);

export const rhythmStudy = studyOf(rhythm, '12 losses between 02:00 and 04:00, 20 pairs: found', (random) => {
  const days = poissonTimes(random, 100, 2).slice(0, 12);
  const nights = days.map((time) => time - ((time - madeFrom) % (24 * hourMs)) + (2 + 2 * random()) * hourMs);
  return madeTimeline(
    'BAD',
    2,
    nights.map((time) => lossAt(random, time)),
  );
});
