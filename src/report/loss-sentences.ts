import {
  type FleetInBrief,
  type LossGroup,
  type LossRatio,
  type NonEmpty,
  type PairInBrief,
  sayDuration,
} from '../vocabulary.ts';
import { sayLosses, sayMonth, sayNames, saySeen } from './fleet-words.ts';
import { isRise, sayChange } from './loss-words.ts';
import { inRowsRecognised } from './not-known.ts';
import { sayCount } from './words.ts';

const yearSeconds = 365.25 * 86_400;

/** What to do next about a pair that stands out, in the words of the output: a command, or a place on the page. */
export type NextStep = (pair: string) => string;

/** What the figures of losses come to, in plain words: the pairs to look at first, each with why, since when and what to do. */
export function lossSentences(fleet: FleetInBrief, next: NextStep): NonEmpty<string> {
  const { pairs, by } = fleet;
  const worse = pairs.filter((p) => p.standsOut === true);
  return [
    worse.length === 0 ? nothingStandsOut(fleet) : whichStandOut(worse, pairs),
    ...worse.slice(0, mostSaid).map((pair) => lookAt(pair, fleet, next)),
    ...changing(pairs.filter((p) => p.standsOut !== true)),
    ...notJudged(pairs),
    ...groupsDiffer(fleet.lossRatios, by),
    ...fleet.lossGroups.flatMap(groupChanged),
  ];
}

/** Of very many pairs that stand out the worst are told of; the table has all. */
const mostSaid = 3;

function whichStandOut(worse: readonly PairInBrief[], pairs: readonly PairInBrief[]): string {
  const names = sayNames(worse.map((p) => `${p.pair} (${lostIn(p)})`));
  const lose = worse.length === 1 ? 'loses its' : 'lose their';
  return `${worse.length} of ${sayCount(pairs.length, 'pair')} ${lose} partner more often than the rest: ${names}.`;
}

/** `23 losses`, and in how many bouts where those are fewer. */
function lostIn({ losses, bouts }: Pick<PairInBrief, 'losses' | 'bouts'>): string {
  return bouts === losses
    ? sayLosses(losses)
    : `${sayLosses(losses)} in ${bouts === 1 ? 'one bout' : `${bouts} bouts`}`;
}

function lookAt(pair: PairInBrief, fleet: FleetInBrief, next: NextStep): string {
  const { ratePerYear, observedSeconds, readiness } = pair;
  const rest = fleet.pairs.filter((p) => p.standsOut === false);
  const bouts = rest.reduce((sum, p) => sum + p.bouts, 0);
  const years = rest.reduce((sum, p) => sum + p.observedSeconds, 0) / yearSeconds;
  const others = years > 0 ? `, against ${(bouts / years).toFixed(1)} for each of the others` : '';
  const fit =
    readiness.fit === true
      ? 'Ready for a swap today, but loses its partner more often than the rest.'
      : readiness.fit === null
        ? 'Not known whether it is ready for a swap.'
        : `Not ready for a swap: ${readiness.reasons.join(' ')}`;
  return [
    `${pair.pair}: ${(ratePerYear?.value ?? 0).toFixed(1)} ${pair.bouts === pair.losses ? 'losses' : 'bouts of losses'} per year in ${sayDuration(observedSeconds)}${others}.`,
    sinceWhen(pair, fleet),
    fit,
    `Next: ${next(pair.pair)}.`,
  ].join(' ');
}

function sinceWhen(own: PairInBrief, { months }: FleetInBrief): string {
  const { pair, change, trend } = own;
  const what = wordFor(own);
  const more = trend.comesCloser === true ? 'More and more often' : '';
  if (change !== null && isRise(change))
    return `${more === '' ? 'Since' : `${more}, most of all since`} about ${sayMonth(change.time)}: ${sayChange(change, what)}.`;
  if (change !== null)
    return `Until about ${sayMonth(change.time)}, less often since: ${sayChange(change, what)}.`;
  const begin = months.find((month) => month.pair === pair && month.observedSeconds > 0)?.from;
  const since = begin === undefined ? '' : `, from ${sayMonth(begin)}`;
  return more === '' ? `Throughout its log${since}.` : `${more}.`;
}

