import { type Fleet, type GroupReview, type PairReview, sayChance } from '../vocabulary.ts';
import { cautions } from './cautions.ts';
import { terminal } from './escape.ts';
import { fleetSentences } from './fleet-sentences.ts';
import { sayLonger, sayObserved, sayQuantile, sayRate, saySure, sayTrend } from './fleet-words.ts';
import { causeWords } from './outcome-words.ts';
import { notKnownText, type TextOptions, wrap } from './verify-text.ts';

/** What `fleet` prints: what stands out, every pair, the groups, what comes next, cautions; at most 100 columns. */
export function fleetText(fleet: Fleet, { paint, reports }: TextOptions): string {
  const [verdict, ...rest] = fleetSentences(fleet);
  return `${[
    ...notKnownText(fleet, { paint }),
    ...wrap(terminal(verdict ?? ''), '', '').map((line) => paint(line, 'verdict')),
    ...rest.flatMap((s) => wrap(terminal(s), '', '')),
    '',
    'Pairs',
    ...pairRow('pair', 'losses', 'a year, 95 % limits', 'observed', 'ready partner'),
    ...fleet.pairs.flatMap(pairText),
    '',
    `Sync times by ${fleet.by}`,
    ...groupRow('group', 'cause', 'n', 'half are ready by, with 95 % limits'),
    ...fleet.groups.flatMap(groupText),
    '',
    'Cautions',
    ...cautions.flatMap((c) => wrap(c, '  ', '  ')),
    '',
    ...reports.map((name) => `Report: ${terminal(name)}`),
  ]
    .join('\n')
    .trimEnd()}\n`;
}

const nameWidth = 14;

/** A row of a table; a name that is too long for its column stands above it. */
function row(name: string, rest: string): readonly string[] {
  const isLong = name.length > nameWidth;
  const above = isLong ? wrap(name, '  ', '  ') : [];
  return [...above, `  ${(isLong ? '' : name).padEnd(nameWidth)} ${rest}`.trimEnd()];
}

function pairRow(
  name: string,
  losses: string,
  rate: string,
  observed: string,
  ready: string,
): readonly string[] {
  return row(name, `${losses.padStart(6)}  ${rate.padEnd(24)} ${observed.padStart(9)}  ${ready}`);
}

function pairText(pair: PairReview): readonly string[] {
  const { losses, ratePerYear, observedSeconds, availability, standsOut, readiness } = pair;
  const line = pairRow(
    terminal(pair.pair),
    String(losses),
    sayRate(ratePerYear),
    sayObserved(observedSeconds),
    availability === null ? 'not known' : `${(availability * 100).toFixed(3)} %`,
  );
  return [
    ...line,
    ...(standsOut && pair.p !== null ? [`    stands out (${sayChance(pair.p)})`] : []),
    ...(pair.trend.comesCloser ? [`    losses ${sayTrend(pair.trend)}`] : []),
    ...(readiness.fit
      ? ['    fit for a swap']
      : wrap(`not fit for a swap: ${terminal(readiness.reasons.join(' '))}`, '    ', '      ')),
  ];
}

function groupRow(group: string, cause: string, count: string, half: string): readonly string[] {
  return row(group, `${cause.padEnd(10)} ${count.padStart(5)}  ${half}`);
}

/** The chance up to which a trend of sync times is told. */
const tellingChance = 0.05;

function groupText(group: GroupReview): readonly string[] {
  const { cause, attempts, median, p95, trend } = group;
  const half = sayQuantile(median, attempts);
  return [
    ...groupRow(terminal(group.group), causeWords[cause], String(attempts), half),
    ...(trend !== null && trend.p <= tellingChance
      ? wrap(`changes in a year by ${sayLonger(trend)}`, '    ', '      ')
      : []),
    ...wrap(`95 in 100 by ${sayQuantile(p95, attempts)}; surely: ${saySure(group)}`, '    ', '      '),
  ];
}
