import {
  type Fleet,
  type LossTrend,
  type PairReview,
  type RateChange,
  sayChance,
  sayShare,
} from '../vocabulary.ts';
import { sayFit, sayMonth, sayObserved, sayRate, sayTrend } from './fleet-words.ts';
import { isRise, sayChanged, sayCompared, sayDifference, sayRatio, struckWords } from './loss-words.ts';
import { abnormal, columns, pairCell, plain, type ShownCell, type ShownTable } from './shown-table.ts';

/** How often each pair lost its partner, and what that says. */
export function pairTable({ pairs }: Fleet): ShownTable {
  const isOneSite = new Set(pairs.map((p) => p.site)).size < 2;
  return {
    file: 'fleet-pairs.csv',
    columns: columns(
      'Pair',
      ...(isOneSite ? [] : ['Site']),
      'Losses#',
      'Bouts#',
      'Bouts per year, 95 % limits#',
      'Shrunken rate#',
      'Observed#',
      'Ready partner#',
      'Against the rest',
    ),
    rows: pairs.map((pair) => ({
      lines: pair.evidence,
      cells: [
        pairCell(pair.pair),
        ...(isOneSite ? [] : [plain(pair.site ?? 'not known')]),
        plain(pair.losses),
        plain(pair.bouts),
        plain(sayRate(pair)),
        plain(pair.shrunkenPerYear === null ? 'no rank' : pair.shrunkenPerYear.toFixed(1)),
        plain(sayObserved(pair.observedSeconds)),
        plain(pair.availability === null ? 'not known' : sayShare(pair.availability)),
        against(pair),
      ],
    })),
    note: '',
  };
}

function against({ p, standsOut, ratePerYear }: PairReview): ShownCell {
  if (ratePerYear === null) return plain('not judged below 30 days');
  if (p === null) return plain('nothing to compare');
  return standsOut === true ? abnormal(`stands out (${sayChance(p)})`) : plain(sayChance(p));
}

function trendCell(trend: LossTrend): ShownCell {
  const said = sayTrend(trend);
  return trend.comesCloser === true ? abnormal(said) : plain(said);
}

/** Bouts of each pair by month, those without one left out. */
export function monthTable({ pairs, months }: Fleet): ShownTable {
  const lost = pairs.filter((pair) => pair.bouts > 0);
  const lossy = new Map<string, Fleet['months'][number][]>();
  for (const month of months) {
    if (month.bouts === 0) continue;
    const own = lossy.get(month.pair);
    if (own === undefined) lossy.set(month.pair, [month]);
    else own.push(month);
  }
  return {
    file: 'fleet-months.csv',
    columns: columns('Pair', 'Losses#', 'Bouts#', 'Months in which bouts began'),
    rows: lost.map(({ pair, losses, bouts, evidence }) => {
      const said = (lossy.get(pair) ?? []).map(
        (m) => `${sayMonth(m.from)}${m.bouts === 1 ? '' : ` (${m.bouts})`}`,
      );
      return {
        lines: evidence,
        cells: [pairCell(pair), plain(losses), plain(bouts), plain(said.join(', '))],
      };
    }),
    note: '',
  };
}

/** The bouts of each group. */
export function lossGroupTable({ by, lossGroups }: Fleet): ShownTable {
  return {
    file: 'fleet-losses.csv',
    columns: columns(
      `${by.slice(0, 1).toUpperCase()}${by.slice(1)}`,
      'Pairs#',
      'Losses#',
      'Bouts#',
      'Bouts per year, 95 % limits#',
      'Observed#',
    ),
    rows: lossGroups.map((g) => ({
      lines: [],
      cells: [
        plain(g.group),
        plain(g.pairs),
        plain(g.losses),
        plain(g.bouts),
        plain(g.struckTogether ? `${sayRate(g)}, no limits: ${struckWords}` : sayRate(g)),
        plain(sayObserved(g.observedSeconds)),
      ],
    })),
    note: '',
  };
}

/** Every two groups compared. */
export function lossRatioTable({ lossRatios }: Fleet): ShownTable {
  return {
    file: 'fleet.json',
    columns: columns('Compared', 'By', 'Ratio of bouts per year, 95 % limits', 'Difference'),
    rows: lossRatios.map((r) => ({
      lines: [],
      cells: [
        plain(`${r.group} over ${r.other}`),
        plain(sayCompared(r)),
        plain(sayRatio(r)),
        r.differs ? abnormal(sayDifference(r), 'warning') : plain(sayDifference(r)),
      ],
    })),
    note: '',
  };
}

/** Trend and change of every pair, and the changes of groups. */
export function changeTable({ pairs, lossGroups }: Fleet): ShownTable {
  return {
    file: 'fleet-pairs.csv',
    columns: columns('Pair or group', 'Trend', 'Change of rate'),
    rows: [
      ...pairs.map(({ pair, trend, change, evidence }) => ({
        lines: evidence,
        cells: [pairCell(pair), trendCell(trend), changeCell(change)],
      })),
      ...lossGroups.flatMap(({ group, change }) =>
        change === null ? [] : [{ lines: [], cells: [plain(group), plain(''), changeCell(change)] }],
      ),
    ],
    note: '',
  };
}

function changeCell(change: RateChange | null): ShownCell {
  if (change === null) return plain('no change beyond chance');
  return isRise(change) ? abnormal(sayChanged(change), 'warning') : plain(sayChanged(change));
}

/** Fit or not, with the reasons; those that are not come first. */
export function readinessTable({ pairs }: Fleet): ShownTable {
  const order = [false, null, true];
  const sorted = [...pairs].sort((a, b) => order.indexOf(a.readiness.fit) - order.indexOf(b.readiness.fit));
  return {
    file: 'fleet-pairs.csv',
    columns: columns('Pair', 'Ready for a swap', 'Reason'),
    rows: sorted.map(({ pair, standsOut, readiness }) => ({
      lines: readiness.evidence,
      cells: [pairCell(pair), fitCell(readiness, standsOut), plain(readiness.reasons.join(' '))],
    })),
    note: '',
  };
}

function fitCell(readiness: PairReview['readiness'], standsOut: boolean | null): ShownCell {
  if (readiness.fit === false) return abnormal('not ready');
  if (readiness.fit === null) return abnormal('not known', 'warning');
  return standsOut === true ? abnormal(sayFit(readiness, standsOut), 'warning') : plain('ready');
}
