import type { Change, Changes, Subject, Topic } from './vocabulary.ts';

/** Columns that grow: changes are added at their end, and what was taken of them before stays as it was. */
export interface ChangeColumns {
  /** How many changes there are. */
  readonly length: number;
  /** How many bytes their rows take. */
  readonly textBytes: number;
  /** Adds a change whose row is added to the text by `addText`. */
  push(change: Omit<Change, 'line' | 'text' | 'count'>, line: number, addText: (text: RowText) => void): void;
  /** The change at a place stands for one more line; false where there is none. */
  countAgain(place: number): boolean;
  /** The changes so far; more may be added to the columns, and not to these. */
  soFar(): Changes;
}

/** Takes the text of one row. */
export interface RowText {
  add(text: string): void;
  /** Bytes of a chunk that are ASCII alone; false, and nothing is taken, where they are not. */
  addAscii(bytes: Uint8Array, from: number, to: number): boolean;
}

/** No change yet. */
export function changeColumns(): ChangeColumns {
  const topics = topicNumbers();
  const words = wordNumbers();
  const counts = new Map<number, number>();
  const text = rowTexts();
  const columns = { ...noColumns(0) };
  let length = 0;
  return {
    get length() {
      return length;
    },
    get textBytes() {
      return text.length();
    },
    push(change, line, addText) {
      if (length === columns.time.length) Object.assign(columns, grown(columns));
      addText(text);
      columns.topic[length] = topics.numberOf(change);
      columns.value[length] = words.numberOf(change.value);
      columns.before[length] = words.numberOf(change.before);
      columns.time[length] = change.time;
      columns.earliest[length] = change.earliest;
      columns.line[length] = line;
      columns.textEnd[length] = text.length();
      length += 1;
    },
    countAgain(place) {
      if (place >= length) return false;
      counts.set(place, (counts.get(place) ?? 1) + 1);
      return true;
    },
    soFar: () => ({
      length,
      topics: topics.all.slice(),
      words: words.all,
      topic: columns.topic.subarray(0, length),
      value: columns.value.subarray(0, length),
      before: columns.before.subarray(0, length),
      time: columns.time.subarray(0, length),
      earliest: columns.earliest.subarray(0, length),
      line: columns.line.subarray(0, length),
      textEnd: columns.textEnd.subarray(0, length),
      text: text.bytes().subarray(0, text.length()),
      counts: new Map(counts),
    }),
  };
}

/** Changes in columns. */
export function changesFrom(list: Iterable<Change>): Changes {
  const columns = changeColumns();
  for (const change of list) {
    columns.push(change, change.line, (text) => text.add(change.text));
    for (let count = 1; count < change.count; count += 1) columns.countAgain(columns.length - 1);
  }
  return columns.soFar();
}

const encoder = new TextEncoder();

type Columns = Pick<Changes, 'topic' | 'value' | 'before' | 'time' | 'earliest' | 'line' | 'textEnd'>;

function noColumns(size: number): Columns {
  return {
    topic: new Uint32Array(size),
    value: new Uint32Array(size),
    before: new Uint32Array(size),
    time: new Float64Array(size),
    earliest: new Float64Array(size),
    line: new Int32Array(size),
    textEnd: new Uint32Array(size),
  };
}

/** Twice the room, in memory of its own: what was taken of the columns before keeps the old. What is not written yet takes no memory. */
function grown(columns: Columns): Columns {
  const larger = noColumns(roomFor(columns.time.length + 1));
  larger.topic.set(columns.topic);
  larger.value.set(columns.value);
  larger.before.set(columns.before);
  larger.time.set(columns.time);
  larger.earliest.set(columns.earliest);
  larger.line.set(columns.line);
  larger.textEnd.set(columns.textEnd);
  return larger;
}

const leastRoom = 32;

function roomFor(size: number): number {
  return 2 * size + leastRoom;
}

/** Rows in UTF-8, one after the other. */
function rowTexts(): RowText & { length(): number; bytes(): Uint8Array } {
  let bytes = new Uint8Array(0);
  let length = 0;
  const reserve = (more: number): void => {
    if (length + more <= bytes.length) return;
    const larger = new Uint8Array(roomFor(length + more));
    larger.set(bytes);
    bytes = larger;
  };
  return {
    length: () => length,
    bytes: () => bytes,
    add(text) {
      // No character takes more than three bytes for each of its units.
      reserve(3 * text.length);
      length += encoder.encodeInto(text, bytes.subarray(length)).written;
    },
    addAscii(chunk, from, to) {
      reserve(to - from);
      // In names of its own: what a closure keeps is looked up for every byte.
      const [into, begin] = [bytes, length - from];
      for (let at = from; at < to; at += 1) {
        const byte = chunk[at] ?? 0;
        if (byte > 127) return false;
        into[begin + at] = byte;
      }
      length += to - from;
      return true;
    },
  };
}

/** Words by their numbers; `null` is the first. */
function wordNumbers(): { readonly all: readonly (string | null)[]; numberOf(word: string | null): number } {
  const all: (string | null)[] = [null];
  const numbers = new Map<string, number>();
  return {
    all,
    numberOf(word) {
      if (word === null) return 0;
      const known = numbers.get(word);
      if (known !== undefined) return known;
      const number = all.push(word) - 1;
      numbers.set(word, number);
      return number;
    },
  };
}

/** Topics by their numbers: found by stream first, since a stream tells of few. */
function topicNumbers(): { readonly all: readonly Topic[]; numberOf(topic: Topic): number } {
  const all: Topic[] = [];
  const ofStreams: number[][] = [];
  return {
    all,
    numberOf(wanted) {
      let numbers = ofStreams[wanted.stream];
      if (numbers === undefined) {
        numbers = [];
        ofStreams[wanted.stream] = numbers;
      }
      for (const number of numbers) if (isSame(all[number], wanted)) return number;
      const { kind, subject, signal, stream } = wanted;
      const number = all.push({ kind, subject, signal, stream }) - 1;
      numbers.push(number);
      return number;
    },
  };
}

function isSame(a: Topic | undefined, b: Topic): boolean {
  return a?.signal === b.signal && a.kind === b.kind && isSameSubject(a.subject, b.subject);
}

function isSameSubject(a: Subject, b: Subject): boolean {
  if (a === b) return true;
  const isNamedAlike = a.pair === b.pair && a.half === b.half && a.role === b.role;
  return isNamedAlike && a.site === b.site && a.isOther === b.isOther;
}
