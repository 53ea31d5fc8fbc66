import { type FleetInBrief, type NonEmpty, sayDuration } from '../vocabulary.ts';
import { boutsSentences, forecastSentence } from './ahead-words.ts';
import { lossSentences, type NextStep } from './loss-sentences.ts';
import { causeWords } from './outcome-words.ts';
import { syncSentences } from './sync-words.ts';

/**
 * The answer in a few sentences: the pairs that stand out, each with why, since when and what to do next; the groups that
 * differ, the campaign.
 */
export function fleetSentences(fleet: FleetInBrief, next: NextStep = diagnoseNext): NonEmpty<string> {
  const [first, ...losses] = lossSentences(fleet, next);
  return [
    first,
    ...losses,
    ...syncSentences(fleet),
    ...drifting(fleet),
    forecastSentence(fleet),
    ...boutsSentences(fleet),
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

/** The groups whose smoothed sync times lie outside their limits at the end. */
function drifting({ drifts }: FleetInBrief): readonly string[] {
  return drifts.flatMap(({ group, cause, target, points }) => {
    const last = points.at(-1);
    if (last?.isOutside !== true) return [];
    return [
      `Sync times of ${group} after a ${causeWords[cause]} drift: ${sayDuration(last.average)} now, ${sayDuration(target)} before.`,
    ];
  });
}

/** Which pairs are not fit for a swap, where there are few, and of which it is not known. */
function unfit({ pairs }: FleetInBrief): readonly string[] {
  return [
    ...namedIf(pairs, false, 'No pair was ready for a swap when its log ended.', 'Not ready for a swap'),
    ...namedIf(
      pairs,
      null,
      'It is not known of any pair whether it is ready for a swap.',
      'Not known whether ready for a swap',
    ),
  ];
}

function namedIf(
  pairs: FleetInBrief['pairs'],
  fit: boolean | null,
  all: string,
  words: string,
): readonly string[] {
  const names = pairs.filter((p) => p.readiness.fit === fit).map((p) => p.pair);
  if (names.length === 0) return [];
  if (names.length === pairs.length) return [all];
  return [`${words}: ${names.length > 5 ? `${names.length} of ${pairs.length} pairs` : names.join(', ')}.`];
}

/** Names that may be one release: only a person knows. */
function alikeSaid({ alike }: FleetInBrief): readonly string[] {
  return alike.map(
    (names) =>
      `${names.join(' and ')} may be the same under ${names.length} names, but are compared separately. If they are the same, give them one value in the phrasebook.`,
  );
}
