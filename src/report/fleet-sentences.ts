import { type Fleet, type NonEmpty, sayDuration } from '../vocabulary.ts';
import { boutsSentences, forecastSentence } from './ahead-words.ts';
import { sayNames } from './fleet-words.ts';
import { causeWords } from './outcome-words.ts';
import { syncSentences } from './sync-words.ts';
import { sayCount } from './words.ts';

/** The answer in a few sentences: the pairs that stand out, the groups that differ, the campaign. */
export function fleetSentences(fleet: Fleet): NonEmpty<string> {
  const { pairs } = fleet;
  const worse = pairs.filter((p) => p.standsOut);
  const names = worse.map(
    (p) =>
      `${p.pair} (${p.losses === 1 ? 'one loss' : `${p.losses} losses`}, ${(p.ratePerYear.value ?? 0).toFixed(1)} a year)`,
  );
  const first =
    worse.length === 0
      ? nothingStandsOut(pairs)
      : `${sayNames(names)} ${worse.length === 1 ? 'loses its' : 'lose their'} partner more often than the rest of the fleet.`;
  const growing = pairs.filter((p) => p.trend.comesCloser);
  const trend =
    growing.length === 0 ? [] : [`Losses come ever closer at ${sayNames(growing.map((p) => p.pair))}.`];
  return [
    first,
    ...trend,
    ...syncSentences(fleet),
    ...drifting(fleet),
    forecastSentence(fleet),
    ...boutsSentences(fleet),
    ...unfit(fleet),
    ...alikeSaid(fleet),
  ];
}

/** What there is to say where no pair stands out: a pair that has no others beside it was not compared with any. */
function nothingStandsOut(pairs: Fleet['pairs']): string {
  const [only, ...others] = pairs;
  if (only === undefined || others.length > 0)
    return `Of ${sayCount(pairs.length, 'pair')} none loses its partner more often than chance explains.`;
  const lost = only.losses === 0 ? 'no loss of its partner' : sayCount(only.losses, 'loss', 'losses');
  return `${only.pair} is the only pair, with ${lost}: there is no other to compare it with.`;
}

/** The groups whose smoothed sync times lie outside their limits at the end. */
function drifting({ drifts }: Fleet): readonly string[] {
  return drifts.flatMap(({ group, cause, target, points }) => {
    const last = points.at(-1);
    if (last?.isOutside !== true) return [];
    return [
      `Sync times of ${group} after a ${causeWords[cause]} drift: ${sayDuration(last.average)} now, ${sayDuration(target)} before.`,
    ];
  });
}

/** Which pairs are not fit for a swap, where there are few. */
function unfit({ pairs }: Fleet): readonly string[] {
  const names = pairs.filter((p) => !p.readiness.fit).map((p) => p.pair);
  if (names.length === 0) return [];
  if (names.length === pairs.length) return ['No pair is fit for a swap as its log ends.'];
  return names.length > 5
    ? [`${names.length} of ${pairs.length} pairs are not fit for a swap as their logs end.`]
    : [`Not fit for a swap as their logs end: ${names.join(', ')}.`];
}

/** Names that may be one release: only a person knows. */
function alikeSaid({ alike }: Fleet): readonly string[] {
  return alike.map(
    (names) =>
      `${names.join(' and ')} may be one under ${names.length} names: they are compared as ${names.length}. Give them one value in the phrasebook if they are.`,
  );
}
