import type { ColumnKey } from '../phrasebook/column-keys.ts';
import type { UnitParts } from '../phrasebook/subjects.ts';
import { type Head, timeKeys, unitKeys } from './head.ts';
import { addressOf } from './line-fields.ts';
import { qualityColumn } from './rule-columns.ts';

/** A column of polled values. */
export interface ValueColumn {
  readonly index: number;
  readonly name: string;
  readonly parameter: string;
  /** What its name says of the unit of its values; `null` where that is for the row to say. */
  readonly says: UnitParts | null;
}

/** The columns of a table that are parameters, and the names of those that are passed over. */
export interface ValueColumns {
  readonly columns: readonly ValueColumn[];
  readonly passedOver: readonly string[];
}

/** All columns but those of the time, the unit and `others`; where the rule has a pattern of their names, those that it fits. */
export function valueColumns(head: Head, others: readonly ColumnKey[]): ValueColumns {
  const keys = [...timeKeys, ...unitKeys, ...others];
  const taken = new Set([...keys.map((key) => head.column(key)), qualityColumn(head)]);
  const pattern = head.rule?.header;
  const columns: ValueColumn[] = [];
  const passedOver: string[] = [];
  for (const [index, name] of head.names.entries()) {
    if (name === '' || taken.has(index)) continue;
    const groups = pattern === undefined ? { parameter: name } : pattern.match(name);
    const parameter = groups?.parameter ?? '';
    if (groups === null || parameter === '') passedOver.push(name);
    else columns.push({ index, name, parameter, says: saidBy(groups, pattern?.groups ?? []) });
  }
  return { columns, passedOver };
}

function saidBy(
  { unit = '', pair = '', half = '', role = '' }: Readonly<Record<string, string>>,
  groups: readonly string[],
): UnitParts | null {
  if (unit + pair + half + role === '') return null;
  const isApart = groups.includes('half') || groups.includes('role');
  return { ...addressOf(unit, pair, isApart), half, role };
}

/** True where every column says by its name of which unit its values are. */
export function saysUnits({ columns }: ValueColumns): boolean {
  return columns.every(({ says }) => says !== null && saysAll(says));
}

function saysAll({ unit, pair = '' }: UnitParts): boolean {
  return unit !== '' || pair !== '';
}

/** The unit of a value: what its column says by its name, then what the row does. */
export function unitOfValue(
  { says }: ValueColumn,
  unit: string,
  parts: UnitParts | undefined,
): UnitParts | undefined {
  if (says === null || saysAll(says)) return says ?? parts;
  const { half, role, ...own } = parts ?? { unit, half: '', role: '' };
  return { ...own, half: says.half === '' ? half : says.half, role: says.role === '' ? role : says.role };
}
