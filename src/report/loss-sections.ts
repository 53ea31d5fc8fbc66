import { lossRates } from '../charts/loss-rates.ts';
import { lossRatios } from '../charts/loss-ratios.ts';
import { lossesOverTime } from '../charts/losses-over-time.ts';
import { meanBouts } from '../charts/mean-bouts.ts';
import { rateChanges } from '../charts/rate-changes.ts';
import type { Fleet } from '../vocabulary.ts';
import { drawnOf, figureOf } from './fleet-figures.ts';
import type { FleetSection } from './fleet-section.ts';
import { changeRows, lossRateRows, meanBoutsRows, monthRows, ratioRows } from './loss-rows.ts';
import { changeTable, lossGroupTable, lossRatioTable, monthTable, pairTable } from './loss-tables.ts';
import { sayCount } from './words.ts';

/** The questions about losses, in their order. */
export function lossSections(fleet: Fleet): readonly FleetSection[] {
  return [pairs(fleet), months(fleet), changes(fleet), groups(fleet), ratios(fleet)];
}

const whatIsCounted =
  'Counted are bouts: losses of a pair less than 12 h apart count once, at the first, per year of observed time';

function pairs(fleet: Fleet): FleetSection {
  const rows = lossRateRows(fleet);
  const judged = fleet.pairs.filter((pair) => pair.ratePerYear !== null);
  const bouts = judged.reduce((sum, pair) => sum + pair.bouts, 0);
  return {
    id: 'pairs',
    title: 'Which pairs lose their partner',
    figures: drawnOf(figureOf(lossRates, rows), rows.length, judged.length, 'worst pairs'),
    table: pairTable(fleet),
    howComputed: [
      `${whatIsCounted}; n = ${sayCount(bouts, 'bout')} of ${sayCount(judged.length, 'pair')} observed for 30 days or more.`,
      'Limits are exact Poisson limits (Garwood, 1936); a pair stands out by an exact comparison of its rate with the rest (Przyborowski and Wilenski, 1940), at a false discovery rate of 5 % (Benjamini and Hochberg, 1995), repeated without the pairs already found.',
      'Pairs are ranked by the shrunken rate, gamma-Poisson (Gaver and O’Muircheartaigh, 1987).',
      'Wrong if one trouble goes on with more than 12 h between its losses: its bouts are then not independent.',
    ].join(' '),
  };
}

function months(fleet: Fleet): FleetSection {
  const rows = monthRows(fleet);
  const drawn = new Set(rows.map((row) => row.pair)).size;
  const lost = fleet.pairs.filter((pair) => pair.bouts > 0).length;
  const figures = drawnOf(figureOf(lossesOverTime, rows), drawn, lost, 'pairs with most bouts');
  return {
    id: 'months',
    title: 'Losses over time',
    figures,
    table: monthTable(fleet),
    howComputed: `A bout counts in the month (UTC) of its first loss.${figures.length === 0 ? '' : ' A thin line is time in which the pair was observed.'}`,
  };
}

/** Of very many changes those of the first pairs and groups are drawn; the table has all. */
const mostChanges = 6;

function changes(fleet: Fleet): FleetSection {
  const table = changeTable(fleet);
  const all = [
    ...fleet.pairs.map(({ pair, change }) => ({ name: pair, change })),
    ...fleet.lossGroups.map(({ group, change }) => ({ name: group, change })),
  ].flatMap(({ name, change }) => (change === null ? [] : [{ name, change }]));
  return {
    id: 'rate-changes',
    title: 'Trends and changes of rate',
    figures: all.slice(0, mostChanges).flatMap(({ name, change }, index) => {
      return figureOf(rateChanges, changeRows(name, change), `rate-change-${index + 1}`);
    }),
    table,
    howComputed: [
      'Trend: Laplace’s test over observed time (NIST/SEMATECH e-Handbook, section 8.2.3.4), all pairs together at 5 %; a shape above 1 means more and more often.',
      'Change: the likeliest single change of the rate (Jarrett, 1979) of each pair or group with five bouts or more, with an exact chance (Noe, 1972) adjusted for all of them (Benjamini and Hochberg, 1995).',
      'A group must show it without its strongest pair too; bouts of several pairs within an hour count once.',
      'Wrong about the date if the rate drifts slowly: the change is then put near the middle.',
      `${all.length > mostChanges ? `Shown: the first ${mostChanges} of ${all.length}.` : ''}`,
    ]
      .join(' ')
      .trim(),
  };
}

function groups(fleet: Fleet): FleetSection {
  const rows = meanBoutsRows(fleet);
  const drawn = new Set(rows.map((row) => row.group)).size;
  const withCurve = fleet.lossGroups.filter((g) => g.curve.length > 0).length;
  return {
    id: 'loss-groups',
    title: `Losses by ${fleet.by}`,
    figures: drawnOf(figureOf(meanBouts, rows), drawn, withCurve, 'groups with most bouts'),
    table: lossGroupTable(fleet),
    howComputed: [
      fleet.by === 'site'
        ? `${whatIsCounted}.`
        : `${whatIsCounted}, by the ${fleet.by} that the pair had at the time ("mixed" where its halves differ).`,
      'The curve is the mean cumulative number of bouts per pair, with robust 95 % limits (Nelson, 1995; Lawless and Nadeau, 1995), drawn while at least 4 pairs are observed.',
      'No limits are given where several pairs lose their partners at once.',
      'Wrong if pairs leave a group because they lose their partner.',
    ].join(' '),
  };
}

function ratios(fleet: Fleet): FleetSection {
  const rows = ratioRows(fleet);
  return {
    id: 'loss-ratios',
    title: `Losses by ${fleet.by}, compared`,
    figures: drawnOf(figureOf(lossRatios, rows), rows.length, fleet.lossRatios.length, 'first comparisons'),
    table: lossRatioTable(fleet),
    howComputed: [
      'Pairs that were in both groups are compared with themselves (Mantel-Haenszel rate ratio; limits of Greenland and Robins, 1985); with fewer than two such pairs, all pairs of each (exact Poisson ratio, widened by the spread between pairs; Lawless and Nadeau, 1995).',
      'p is exact given the bouts of each pair, adjusted for all comparisons (Benjamini and Hochberg, 1995); bouts of several pairs within an hour count once.',
      'Groups differ if p is at most 0.05, without the strongest pair too.',
      'Wrong if something else changed at the same time as the group.',
    ].join(' '),
  };
}
