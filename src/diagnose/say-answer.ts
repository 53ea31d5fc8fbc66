import type { PairFacts } from '../timeline/facts.ts';
import {
  type Attempt,
  type NonEmpty,
  type RankedCause,
  type ReferenceBand,
  type Stage,
  sayDuration,
} from '../vocabulary.ts';
import type { Trouble } from './cause.ts';

/** A healthy pair, in one sentence. */
export function sayHealthy({ timeline, readiness }: PairFacts, half: string | null): NonEmpty<string> {
  const since = readiness.steps.at(-1);
  const lasting =
    since === undefined || since.initial
      ? ' since the log begins'
      : ` for ${sayDuration((timeline.to - since.time) / 1000)}`;
  const who = half === null ? 'Its partner' : `Half ${half}`;
  return [`Nothing is wrong with ${timeline.pair} now. ${who} has been ready${lasting}.`];
}

/** The answer as a person would give it: how far it gets, what the logs speak for, what to check next. */
export function sayAnswer(
  trouble: Trouble,
  stage: Stage | null,
  bands: readonly ReferenceBand[],
  causes: readonly RankedCause[],
  leadDecibans: number,
): NonEmpty<string> {
  return [sayHowFar(trouble, stage, bands), ...sayCauses(causes, leadDecibans)];
}

function sayHowFar(trouble: Trouble, stage: Stage | null, bands: readonly ReferenceBand[]): string {
  const { facts, kind, half, from, to, failed } = trouble;
  const { pair } = facts.timeline;
  const lasting = sayDuration((to - from) / 1000);
  if (kind === 'unknown') return `Nothing that was read says whether ${pair} has a ready partner.`;
  const what = {
    'not-ready': `For ${lasting} ${pair} has had no ready partner that holds`,
    flapping: `For ${lasting} the partner of ${pair} has come and gone`,
    light: `${pair} has a ready partner, but for ${lasting} its light has not been steady`,
  }[kind];
  const who = half === null ? 'the standby' : `half ${half}`;
  const got = stage === null ? 'how far it gets is not logged' : `${who} gets as far as ${stage}`;
  const tries =
    failed.length === 0 ? '' : `, in ${failed.length} failed ${failed.length === 1 ? 'attempt' : 'attempts'}`;
  return `${what}: ${got}${tries}${sayBand(trouble.attempts.at(-1), bands)}.`;
}

/** How long the last attempt stayed where it ended, against those that went on from there. */
function sayBand(last: Attempt | undefined, bands: readonly ReferenceBand[]): string {
  const end = last?.stages.at(-1);
  const band = bands.find((b) => b.stage === end?.stage);
  if (end === undefined || band === undefined || end.inStage.seconds === null) return '';
  const range =
    band.count === 1
      ? sayDuration(band.median)
      : `${sayDuration(band.shortest)} to ${sayDuration(band.longest)}`;
  return `; the last stayed there for ${sayDuration(end.inStage.seconds)}, where ${band.count === 1 ? 'the one that worked' : `the ${band.count} that worked`} needed ${range}`;
}

function sayCauses(causes: readonly RankedCause[], leadDecibans: number): readonly string[] {
  const [first, second] = causes;
  if (first === undefined) return [];
  if (first.decibans === null) return ['The logs do not say why: no cause reaches ten to one.', first.next];
  const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
  const also =
    second !== undefined && second.decibans !== null && second.decibans >= leadDecibans
      ? `, and also for ${second.id}`
      : '';
  return [
    `The logs speak most for ${first.id}${also}: ${lower(first.title)}.`,
    `Check next: ${lower(first.next.split(/(?<=\.) /)[0] ?? first.next)}`,
  ];
}
