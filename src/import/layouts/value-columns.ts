import type { ColumnKey } from '../phrasebook/column-keys.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import type { UnitParts } from '../phrasebook/subjects.ts';
import { halfNames } from './half-names.ts';
import { type Head, timeKeys, unitKeys } from './head.ts';
import { addressOf } from './line-fields.ts';
import { isQualityName } from './quality.ts';
import { qualityColumn, ruledQuality } from './rule-columns.ts';
import { tagNamed, tagReader } from './tag-names.ts';

/** A column of polled values. */
export interface ValueColumn {
  readonly index: number;
  readonly name: string;
  readonly parameter: string;
  /** What its name says of the unit of its values; `null` where that is for the row to say. */
  readonly says: UnitParts | null;
  /** Where the quality of its values stands; -1 without one. */
  readonly quality: number;
}

/** The columns of a table that are parameters, and the names of those that are passed over. */
export interface ValueColumns {
  readonly columns: readonly ValueColumn[];
  readonly passedOver: readonly string[];
}

/** All columns but those of the time, the unit and `others`; where the rule has a pattern of their names, those that it fits. */
export function valueColumns(head: Head, phrasebook: Phrasebook, others: readonly ColumnKey[]): ValueColumns {
  const ofRow = qualityColumn(head);
  const taken = new Set([...takenBy(head, others), ofRow]);
  const pattern = head.rule?.header;
  const ofHalves = pattern === undefined ? halfNames(head, phrasebook) : new Map();
  const columns: ValueColumn[] = [];
  const passedOver: string[] = [];
  const fits = (name: string): boolean => (pattern?.match(name)?.parameter ?? '') !== '';
  // A rule for the names says of each whether it is a parameter; what it leaves may be the quality of another.
  const qualities =
    pattern === undefined || ofRow >= 0 ? [] : qualitiesIn(head).filter(({ name }) => !fits(name));
  for (const [index, name] of head.names.entries()) {
    if (name === '' || taken.has(index)) continue;
    const groups = pattern === undefined ? (ofHalves.get(name) ?? { parameter: name }) : pattern.match(name);
    const parameter = groups?.parameter ?? '';
    const says = groups === null ? null : saidBy(groups, pattern?.groups ?? []);
    if (parameter === '') passedOver.push(name);
    else columns.push({ index, name, parameter, says, quality: qualityOf(qualities, name, index) });
  }
  const used = new Set(columns.map(({ quality }) => head.names[quality]));
  return { columns, passedOver: passedOver.filter((name) => !used.has(name)) };
}

/** The columns of a table whose names are tags by the built-in words, or by rules for units and parameters; and all others. */
export function tagColumns(
  head: Head,
  phrasebook: Phrasebook,
  others: readonly ColumnKey[],
): { readonly columns: readonly ValueColumn[]; readonly unexplained: readonly ValueColumn[] } {
  const ofRow = ruledQuality(head);
  const taken = new Set([...takenBy(head, others), ofRow]);
  const qualities = qualitiesIn(head).filter(({ index }) => index !== ofRow);
  const tagOf = tagReader(phrasebook);
  const columns: ValueColumn[] = [];
  const unexplained: ValueColumn[] = [];
  for (const [index, name] of head.names.entries()) {
    if (name === '' || taken.has(index) || isQualityName(name)) continue;
    const { unit, parameter } = tagOf(name);
    const says = { unit, half: '', role: '' };
    const isTag = tagNamed(phrasebook, name) !== null;
    const quality = isTag ? qualityOf(qualities, name, index) : -1;
    (isTag ? columns : unexplained).push({ index, name, parameter, says, quality });
  }
  return { columns, unexplained };
}

function takenBy(head: Head, others: readonly ColumnKey[]): ReadonlySet<number> {
  return new Set([...timeKeys, ...unitKeys, ...others].map((key) => head.column(key)));
}

interface Named {
  readonly index: number;
  readonly name: string;
}

function qualitiesIn({ names }: Head): readonly Named[] {
  return names.map((name, index) => ({ name, index })).filter(({ name }) => isQualityName(name));
}

/** The quality of a column: that of the next column, else of any that is named like it and its quality. */
function qualityOf(qualities: readonly Named[], name: string, index: number): number {
  const beside = qualities.find((q) => q.index === index + 1);
  return (beside ?? qualities.find((q) => q.name.startsWith(name)))?.index ?? -1;
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

/** True where a name says the pair too, not only the half or the role. */
export function saysAll({ unit, pair = '' }: UnitParts): boolean {
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
