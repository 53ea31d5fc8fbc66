import type { PairFacts } from '../timeline/facts.ts';
import { removalOf } from '../timeline/stages.ts';
import { spells, track } from '../timeline/tracks.ts';
import {
  type Attempt,
  type NonEmpty,
  type PairTimeline,
  type RankedCause,
  type ReferenceBand,
  type Sentence,
  type Stage,
  sayAbout,
  sayDuration,
  sayOdds,
} from '../vocabulary.ts';
import type { Trouble } from './cause.ts';
import { sayCounts } from './say-counts.ts';
import { type Opening, sayEarlier, sayOpening } from './say-opening.ts';
import { standingOf } from './standing.ts';

/**
 * A healthy pair: how it stands, the attempts there were, and that no trouble was found, of rows or files that are in no answer
 * (`isPartial`) only in those recognised.
 */
export function sayHealthy(
  facts: PairFacts,
  attempts: readonly Attempt[],
  half: string | null,
  holdMs: number,
  isPartial: boolean,
): NonEmpty<Sentence> {
  const opening = openingOf(facts, [], half, null, holdMs);
  const where = isPartial ? ' in the rows recognised' : '';
  const { pair, from, to } = facts.timeline;
  const counts = attempts.some((a) => a.cause !== 'loss')
    ? [[`In ${sayDuration((to - from) / 1000)} of log ${sayCounts(attempts)}.`]]
    : [];
  const { lastRead } = opening.standing;
  const wrong =
    lastRead === null
      ? `No trouble found with ${pair}${where} at the end of its log.`
      : `No trouble found with ${pair}${where} then; nothing was logged about it in the ${sayDuration((to - lastRead) / 1000)} after that.`;
  return [sayOpening(opening), ...counts, [wrong]];
}

/** The answer as a person would give it: how it stands, the counts, the most likely cause, what to check next. */
export function sayAnswer(
  trouble: Trouble,
  stage: Stage | null,
  bands: readonly ReferenceBand[],
  causes: readonly RankedCause[],
  leadDecibans: number,
): NonEmpty<Sentence> {
  const { facts, kind, attempts, rules } = trouble;
  const half = attempts.at(-1)?.half ?? trouble.half;
  const opening = openingOf(facts, attempts, half, stage, rules.holdMs);
  return [
    sayOpening(opening),
    ...sayEarlier(opening.standing),
    ...sayTrouble(trouble, opening),
    ...(kind === 'not-ready' ? sayBand(attempts.at(-1), bands) : []),
    ...sayCauses(causes, leadDecibans, opening.removal !== null ? 'out' : kind),
  ];
}

function openingOf(
  facts: PairFacts,
  attempts: readonly Attempt[],
  half: string | null,
  stage: Stage | null,
  holdMs: number,
): Opening {
  const { pair, from, to } = facts.timeline;
  const standing = standingOf(facts);
  const { since, value } = standing;
  const isSince = ({ end }: Attempt): boolean =>
    since === null || value === 'yes' || since.initial || end.time > since.earliest || end.time >= since.time;
  return {
    pair,
    standing,
    logFrom: from,
    logEnd: to,
    holdSeconds: holdMs / 1000,
    attempts: attempts.filter(isSince),
    half,
    stage,
    removal: half === null ? null : removalOf(facts.timeline, half, to),
  };
}

/** What the opening has not said of the trouble: the attempts where a partner is there now, and a light that is late. */
function sayTrouble(
  { facts, kind, half, from, attempts, rules }: Trouble,
  { standing, logFrom, logEnd }: Opening,
): readonly Sentence[] {
  const light = `The light of half ${half ?? 'unknown'}`;
  const since = { time: from, earliest: from };
  if (kind === 'late-light')
    return [
      [
        `${light} was not steady ${sayDuration(rules.lightLimitSeconds)} after its start at `,
        since,
        ', and is not now.',
      ],
    ];
  if (kind === 'light-again')
    return [[`${light}, the standby, was steady; it has been flashing again since `, since, '.']];
  if (kind === 'unknown') {
    const log = sayDuration((logEnd - logFrom) / 1000);
    const counts = standing.signal === null ? [] : [[`In ${log} of log ${sayCounts(attempts)}.`]];
    return [
      ...counts,
      ...sayLight(facts.timeline, half),
      ['The logs do not show whether anything is wrong now.'],
    ];
  }
  if (standing.value !== 'yes') return [];
  return [['Since ', since, ` ${sayCounts(attempts)}.`]];
}

/** What the light of the half showed last, and since when; the one sign there is of a standby whose readiness is not logged. */
function sayLight(timeline: PairTimeline, half: string | null): readonly Sentence[] {
  const steps = track(timeline, half, 'light');
  const value = steps.at(-1)?.value;
  const since = value == null ? undefined : spells(steps, value).at(-1)?.start;
  if (since === undefined) return [];
  const { time, earliest, initial } = since;
  const from: Sentence = initial ? [' since before its log began'] : [' since ', { time, earliest }];
  return [[`The light of half ${since.half} has been ${value}`, ...from, '.']];
}

/** How long the last attempt stayed where it ended, against those that went on from there. */
function sayBand(last: Attempt | undefined, bands: readonly ReferenceBand[]): readonly Sentence[] {
  const end = last?.stages.at(-1);
  const band = bands.find((b) => b.stage === end?.stage);
  if (last === undefined || last.outcome === 'ready' || end === undefined || band === undefined) return [];
  const { seconds, low, high } = end.inStage;
  const isStartUnknown = last.outcome === 'failed' && last.abort === null;
  if (seconds === null || low === null || isStartUnknown) return [];
  const stayed = sayAbout({ seconds, low, high: high ?? seconds });
  const range =
    band.count === 1
      ? `the only successful attempt spent ${sayDuration(band.median)} there`
      : `the ${band.count} successful attempts spent ${sayDuration(band.shortest)} to ${sayDuration(band.longest)} there`;
  return [
    [
      `The last attempt ${last.outcome === 'failed' ? 'failed after' : 'has spent'} ${stayed} in stage ${end.stage}; ${range}.`,
    ],
  ];
}

/** What is said where no cause was found; of a half that is out, that this is why. */
const noCause = {
  'not-ready': 'No cause reaches 10 to 1: the logs do not show why.',
  flapping: 'No cause reaches 10 to 1: the logs do not show why it was lost.',
  'late-light': 'No cause reaches 10 to 1: the logs do not show why.',
  'light-again': 'No cause reaches 10 to 1: the logs do not show why.',
  out: 'No module is in that half, so there is nothing to synchronise; no other cause reaches 10 to 1.',
} as const;

function sayCauses(
  causes: readonly RankedCause[],
  leadDecibans: number,
  kind: Trouble['kind'] | 'out',
): readonly Sentence[] {
  const [first, second] = causes;
  if (first === undefined) return [];
  if (first.decibans === null) return [...(kind === 'unknown' ? [] : [[noCause[kind]]]), [first.next]];
  const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
  const also =
    second !== undefined && second.decibans !== null && second.decibans >= leadDecibans
      ? `; also possible: ${lower(second.title)} (${sayOdds(second.decibans)})`
      : '';
  return [
    [`Most likely cause: ${lower(first.title)} (${sayOdds(first.decibans)})${also}.`],
    [`Check next: ${lower(first.next.split(/(?<=\.) /)[0] ?? first.next)}`],
  ];
}
