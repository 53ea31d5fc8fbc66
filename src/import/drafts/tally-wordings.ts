import type { SeenWording, Understanding } from '../../vocabulary.ts';
import { detached } from '../bytes/decode.ts';
import { generalKey, longestWording, partsOf, wordingPattern } from './general-wording.ts';
import { isOfRedundancy } from './of-redundancy.ts';
import { isTextSignal, type Understander } from './understanding.ts';

/** Counts what the rows of a file say, whether it is understood or not. Memory stays bounded. */
export interface WordingTally {
  unit(name: string, row: TalliedRow): void;
  reading(name: string, value: string, row: TalliedRow): void;
  message(text: string, row: TalliedRow): void;
  /** What a technician wrote. */
  note(text: string, row: TalliedRow): void;
  /** The message that was taken last goes on in the next line of its record. */
  goOn(): void;
  /** Each wording once; in no order. */
  result(file: string, known: Understander): readonly SeenWording[];
}

export interface TalliedRow {
  readonly line: number;
  readonly unit: string;
  text(): string;
}

interface Counted {
  count: number;
  readonly line: number;
  readonly row: string;
  readonly unit: string;
  readonly name: string;
  readonly value: string | null;
}

interface CountedMessage extends Counted {
  /** Its ways by the numbers in it, as long as they are few. */
  readonly ways: Map<string, Counted>;
  hasMore: boolean;
  goesOn: boolean;
  readonly isNote: boolean;
}

const most = 5_000;
/** Values of a parameter that are told apart: a state has fewer. Chosen here. */
const mostValues = 40;
const mostWays = 6;
const mostRemembered = 5_000;
const longestText = 500;

export function wordingTally(): WordingTally {
  const units = new Map<string, Counted>();
  const parameters = new Map<string, Counted>();
  const values = new Map<string, Map<string, Counted>>();
  const messages = new Map<string, CountedMessage>();
  const remembered = new Map<string, CountedMessage>();
  let last: CountedMessage | undefined;
  const addMessage = (text: string, row: TalliedRow, isNote: boolean): void => {
    const known = remembered.get(`${isNote} ${text}`);
    const found = known ?? messageNamed(messages, text, row, isNote);
    last = found;
    if (found === undefined) return;
    if (known === undefined && remembered.size < mostRemembered)
      remembered.set(detached(`${isNote} ${text}`), found);
    found.count += 1;
    const way = wayOf(text);
    if (!found.ways.has(way) && found.ways.size >= mostWays) found.hasMore = true;
    count(found.ways, mostWays, way, text, null, row);
  };
  return {
    unit: (name, row) => count(units, most, name, name, null, row),
    reading(name, value, row) {
      if (value === '') return;
      count(parameters, most, name, name, null, row);
      const own = values.get(name) ?? new Map<string, Counted>();
      if (own.size === 0 && values.size < most) values.set(detached(name), own);
      count(own, mostValues, value, name, value, row);
    },
    message: (text, row) => addMessage(text, row, false),
    note: (text, row) => addMessage(text, row, true),
    goOn() {
      if (last !== undefined) last.goesOn = true;
    },
    result: (file, known) => [
      ...[...units.values()].map((u) => seen(file, 'unit', u, known.unit(u.name))),
      ...[...parameters.values()].map((p) => ({
        ...seen(file, 'parameter', p, known.parameter(p.name)),
        different: values.get(p.name)?.size ?? 0,
      })),
      ...[...values.values()].flatMap((own) => valuesOf(file, own, known)),
      ...[...messages.values()].flatMap((m) => messagesOf(file, m, known)),
    ],
  };
}

function count(
  into: Map<string, Counted>,
  limit: number,
  key: string,
  name: string,
  value: string | null,
  row: TalliedRow,
): void {
  const known = into.get(key);
  if (known !== undefined) known.count += 1;
  else if (into.size < limit) into.set(detached(key), counted(name, value, row));
}

