import type { Random } from '../../samples/random.ts';
import { type LossHistory, lossHistory } from '../../src/fleet/pair-figures.ts';
import { boutsOf } from '../../src/timeline/bouts.ts';
import { keyOf } from '../../src/timeline/groups.ts';
import { defaultRules } from '../../src/timeline/rules.ts';
import type { Coverage, PairTimeline, TimelineEvent } from '../../src/vocabulary.ts';

const dayMs = 86_400_000;
export const yearDays = 365.25;

/** How losses come. */
export const patterns = ['Poisson', 'bursty', 'stormy'] as const;
export type Pattern = (typeof patterns)[number];

/** A fleet whose pairs are observed for some days from day 0; `perYear` is the rate of troubles of each pair. */
export interface MadeFleet {
  readonly days: number;
  readonly perYear: readonly number[];
  readonly pattern: Pattern;
}

/** Losses of every pair in days, in order. Each trouble is one loss, or several within some hours; half of the stormy ones strike most pairs within an hour. */
export function madeLosses(
  random: Random,
  { days, perYear, pattern }: MadeFleet,
): readonly (readonly number[])[] {
  const storms = pattern === 'stormy' ? arrivals(random, meanOf(perYear) / 2, days) : [];
  return perYear.map((rate) => {
    const own = arrivals(random, pattern === 'stormy' ? rate / 2 : rate, days);
    const struck = storms.filter(() => random() < 0.8).map((day) => day + random() / 24);
    const troubles = [...own, ...struck];
    const losses = pattern === 'Poisson' ? troubles : troubles.flatMap((day) => burst(random, day));
    return losses.filter((day) => day < days).sort((a, b) => a - b);
  });
}

/** One loss and on average four more within six hours. */
function burst(random: Random, day: number): readonly number[] {
  const further: number[] = [];
  while (random() < 0.8) further.push(day + random() / 4);
  return [day, ...further];
}

/** Instants of a Poisson process, in days. */
function arrivals(random: Random, perYear: number, days: number): readonly number[] {
  const found: number[] = [];
  for (let day = 0; perYear > 0; ) {
    day -= (Math.log(1 - random()) * yearDays) / perYear;
    if (day >= days) break;
    found.push(day);
  }
  return found;
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** A firmware that both halves run from a day on. */
export interface FirmwareFrom {
  readonly day: number;
  readonly firmware: string;
}

/** The history of one pair, of which only its losses and firmware are known. */
export function madePair(
  pair: string,
  days: number,
  losses: readonly number[],
  firmware: readonly FirmwareFrom[] = [],
): LossHistory {
  const counted = losses.map(
    (day) => ({ kind: 'counted', event: eventOf(pair, day, 'partner-ready', 'no') }) as const,
  );
  const releases = firmware.map((from) => eventOf(pair, from.day, 'firmware', from.firmware));
  const timeline: PairTimeline = {
    ...{
      pair,
      site: null,
      zone: null,
      halves: ['A', 'B'],
      events: [],
      gauges: [],
      contradicted: [],
      unobserved: [],
    },
    tracks: new Map([[keyOf('A', 'firmware'), releases]]),
    coverage: [noCoverage],
    observation: new Map(),
    observed: [{ from: 0, to: days * dayMs }],
    from: 0,
    to: days * dayMs,
    newest: { time: days * dayMs, file: noCoverage.file },
  };
  return lossHistory({
    timeline,
    readiness: { signal: 'partner-ready', steps: [] },
    ...{ bringUps: [], plannedWork: [], exposed: [], switchovers: [], conflicts: [] },
    ...{ moduleChanges: [], absences: [], isCommandLogged: false },
    losses: counted,
    bouts: boutsOf(counted, defaultRules),
  });
}

/** Written out: a study makes millions. */
function eventOf(
  pair: string,
  day: number,
  signal: 'partner-ready' | 'firmware',
  value: string,
): TimelineEvent {
  const time = day * dayMs;
  return {
    time,
    earliest: time,
    pair,
    half: signal === 'firmware' ? 'A' : null,
    signal,
    value,
    before: null,
    kind: 'entry',
    resolution: 0,
    initial: false,
    concluded: false,
    sources: anyLine,
  };
}

const anyLine = [
  { file: 'made.log', line: 1, text: '', count: 1, printed: { time: 0, earliest: 0 } },
] as const;
const point = { time: 0, line: 1, text: '' };
const noCoverage: Coverage = {
  file: 'made.log',
  log: 'made.log',
  span: { from: 0, to: 0 },
  stream: {
    kind: 'entry',
    unit: 'made',
    subject: { pair: 'made', half: null, role: null },
    ...{ signals: [], first: point, last: point, spacing: 0, gaps: [], reads: [], notUnderstood: [] },
  },
};

/** A fleet of pairs P1, P2, ... with their losses. */
export function madeFleet(random: Random, made: MadeFleet): readonly LossHistory[] {
  return madeLosses(random, made).map((losses, index) => madePair(`P${index + 1}`, made.days, losses));
}

/** So many pairs of one rate. */
export function sound(pairs: number, years: number, pattern: Pattern, perYear = 2): MadeFleet {
  return { days: years * yearDays, perYear: Array.from({ length: pairs }, () => perYear), pattern };
}

/** How often something is so, in so many tries. */
export function countOf(cases: number, isSo: () => boolean): number {
  let hits = 0;
  for (let run = 0; run < cases; run += 1) if (isSo()) hits += 1;
  return hits;
}

/** So many pairs over so many years, as the settings of a study name them. */
export const sizes = [
  [2, 1],
  [2, 10],
  [8, 2],
  [20, 2],
  [100, 1],
  [100, 5],
] as const;

/** `bursty losses, 20 pairs, 2 years`. */
export function settingOf(pattern: Pattern, pairs: number, years: number): string {
  return `${pattern} losses, ${pairs} pairs, ${years === 1 ? 'one year' : `${years} years`}`;
}
