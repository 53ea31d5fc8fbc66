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
  'Counted are bouts: losses of one pair of which each follows the one before within 12 h count once, at the first, since one trouble brings many. Years are of observed time, 365.25 days.';

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
      whatIsCounted,
      'Limits are exact for Poisson counts (Garwood, Fiducial Limits for the Poisson Distribution, 1936).',
      'A pair stands out if its bouts are too many beside the rest: exact one-sided comparison of two Poisson rates (Przyborowski and Wilenski, 1940), at 5 in 100 false ones among those said to (Benjamini and Hochberg, Controlling the False Discovery Rate, 1995), made again without those found until no further one is, so that several do not hide each other.',
      'Pairs are ranked by the shrunken rate, which draws each towards all the more, the less was seen of it: gamma-Poisson by marginal maximum likelihood (Gaver and O’Muircheartaigh, Robust Empirical Bayes Analyses of Event Rates, 1987).',
      `n = ${sayCount(bouts, 'bout')} of ${sayCount(judged.length, 'pair')} observed for 30 days or more.`,
      'It would be wrong where one trouble goes on with more than 12 h between its losses, so that its bouts are not independent. The lines of a pair are those of its newest losses, twenty at most.',
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
    howComputed: `A bout counts in the month of its first loss. ${figures.length === 0 ? '' : 'A thin line is time in which the pair was observed. '}Months are those of UTC.`,
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
    title: 'Since when',
    figures: all.slice(0, mostChanges).flatMap(({ name, change }, index) => {
      return figureOf(rateChanges, changeRows(name, change), `rate-change-${index + 1}`);
    }),
    table,
    howComputed: [
      'Trends are Laplace’s test over observed time (NIST/SEMATECH e-Handbook, section 8.2.3.4) for all pairs together at 5 in 100; a shape above 1 is that of a power law whose bouts come more and more often.',
      'A change is one change of the rate of bouts at an unknown instant of the observed time: the greatest ratio of the likelihood of two rates to that of one (Jarrett, A Note on the Intervals Between Coal-Mining Disasters, 1979, has the data it is checked with), over all instants at which a denser part of at least three bouts begins or ends.',
      'Its chance is exact for any number of bouts (the distribution of ordered uniform values; Noe, 1972), adjusted for all pairs, and apart from them for all groups, that were asked: those with five bouts or more (Benjamini and Hochberg, 1995).',
      'Of a group each pair counts with the rate that it had there, bouts of several pairs within an hour of each other count once, and the change must be there also without the pair that speaks most for it.',
      'It would be wrong about the instant where a rate drifts slowly: the change is then said near the middle of it.',
      `${all.length > mostChanges ? `Drawn are the first ${mostChanges} of ${all.length}.` : ''}`,
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
      whatIsCounted,
      fleet.by === 'site'
        ? ''
        : `Time and bouts count for the ${fleet.by} that the pair had at the time: what both halves say, or the one that says it; "mixed" where they differ.`,
      'The curve is the mean cumulative function, by observed days since a pair came into the group, with robust 95 % limits from the spread between pairs (Nelson, Confidence Limits for Recurrence Data, 1995; Lawless and Nadeau, Some Simple Robust Methods for the Analysis of Recurrent Events, 1995), by Student’s t, told while at least 4 pairs are watched.',
      'Where several pairs lose their partners at once, their bouts are not independent, and no limits are told. It would be wrong where pairs leave a group because they lose their partner.',
    ]
      .filter((said) => said !== '')
      .join(' '),
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
      'Pairs that were in both groups are compared with themselves: Mantel-Haenszel rate ratio, a stratum for each pair, limits of Greenland and Robins (Estimation of a Common Effect Parameter from Sparse Follow-up Data, 1985). Where there are not two such pairs, all pairs of the one group with all of the other: exact limits of the ratio of two Poisson rates, widened where the pairs of a group differ by more than chance (Lawless and Nadeau, 1995). Bouts of several pairs within an hour of each other count once here, with the first.',
      'The chance is exact given the bouts of each pair, adjusted for all comparisons (Benjamini and Hochberg, 1995). Groups are said to differ where that is at most 5 in 100 also without the pair that speaks most for it: what one pair does is no property of its group.',
      'It would be wrong where something else changed at the same time as the group.',
    ].join(' '),
  };
}
