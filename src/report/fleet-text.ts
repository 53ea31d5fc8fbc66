import { type FleetInBrief, type GroupReview, type PairInBrief, sayChance, sayShare } from '../vocabulary.ts';
import { cautions } from './cautions.ts';
import { terminal } from './escape.ts';
import { atTheCabinet, fleetSentences } from './fleet-sentences.ts';
import { sayFit, sayLonger, sayObserved, sayRate, sayTrend } from './fleet-words.ts';
import { lossGroupLines } from './loss-groups-text.ts';
import { sayChanged } from './loss-words.ts';
import { causeWords } from './outcome-words.ts';
import { sayNotReady, sayQuantile, saySure } from './sync-words.ts';
import { notKnownText, type TextOptions, wrap } from './verify-text.ts';

/** What to do about a pair, as a command. */
function commandFor(pair: string): string {
  const named = /^[\w.-]+$/.test(pair) ? pair : `"${pair}"`;
  return `steadypair diagnose FILES --pair ${named}, and ${atTheCabinet}`;
}

/** What `fleet` prints: what stands out, every pair, the groups, what comes next, cautions; at most 100 columns. */
export function fleetText(fleet: FleetInBrief, { paint, reports }: TextOptions): string {
  const [verdict, ...rest] = fleetSentences(fleet, commandFor);
  return `${[
    ...notKnownText(fleet, { paint }),
    ...wrap(terminal(verdict ?? ''), '', '').map((line) => paint(line, 'verdict')),
    ...rest.flatMap((s) => wrap(terminal(s), '', '')),
    '',
    'Pairs',
    ...pairRow('pair', 'losses', 'bouts', 'bouts per year, 95 % limits', 'observed', 'ready partner'),
    ...fleet.pairs.flatMap(pairText),
    '',
    ...lossGroupLines(fleet),
    `Sync times by ${fleet.by}`,
    ...groupRow('group', 'cause', 'n', 'median, 95 % limits'),
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
  bouts: string,
  rate: string,
  observed: string,
  ready: string,
): readonly string[] {
  return row(
    name,
    `${losses.padStart(6)} ${bouts.padStart(6)}  ${rate.padEnd(28)} ${observed.padStart(9)}  ${ready}`,
  );
}

function pairText(pair: PairInBrief): readonly string[] {
  const { losses, bouts, observedSeconds, availability, standsOut, change, readiness } = pair;
  const line = pairRow(
    terminal(pair.pair),
    String(losses),
    String(bouts),
    sayRate(pair),
    sayObserved(observedSeconds),
    availability === null ? 'not known' : sayShare(availability),
  );
  return [
    ...line,
    ...(standsOut === true && pair.p !== null ? [`    stands out (${sayChance(pair.p)})`] : []),
    ...(pair.trend.comesCloser === true ? [`    losses ${sayTrend(pair.trend)}`] : []),
    ...(change === null ? [] : [`    rate changed: ${sayChanged(change)}`]),
    ...wrap(terminal(sayFit(readiness, standsOut)), '    ', '      '),
  ];
}

function groupRow(group: string, cause: string, count: string, half: string): readonly string[] {
  return row(group, `${cause.padEnd(10)} ${count.padStart(5)}  ${half}`);
}

/** The chance up to which a trend of sync times is told, with all groups looked at. */
export const tellingChance = 0.05;

function groupText(group: GroupReview): readonly string[] {
  const { cause, attempts, trend } = group;
  return [
    ...groupRow(terminal(group.group), causeWords[cause], String(attempts), sayQuantile(group, 'median')),
    ...(group.superseded + group.censored === 0 ? [] : wrap(sayNotReady(group), '    ', '      ')),
    ...(trend !== null && trend.p <= tellingChance
      ? wrap(`changes in a year by ${sayLonger(trend)}`, '    ', '      ')
      : []),
    ...wrap(
      `95th percentile ${sayQuantile(group, 'p95')}; 95/95 tolerance limit ${saySure(group)}`,
      '    ',
      '      ',
    ),
  ];
}
