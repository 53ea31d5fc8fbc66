import type { Finding, Fleet } from '../vocabulary.ts';
import { abnormal, columns, pairCell, plain, type ShownRow, type ShownTable } from './shown-table.ts';
import { sayInstant } from './words.ts';

/** The findings of warning or worse, those of one kind and pair in one row, with the newest of them in its words, the critical ones first. */
export function findingTable({ findings }: Pick<Fleet, 'findings'>, zone: string): ShownTable {
  const worse = [
    ...findings.filter((f) => f.severity === 'critical'),
    ...findings.filter((f) => f.severity === 'warning'),
  ];
  return tableOf(worse, zone);
}

const qualityIds: readonly Finding['id'][] = [
  'rejected-rows',
  'unmatched-wording',
  'damaged-tail',
  'clock-fold',
  'unobserved',
];

/** What could not be read, understood or seen, where that is no warning: those of the files first. */
export function qualityTable({ findings }: Pick<Fleet, 'findings'>, zone: string): ShownTable {
  const own = findings.filter((f) => f.severity === 'info' && qualityIds.includes(f.id));
  return tableOf([...own.filter((f) => f.pair === null), ...own.filter((f) => f.pair !== null)], zone);
}

function tableOf(findings: readonly Finding[], zone: string): ShownTable {
  const kinds = new Map<string, readonly Finding[]>();
  for (const finding of findings) {
    // What is said of a file names it: two files are two rows.
    const key = `${finding.id}\n${finding.pair ?? finding.statement}`;
    kinds.set(key, [...(kinds.get(key) ?? []), finding]);
  }
  return {
    file: 'fleet.json',
    columns: columns('Pair', 'Severity', 'Count#', 'Newest', 'Finding'),
    rows: [...kinds.values()].flatMap((one) => rowOf(one, zone)),
    note: '',
  };
}

function rowOf(own: readonly Finding[], zone: string): readonly ShownRow[] {
  const newest = own.reduce<Finding | undefined>(
    (last, f) => (last === undefined || (f.from ?? 0) >= (last.from ?? 0) ? f : last),
    undefined,
  );
  if (newest === undefined) return [];
  const { pair, severity, from, statement, evidence } = newest;
  const cells = [
    pair === null ? plain('all files') : pairCell(pair),
    severity === 'info' ? plain(severity) : abnormal(severity, severity),
    plain(own.length),
    plain(from === null ? '' : sayInstant(from, zone)),
    plain(statement),
  ];
  return [{ cells, lines: evidence }];
}
