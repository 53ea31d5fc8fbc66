import type { Finding, Fleet } from '../vocabulary.ts';
import { abnormal, columns, plain, type ShownRow, type ShownTable } from './shown-table.ts';
import { sayInstant } from './words.ts';

const mostRows = 100;

/** The findings of warning or worse, those of one kind and pair in one row, with the newest of them in its words. */
export function findingTable({ findings }: Fleet, zone: string): ShownTable {
  const worse = findings.filter((f) => f.severity !== 'info');
  const kinds = new Map<string, readonly Finding[]>();
  for (const finding of worse) {
    const key = `${finding.id}\n${finding.pair ?? ''}`;
    kinds.set(key, [...(kinds.get(key) ?? []), finding]);
  }
  const rows = [...kinds.values()].flatMap((own) => rowOf(own, zone));
  const left = rows.length - mostRows;
  return {
    columns: columns('Pair', 'Severity', 'How often#', 'Newest', 'What it says'),
    rows: rows.slice(0, mostRows),
    note: left > 0 ? `${left} further kinds are in fleet.json.` : '',
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
    plain(pair ?? 'all files'),
    abnormal(severity),
    plain(own.length),
    plain(from === null ? '' : sayInstant(from, zone)),
    plain(statement),
  ];
  return [{ cells, lines: evidence }];
}