/** The pairs that do not stand out, whose losses come more or less often than before. */
function changing(pairs: readonly PairInBrief[]): readonly string[] {
  const growing = pairs.filter((p) => p.trend.comesCloser === true && p.change === null);
  const lose = growing.length === 1 ? 'loses its' : 'lose their';
  const changed = pairs.flatMap((pair) => {
    if (pair.change === null) return [];
    const [what, word] = [wordFor(pair), isRise(pair.change) ? 'more' : 'less'];
    const since = `since about ${sayMonth(pair.change.time)}: ${sayChange(pair.change, what)}`;
    return [`${pair.pair} loses its partner ${word} often ${since}.`];
  });
  return [
    ...(growing.length === 0
      ? []
      : [`${sayNames(growing.map((p) => p.pair))} ${lose} partner more and more often.`]),
    ...(changed.length <= mostSaid
      ? changed
      : [`The rate of losses changed at ${changed.length} other pairs: see the table.`]),
  ];
}

/** What is counted, as a plain word where it makes no difference. */
function wordFor({ losses, bouts }: Pick<PairInBrief, 'losses' | 'bouts'>): 'losses' | 'bouts' {
  return bouts === losses ? 'losses' : 'bouts';
}

/** What there is to say where no pair stands out: a pair that has no others beside it was not compared with any. */
function nothingStandsOut(fleet: FleetInBrief): string {
  const { pairs, power } = fleet;
  const said = inRowsRecognised(fleet);
  const where = said === '' ? '' : `,${said}`;
  const judged = pairs.filter((p) => p.ratePerYear !== null);
  const [only] = judged;
  if (pairs.length === 0) return `No pair found${said}.`;
  if (only === undefined)
    return pairs.length === 1
      ? 'The only pair was observed for less than 30 days, so it is not compared.'
      : `None of ${pairs.length} pairs was observed for 30 days, so they are not compared.`;
  if (judged.length === 1)
    return pairs.length === 1
      ? `${only.pair} is the only pair, with ${lostIn(only)}: there is no other to compare it with.`
      : `Only ${only.pair} was observed for 30 days, with ${lostIn(only)}: there is no other to compare it with.`;
  return `None of ${judged.length} pairs loses its partner more often than chance explains${where}.${powerSaid(power)}`;
}

function powerSaid(power: FleetInBrief['power']): string {
  if (power === null) return '';
  const of = Math.min(99, Math.round(power.share * 100));
  const times = power.ratio === 3 ? 'three' : String(power.ratio);
  return ` A pair with ${times} times the rate of the others would be found in ${of === 0 ? 'less than 1' : of} of 100 cases.`;
}

/** What was seen of the pairs that were observed for too short a time. */
function notJudged(pairs: readonly PairInBrief[]): readonly string[] {
  const short = pairs.filter((p) => p.ratePerYear === null);
  if (short.length === 0) return [];
  const seen = short.map((p) => `${p.pair} ${saySeen(p.losses, p.observedSeconds)}`);
  return [`Observed for less than 30 days, so not compared: ${sayNames(seen)}.`];
}

/** Which groups lose their partner at rates that differ; that none do, where some were compared. */
function groupsDiffer(ratios: readonly LossRatio[], by: FleetInBrief['by']): readonly string[] {
  if (ratios.length === 0) return [];
  const said = ratios.filter((r) => r.differs).map(sayRatio);
  if (said.length > mostSaid)
    return [
      ...said.slice(0, mostSaid),
      `${said.length - mostSaid} more comparisons by ${by} differ: see the table.`,
    ];
  if (said.length > 0) return said;
  const alone = new Set(ratios.flatMap((r) => r.byOnePair ?? []));
  return [
    alone.size === 0
      ? `Losses do not differ by ${by} beyond chance.`
      : `Losses differ by ${by} only because of ${sayNames([...alone])}.`,
  ];
}

/** One comparison as a sentence. */
function sayRatio({ group, other, pairsInBoth, ratio }: LossRatio): string {
  const how = pairsInBoth === null ? '' : `, by ${sayCount(pairsInBoth, 'pair')} that had both`;
  return ratio.value === null
    ? `Pairs lost their partner with ${group}, and never with ${other}${how}.`
    : `Pairs lose their partner ${ratio.value.toFixed(1)} times as often with ${group} as with ${other}${how}.`;
}

function groupChanged({ group, change }: LossGroup): readonly string[] {
  if (change === null) return [];
  const word = isRise(change) ? 'more' : 'less';
  return [
    `With ${group} pairs lose their partner ${word} often since about ${sayMonth(change.time)}: ${sayChange(change, 'bouts')}.`,
  ];
}
