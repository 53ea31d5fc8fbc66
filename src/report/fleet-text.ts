import {
  type Estimate,
  type Fleet,
  type GroupReview,
  type PairReview,
  sayChance,
  sayDuration,
} from '../vocabulary.ts';
import { cautions } from './cautions.ts';
import { terminal } from './escape.ts';
import { causeWords } from './outcome-words.ts';
import { type TextOptions, wrap } from './verify-text.ts';
import { sayCount } from './words.ts';

const daySeconds = 86_400;

/** What `fleet` prints: what stands out, every pair, the groups, what comes next, cautions; at most 100 columns. */
export function fleetText(fleet: Fleet, { paint, reports }: TextOptions): string {
  const [verdict, ...rest] = fleetSentences(fleet);
  return `${[
    ...wrap(terminal(verdict ?? ''), '', '').map((line) => paint(line, 'verdict')),
    ...rest.flatMap((s) => wrap(terminal(s), '', '')),
    '',
    'Pairs',
    pairRow('pair', 'losses', 'a year, 95 % limits', 'observed', 'ready partner'),
    ...fleet.pairs.flatMap(pairText),
    '',
    `Sync times by ${fleet.by}`,
    groupRow('group', 'cause', 'n', 'median', '95 in 100 by'),
    ...fleet.groups.map(groupText),
    '',
    'Cautions',
    ...cautions.flatMap((c) => wrap(c, '  ', '  ')),
    '',
    ...reports.map((name) => `Report: ${terminal(name)}`),
  ]
    .join('\n')
    .trimEnd()}\n`;
}

/** The answer in a few sentences: the pairs that stand out, the groups that differ, the campaign. */
function fleetSentences(fleet: Fleet): readonly string[] {
  const { pairs, logRank, forecast, by, groups } = fleet;
  const worse = pairs.filter((p) => p.standsOut);
  const names = worse.map(
    (p) =>
      `${p.pair} (${p.losses === 1 ? 'one loss' : `${p.losses} losses`}, ${(p.ratePerYear.value ?? 0).toFixed(1)} a year)`,
  );
  const first =
    worse.length === 0
      ? `Of ${sayCount(pairs.length, 'pair')} none loses its partner more often than chance explains.`
      : `${names.join(' and ')} ${worse.length === 1 ? 'loses its' : 'lose their'} partner more often than the rest of the fleet.`;
  const growing = pairs.filter((p) => p.trend.p !== null && p.trend.p <= 0.05 && (p.trend.laplace ?? 0) > 0);
  const trend =
    growing.length === 0 ? [] : [`Losses come ever closer at ${growing.map((p) => p.pair).join(' and ')}.`];
  const compared =
    logRank === null
      ? `Sync times by ${by} can not be compared: ${groups.length < 2 ? 'there is one group' : 'no attempts overlap'}.`
      : `Sync times by ${by} ${logRank.p <= 0.05 ? 'differ' : 'do not differ for sure'} (log-rank test, ${sayChance(logRank.p)}).`;
  const next =
    forecast?.hours === undefined || forecast.hours === null
      ? []
      : [
          `The bring-ups of the next ${sayCount(forecast.swaps, 'swap')} take ${sayHours(forecast.low)} to ${sayHours(forecast.high)} hours in nine of ten cases.`,
        ];
  return [first, ...trend, `${compared}${slowest(fleet)}`, ...drifting(fleet), ...next];
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
  return hours === null ? 'not known' : hours.toFixed(1);
}

function pairRow(name: string, losses: string, rate: string, observed: string, ready: string): string {
  return `  ${name.padEnd(14)} ${losses.padStart(6)}  ${rate.padEnd(24)} ${observed.padStart(9)}  ${ready}`.trimEnd();
}

function pairText(pair: PairReview): readonly string[] {
  const { losses, ratePerYear, observedSeconds, availability, standsOut, readiness } = pair;
  const row = pairRow(
    terminal(pair.pair),
    String(losses),
    sayEstimate(ratePerYear),
    `${Math.round(observedSeconds / daySeconds)} d`,
    availability === null ? 'not known' : `${(availability * 100).toFixed(3)} %`,
  );
  return [
    row,
    ...(standsOut ? wrap(`stands out (chance ${sayP(pair.p)})`, '    ', '    ') : []),
    ...(readiness.fit
      ? ['    fit for a swap']
      : wrap(`not fit for a swap: ${terminal(readiness.reasons.join(' '))}`, '    ', '      ')),
  ];
}

function sayP(p: number | null): string {
  return p === null ? 'not known' : p < 0.0001 ? 'below 0.0001' : p.toFixed(4);
}

function sayEstimate({ value, low, high }: Estimate): string {
  if (value === null) return 'not enough data';
  return `${value.toFixed(1)} (${(low ?? 0).toFixed(1)} to ${high === null ? 'not known' : high.toFixed(1)})`;
}

function groupRow(group: string, cause: string, count: string, median: string, late: string): string {
  return `  ${group.padEnd(14)} ${cause.padEnd(9)} ${count.padStart(5)}  ${median.padEnd(36)} ${late}`.trimEnd();
}

function groupText({
  group,
  cause,
  attempts,
  median,
  p95,
  tolerance9595,
  neededFor9595,
}: GroupReview): string {
  const late =
    tolerance9595 === null
      ? p95.value === null
        ? `not enough data (n = ${attempts}, ${neededFor9595} needed)`
        : sayDuration(p95.value)
      : `${sayDuration(tolerance9595)}, with 95 % confidence`;
  return groupRow(terminal(group), cause, String(attempts), saySeconds(median), late);
}

function saySeconds({ value, low, high }: Estimate): string {
  if (value === null) return 'not enough data';
  const [from, to] = [
    low === null ? 'not known' : sayDuration(low),
    high === null ? 'not known' : sayDuration(high),
  ];
  return `${sayDuration(value)} (${from} to ${to})`;
}
