import {
  type BringUp,
  type Fleet,
  type LossTrend,
  type PairReview,
  type SourceLine,
  sayChance,
  sayDuration,
  sayShare,
} from '../vocabulary.ts';
import { sayLonger, sayMonth, sayObserved, sayRate, sayTrend } from './fleet-words.ts';
import { causeWords } from './outcome-words.ts';
import { abnormal, columns, plain, type ShownCell, type ShownRow, type ShownTable } from './shown-table.ts';
import { sayQuantile, saySure, sayTests } from './sync-words.ts';

/** How often each pair lost its partner, and what that says. */
export function pairTable({ pairs }: Fleet): ShownTable {
  const isOneSite = new Set(pairs.map((p) => p.site)).size < 2;
  return {
    file: 'fleet-pairs.csv',
    columns: columns(
      'Pair',
      ...(isOneSite ? [] : ['Site']),
      'Losses#',
      'A year, 95 % limits#',
      'Observed#',
      'Ready partner#',
      'Against the rest',
      'Trend',
    ),
    rows: pairs.map((pair) => ({
      lines: pair.evidence,
      cells: [
        plain(pair.pair),
        ...(isOneSite ? [] : [plain(pair.site ?? 'not known')]),
        plain(pair.losses),
        plain(sayRate(pair.ratePerYear)),
        plain(sayObserved(pair.observedSeconds)),
        plain(pair.availability === null ? 'not known' : sayShare(pair.availability)),
        against(pair),
        trendCell(pair.trend),
      ],
    })),
    note: '',
  };
}

function against({ p, standsOut }: PairReview): ShownCell {
  if (p === null) return plain('nothing to compare');
  return standsOut ? abnormal(`stands out (${sayChance(p)})`) : plain(sayChance(p));
}

function trendCell(trend: LossTrend): ShownCell {
  const said = sayTrend(trend);
  return trend.comesCloser ? abnormal(said) : plain(said);
}

/** Losses of each pair by month, those without one left out. */
export function monthTable({ pairs, months }: Fleet): ShownTable {
  const lost = pairs.filter((pair) => pair.losses > 0);
  const lossy = new Map<string, Fleet['months'][number][]>();
  for (const month of months) {
    if (month.losses === 0) continue;
    const own = lossy.get(month.pair);
    if (own === undefined) lossy.set(month.pair, [month]);
    else own.push(month);
  }
  return {
    file: 'fleet-months.csv',
    columns: columns('Pair', 'Losses#', 'Months with losses'),
    rows: lost.map(({ pair, losses, evidence }) => {
      const said = (lossy.get(pair) ?? []).map(
        (m) => `${sayMonth(m.from)}${m.losses === 1 ? '' : ` (${m.losses})`}`,
      );
      return { lines: evidence, cells: [plain(pair), plain(losses), plain(said.join(', '))] };
    }),
    note: '',
  };
}

/** Sync times of each group and cause. */
export function groupTable(fleet: Fleet): ShownTable {
  const { groups, by } = fleet;
  const name = `${by.slice(0, 1).toUpperCase()}${by.slice(1)}`;
  return {
    file: 'fleet-groups.csv',
    columns: columns(
      name,
      'After',
      'n#',
      'Superseded#',
      'Not seen to end#',
      'Median, 95 % limits',
      '95th percentile, 95 % limits',
      '95/95 tolerance limit',
      'Longer each year',
    ),
    rows: groups.map((g) => ({
      lines: attemptLines(fleet, g),
      cells: [
        plain(g.group),
        plain(causeWords[g.cause]),
        plain(g.attempts),
        plain(g.superseded),
        plain(g.censored),
        plain(sayQuantile(g, 'median')),
        plain(sayQuantile(g, 'p95')),
        plain(saySure(g)),
        plain(g.trend === null ? 'too few months' : sayLonger(g.trend)),
      ],
    })),
    note: sayTests(fleet),
  };
}

const mostLines = 20;

/** The lines that began the newest attempts of a group. */
function attemptLines(
  { attempts, pairs, by }: Fleet,
  { group, cause }: Fleet['groups'][number],
): readonly SourceLine[] {
  const sites = new Map(pairs.map((p) => [p.pair, p.site]));
  const nameOf = (a: BringUp): string => (by === 'site' ? sites.get(a.pair) : a[by]) ?? 'not known';
  const own = attempts.filter((a) => a.cause === cause && nameOf(a) === group);
  return own.slice(-mostLines).map((a) => a.evidence[0]);
}

/** What is usual for each group and cause, and where its average is now. */
export function driftTable({ drifts }: Fleet): ShownTable {
  return {
    file: 'fleet.json',
    columns: columns('Group', 'After', 'n#', 'Usual', 'Usual limits', 'Average now', 'Outside#'),
    rows: drifts.flatMap(({ group, cause, target, low, high, points }) => {
      const last = points.at(-1);
      if (last === undefined) return [];
      const now = sayDuration(last.average);
      return [
        unsaid(
          plain(group),
          plain(causeWords[cause]),
          plain(points.length),
          plain(sayDuration(target)),
          plain(`${sayDuration(Math.max(0, low))} to ${sayDuration(high)}`),
          last.isOutside ? abnormal(`${now}, outside`) : plain(now),
          plain(points.filter((p) => p.isOutside).length),
        ),
      ];
    }),
    note: '',
  };
}

/** How many halves said each value, each time that it changed. */
export function censusTable({ census }: Fleet): ShownTable {
  const keys = [...new Set(census.map((c) => `${c.signal}\n${c.value ?? ''}`))];
  return {
    file: 'fleet-census.csv',
    columns: columns('What', 'Reported', 'Halves, each time their number changed'),
    rows: keys.map((key) => {
      const [signal = '', value = ''] = key.split('\n');
      return unsaid(
        plain(signal),
        plain(value === '' ? 'not known' : value),
        plain(changesOf(census, signal, value)),
      );
    }),
    note: '',
  };
}

function changesOf(census: Fleet['census'], signal: string, value: string): string {
  const times = [...new Set(census.filter((c) => c.signal === signal).map((c) => c.time))];
  const counts = times.map((time) => ({
    time,
    halves:
      census.find((c) => c.time === time && c.signal === signal && (c.value ?? '') === value)?.halves ?? 0,
  }));
  const changed = counts.filter((count, index) => count.halves !== (counts[index - 1]?.halves ?? 0));
  return changed.map(({ time, halves }) => `${halves} from ${sayMonth(time)}`).join(', ');
}

/** Fit or not, with the reasons; those that are not come first. */
export function readinessTable({ pairs }: Fleet): ShownTable {
  const sorted = [...pairs].sort((a, b) => Number(a.readiness.fit) - Number(b.readiness.fit));
  return {
    file: 'fleet-pairs.csv',
    columns: columns('Pair', 'Fit for a swap', 'Why not'),
    rows: sorted.map(({ pair, readiness: { fit, reasons, evidence } }) => ({
      lines: evidence,
      cells: [plain(pair), fit ? plain('fit') : abnormal('not fit'), plain(reasons.join(' '))],
    })),
    note: '',
  };
}

/** A row of figures that rest on too many lines to name some. */
function unsaid(...cells: readonly ShownCell[]): ShownRow {
  return { cells, lines: [] };
}
