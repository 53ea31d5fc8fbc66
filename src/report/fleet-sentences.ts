import { type Fleet, type NonEmpty, sayChance, sayDuration } from '../vocabulary.ts';
import { lossSentences, type NextStep } from './loss-sentences.ts';
import { causeWords } from './outcome-words.ts';
import { sayCount } from './words.ts';

const hourSeconds = 3600;

/**
 * The answer in a few sentences: the pairs that stand out, each with why, since when and what to do next; the groups that
 * differ, the campaign.
 */
export function fleetSentences(fleet: Fleet, next: NextStep = diagnoseNext): NonEmpty<string> {
  const { logRank, forecast, by, groups } = fleet;
  const [first, ...losses] = lossSentences(fleet, next);
  const compared =
    logRank === null
      ? `Sync times by ${by} can not be compared: ${whyNotCompared(groups)}.`
      : `Sync times by ${by} ${logRank.p <= 0.05 ? 'differ' : 'do not differ for sure'} (log-rank test, ${sayChance(logRank.p)}).`;
  return [
    first,
    ...losses,
    `${compared}${slowest(fleet)}`,
    ...drifting(fleet),
    nextSwaps(forecast),
    ...unfit(fleet),
    ...alikeSaid(fleet),
  ];
}

/** In a report, which is read with neither the page nor a command line at hand. */
function diagnoseNext(pair: string): string {
  return `diagnose ${pair}, and ${atTheCabinet}`;
}

/** What to check on a pair that loses its partner too often and is ready now. Common practice, no source. */
export const atTheCabinet =
  'check the seating of both modules, their supply and both networks before its next swap';

/** How long the campaign takes, or what is missing to say so. */
function nextSwaps(forecast: Fleet['forecast']): string {
  if (forecast === null || forecast.hours === null)
    return 'How long the next swaps take is not known: no reflash in the logs was followed by a ready partner that held.';
  return `The bring-ups of the next ${sayCount(forecast.swaps, 'swap')} take ${sayHours(forecast.low)} to ${sayHours(forecast.high)} in nine of ten cases.`;
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

/** Which pairs are not fit for a swap, where there are few, and of which it is not known. */
function unfit({ pairs }: Fleet): readonly string[] {
  return [
    ...namedIf(pairs, false, 'No pair was ready for a swap when its log ended.', 'Not fit for a swap'),
    ...namedIf(
      pairs,
      null,
      'Of no pair is it known whether it is fit for a swap.',
      'Not known whether fit for a swap',
    ),
  ];
}

function namedIf(pairs: Fleet['pairs'], fit: boolean | null, all: string, words: string): readonly string[] {
  const names = pairs.filter((p) => p.readiness.fit === fit).map((p) => p.pair);
  if (names.length === 0) return [];
  if (names.length === pairs.length) return [all];
  return [`${words}: ${names.length > 5 ? `${names.length} of ${pairs.length} pairs` : names.join(', ')}.`];
}

/** Names that may be one release: only a person knows. */
function alikeSaid({ alike }: Fleet): readonly string[] {
  return alike.map(
    (names) =>
      `${names.join(' and ')} may be one under ${names.length} names: they are compared as ${names.length}. Give them one value in the phrasebook if they are.`,
  );
}
