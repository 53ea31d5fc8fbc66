import type { FileRule } from '../phrasebook/phrasebook-rules.ts';

/** A line taken apart: a message, or fields by name. `stamp` is a text, or an instant that was read already. */
export interface LineParts {
  readonly stamp: string | number;
  readonly unit: string;
  /** The name of a pair where it has a place of its own, and halves or roles another. */
  readonly pair?: string;
  readonly half?: string;
  readonly role?: string;
  readonly message: string | null;
  /** A parameter whose name stands in one place and its value in another. */
  readonly reading?: { readonly parameter: string; readonly value: string } | undefined;
  readonly fields: ReadonlyMap<string, string>;
}

/** The fields of a line that say when, where and what, by the names that they have in JSON and key=value. */
const fieldNames = {
  time: ['time', 'timestamp', 'ts', 'when', '@timestamp', 'datetime'],
  date: ['date', 'day'],
  clock: ['clock'],
  unit: ['unit', 'node', 'module', 'device', 'pair', 'host', 'hostname', 'source'],
  half: ['half'],
  role: ['role'],
  message: ['message', 'msg', 'text', 'event'],
  severity: ['severity', 'level', 'lvl', 'priority'],
  class: ['class', 'logger', 'caller', 'thread', 'pid', 'program', 'app'],
};

/** What a field may be: what plain English names, and what only a rule for the file does. */
type FieldKey = keyof typeof fieldNames | 'pair' | 'parameter' | 'value';
/** All of them: of JSON, of key=value, and of the groups of a line pattern. */
export const fieldKeys: readonly FieldKey[] = [
  'time',
  'date',
  'clock',
  'unit',
  'pair',
  'half',
  'role',
  'message',
  'severity',
  'class',
  'parameter',
  'value',
];

/** Reads what the fields of a line say. */
export interface FieldReader {
  /** A rule for the file names some of them. */
  readonly isOwn: boolean;
  /** True for a field that says when, where or what; every other one is a parameter. */
  isKnown(name: string): boolean;
  /** `leading` is a stamp that stood before the fields. `null` where nothing says when, or of which unit. */
  read(fields: ReadonlyMap<string, string>, leading: number | undefined): LineParts | null;
}

/** The names of a rule for the file come first, to the letter; else those of plain English, in any case. */
export function fieldReader(rule: FileRule | undefined): FieldReader {
  const own = rule?.columns ?? {};
  const taken = new Set(Object.values(own));
  const namesOf = (key: FieldKey): readonly string[] => {
    const named = own[key];
    if (named !== undefined) return [named];
    return key === 'pair' || key === 'parameter' || key === 'value'
      ? []
      : fieldNames[key].filter((name) => !taken.has(name));
  };
  const names = new Map(fieldKeys.map((key) => [key, namesOf(key)]));
  const known = new Set([...names.values()].flat());
  const plain = new Set(fieldKeys.filter((key) => own[key] === undefined).flatMap(namesOf));
  const needsUnit = rule?.of === undefined && own.unit === undefined && own.pair === undefined;
  const isApart = own.half !== undefined || own.role !== undefined;
  return {
    isOwn: taken.size > 0,
    isKnown: (name) => known.has(name) || (plain.has(name.toLowerCase()) && !taken.has(name)),
    read(fields, leading) {
      const byName = new Map([...fields].map(([name, value]) => [name.toLowerCase(), value]));
      const pick: Pick = (key) => {
        const isOwnName = own[key] !== undefined;
        const from = isOwnName ? fields : byName;
        const found = names.get(key)?.find((name) => from.has(name));
        return found === undefined ? undefined : from.get(found);
      };
      const stamp = stampIn(pick, own.time === undefined ? leading : undefined) ?? leading;
      const unit = own.pair === undefined || own.unit !== undefined ? pick('unit') : undefined;
      const message = pick('message') ?? null;
      if (stamp === undefined || (needsUnit && unit === undefined && message === null)) return null;
      const [half, role] = [pick('half') ?? '', pick('role') ?? ''];
      const [parameter, value] = [pick('parameter'), pick('value')];
      return {
        stamp,
        ...addressOf(unit ?? '', pick('pair') ?? '', isApart || half + role !== ''),
        half,
        role,
        message,
        reading: parameter === undefined || value === undefined ? undefined : { parameter, value },
        fields,
      };
    },
  };
}

type Pick = (key: FieldKey) => string | undefined;

const clockAlone = /^\s*\d{1,2}:\d{2}/;

/** What the fields of a line say of its time: one field, or a date and a clock. */
export function stampIn(pick: Pick, leading?: number): string | number | undefined {
  if (leading !== undefined) return leading;
  const [time, date, clock] = [pick('time'), pick('date'), pick('clock')];
  if (time !== undefined && !(date !== undefined && clockAlone.test(time))) return time;
  const ofDay = clock ?? time;
  return date === undefined || ofDay === undefined ? (date ?? time) : `${date.trim()} ${ofDay.trim()}`;
}

/** A pair alone is read as a unit, which may say its half; beside halves or roles it is a name. */
export function addressOf(
  unit: string,
  pair: string,
  isApart: boolean,
): { readonly unit: string; readonly pair?: string } {
  if (pair === '') return { unit };
  return isApart ? { unit, pair } : { unit: pair };
}