function counted(name: string, value: string | null, row: TalliedRow): Counted {
  const text = detached(row.text().slice(0, longestText));
  return {
    count: 1,
    line: row.line,
    row: text,
    unit: detached(row.unit),
    name: detached(name),
    value: value === null ? null : detached(value),
  };
}

function messageNamed(
  messages: Map<string, CountedMessage>,
  text: string,
  row: TalliedRow,
  isNote: boolean,
): CountedMessage | undefined {
  const key = `${isNote} ${generalKey(partsOf(text))}`;
  const known = messages.get(key);
  if (known !== undefined || messages.size >= most) return known;
  const made = {
    ...counted(text.slice(0, longestWording + 1), null, row),
    count: 0,
    ways: new Map(),
    hasMore: false,
    goesOn: false,
    isNote,
  };
  messages.set(detached(key), made);
  return made;
}

function wayOf(text: string): string {
  return partsOf(text)
    .filter((part) => part.kind !== 'words')
    .map((part) => part.text)
    .join('\n');
}

function seen(
  file: string,
  kind: SeenWording['kind'],
  { name, value, count: times, line, row, unit }: Counted,
  understood: Understanding | null,
  pattern = '',
): SeenWording {
  const text = value === null ? name : `${name} = ${value}`;
  const first = { file, line, text: row };
  return {
    kind,
    name,
    value,
    pattern,
    count: times,
    first,
    unit,
    isOfRedundancy: isOfRedundancy(text),
    understood,
  };
}

/** The values of a parameter; none where it takes so many that they are numbers or texts. */
function valuesOf(
  file: string,
  own: ReadonlyMap<string, Counted>,
  known: Understander,
): readonly SeenWording[] {
  const all = [...own.values()];
  const isNumber = all.length > 2 && all.every(({ value }) => /^[-+]?\d+(?:[.,]\d+)?$/.test(value ?? ''));
  if (own.size >= mostValues || (isNumber && all.length > 4)) return [];
  return all.map((v) => seen(file, 'value', v, known.value(v.name, v.value ?? '')));
}

/** One wording, or each way of it where the numbers in it are few, or say what it means: "link 1 down", "link 2 down". */
function messagesOf(file: string, message: CountedMessage, known: Understander): readonly SeenWording[] {
  const ways = [...message.ways.values()];
  const meanings = ways.map((way) => (message.isNote ? known.note(way.name) : known.message(way.name)));
  const isOne = new Set(meanings.map(meaningKey)).size <= 1;
  const wording = (m: Counted, understood: Understanding | null, isLiteral: boolean): SeenWording =>
    seen(
      file,
      'message',
      m,
      understood,
      patternFor(m.name, understood, { isLiteral, goesOn: message.goesOn }),
    );
  const isLiteral = isOne ? isFew(message) : ways.length > 1;
  if (!isLiteral) return [wording(message, meanings[0] ?? null, false)];
  return ways.map((way, i) => wording(way, meanings[i] ?? null, true));
}

function meaningKey(found: Understanding | null): string {
  if (found === null || found.signal === null) return found?.by ?? '';
  const isText = isTextSignal(found.signal) || found.signal === 'fault' || found.signal === 'note';
  return `${found.signal} ${isText ? '' : found.value}`;
}

/** Few numbers, all short and none a quantity, that come again and again name things. */
function isFew({ ways, hasMore, count: times, name }: CountedMessage): boolean {
  if (hasMore || ways.size > 4 || times < 2 * ways.size) return false;
  const changing = partsOf(name).filter(({ kind }) => kind !== 'words');
  return (
    changing.every(({ kind, text }) => kind === 'number' && text.length <= 2) &&
    !/\d\s?(?:%|[km]?s\b|min\b|ms\b|[kM]?B\b)/.test(name)
  );
}

function patternFor(
  name: string,
  understood: Understanding | null,
  how: { readonly isLiteral: boolean; readonly goesOn: boolean },
): string {
  const isText = understood !== null && understood.signal !== null && isTextSignal(understood.signal);
  return wordingPattern(name, { ...how, value: isText ? understood.value : null });
}
