import { type Fleet, type NonEmpty, sayChance, sayDuration } from '../vocabulary.ts';
import { sayNames } from './fleet-words.ts';
import { causeWords } from './outcome-words.ts';
import { sayCount } from './words.ts';

const hourSeconds = 3600;

/** The answer in a few sentences: the pairs that stand out, the groups that differ, the campaign. */
export function fleetSentences(fleet: Fleet): NonEmpty<string> {
  const { pairs, logRank, forecast, by, groups } = fleet;
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
  const compared =
    logRank === null
      ? `Sync times by ${by} can not be compared: ${whyNotCompared(groups)}.`
      : `Sync times by ${by} ${logRank.p <= 0.05 ? 'differ' : 'do not differ for sure'} (log-rank test, ${sayChance(logRank.p)}).`;
  return [
    first,
    ...trend,
    `${compared}${slowest(fleet)}`,
    ...drifting(fleet),
    nextSwaps(forecast),
    ...unfit(fleet),
    ...alikeSaid(fleet),
  ];
}

/** How long the campaign takes, or what is missing to say so. */
function nextSwaps(forecast: Fleet['forecast']): string {
  if (forecast === null || forecast.hours === null)
    return 'How long the next swaps take is not known: no reflash in the logs was followed by a ready partner that held.';
  return `The bring-ups of the next ${sayCount(forecast.swaps, 'swap')} take ${sayHours(forecast.low)} to ${sayHours(forecast.high)} in nine of ten cases.`;
}

/** What there is to say where no pair stands out: a pair that has no others beside it was not compared with any. */
function nothingStandsOut(pairs: Fleet['pairs']): string {
  const [only, ...others] = pairs;
  if (only === undefined || others.length > 0)
    return `Of ${sayCount(pairs.length, 'pair')} none loses its partner more often than chance explains.`;
  const lost = only.losses === 0 ? 'no loss of its partner' : sayCount(only.losses, 'loss', 'losses');
  return `${only.pair} is the only pair, with ${lost}: there is no other to compare it with.`;
}

function whyNotCompared({ length }: Fleet['groups']): string {
  if (length === 0) return 'the logs show no bring-up';
  return length === 1 ? 'there is one group' : 'no attempts overlap';
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

/** Of each cause with several groups the one whose median is the longest. */
function slowest({ groups, logRank }: Fleet): string {
  if (logRank === null || logRank.p > 0.05) return '';
  const causes = [...new Set(groups.map((g) => g.cause))];
  const said = causes.flatMap((cause) => {
    const own = groups.filter((g) => g.cause === cause && g.median.value !== null);
    const [worst, next] = own.sort((a, b) => (b.median.value ?? 0) - (a.median.value ?? 0));
    return worst === undefined || next === undefined
      ? []
      : [
          `${worst.group} is the slowest after a ${causeWords[cause]}: ${sayDuration(worst.median.value ?? 0)}, ${next.group} ${sayDuration(next.median.value ?? 0)} (medians)`,
        ];
  });
  return said.length === 0 ? '' : ` ${said.join('; ')}.`;
}

function sayHours(hours: number | null): string {
  return hours === null ? 'not known' : sayDuration(hours * hourSeconds);
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
