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
  { pairs: 100, years: 1, cases: 40 },
  { pairs: 20, years: 10, cases: 20 },
];
const analyzers = [coincidence, rhythm];

/** Sound fleets in which losses, changes and hours have nothing to do with each other; and one pair in which they have. */
export const questionsStudy: Study = {
  name: 'coincidence and rhythm: sound fleets with a finding',
  run: (random, scale) => [
    ...characters.flatMap((character) =>
      sizes.flatMap((size) => soundTrials(random, { ...size, character }, Math.ceil(size.cases * scale))),
    ),
    foundAmongOthers('6 losses after a change, found', coincidence, afterChange, random, scale),
    foundAmongOthers('12 losses from 02:00 to 04:00, found', rhythm, atNight, random, scale),
  ],
};

function soundTrials(random: Random, made: MadeFleet, cases: number): readonly Trial[] {
  const found = Array.from({ length: cases }, () => toldIn(analyzers, madeFleet(random, made)));
  const years = made.years === 1 ? '1 year' : `${made.years} years`;
  return analyzers.map(({ meta }) => ({
    setting: `${meta.id}, ${made.character}, ${made.pairs} pairs, ${years}`,
    promised: { low: 0, high: defaultLimits.significance },
    hits: found.filter((told) => told.has(meta.id)).length,
    cases,
  }));
}

/** The last of twenty pairs has something to find, the others are in storms. */
function foundAmongOthers(
  setting: string,
  analyzer: Analyzer,
  troubled: (random: Random) => PairTimeline,
  random: Random,
  scale: number,
): Trial {
  const cases = Math.ceil(50 * scale);
  const others: MadeFleet = { character: 'stormy', pairs: 19, years: 2 };
  const isFound = (): boolean =>
    toldIn([analyzer], [...madeFleet(random, others), troubled(random)]).has(analyzer.meta.id);
  return { setting, promised: { low: 0.95, high: 1 }, hits: countHits(cases, isFound), cases };
}

/** The analyzers that tell anything of any pair. */
function toldIn(asked: readonly Analyzer[], timelines: readonly PairTimeline[]): ReadonlySet<string> {
  const answers = runAnalyzers(asked, factsOf(timelines, defaultLimits.rules), defaultLimits);
  const failed = answers.find((answer) => answer.failed !== null);
  if (failed !== undefined) throw new Error(`${failed.analyzer} failed: ${failed.failed}`);
  return new Set(answers.filter((a) => a.findings.length > 0).map((a) => a.analyzer));
}

/** Six losses in two years, each ten seconds after link a went down. */
function afterChange(random: Random): PairTimeline {
  const downs = poissonTimes(random, 100, 2).slice(0, 6);
  const changes = downs.map((time) => ({ time, half: 'B', signal: 'link-a', value: 'down' }) as const);
  const losses = downs.map((time) => lossAt(random, time + 10 * secondMs));
  return madeTimeline('BAD', 2, losses, changes);
}

/** Twelve losses on days by chance, between two and four at night. */
function atNight(random: Random): PairTimeline {
  const dayMs = 24 * hourMs;
  const days = poissonTimes(random, 100, 2).slice(0, 12);
  const nights = days.map((time) => time - ((time - madeFrom) % dayMs) + (2 + 2 * random()) * hourMs);
  return madeTimeline(
    'BAD',
    2,
    nights.map((time) => lossAt(random, time)),
  );
}
