import { changesFrom } from '../change-columns.ts';
import { allChanges, eachChange } from '../changes.ts';
import type { Change, ImportedFile, Interval, Stream } from '../vocabulary.ts';
import { spacingsAfter } from './polled-spans.ts';

/** What two files tell where both were written: the same; not the same; neither tells anything there. */
export type Common = 'same' | 'different' | 'silent';

/** Compares files where both were written, by what each tells of any pair. What was asked once is kept. */
export type LogComparison = (one: string, other: string) => Common;

/** What a file tells from its first row to its last, by its own stamps and words. */
export interface Telling extends Interval {
  readonly told: readonly { readonly time: number; readonly key: string }[];
  /** What it read first, or first again: that may be a change, which an earlier file tells of. */
  readonly first: ReadonlySet<string>;
}

/** A comparison of files, which are named; each of them is read when it is first asked for. */
export function logComparison(files: readonly ImportedFile[]): LogComparison {
  const byName = new Map(files.map((file) => [file.input.file, file]));
  const tellings = new Map<string, Telling>();
  const answers = new Map<string, Common>();
  const tellingOf = (name: string): Telling => {
    const file = byName.get(name);
    const telling = tellings.get(name) ?? (file === undefined ? noTelling : tellingIn(file));
    tellings.set(name, telling);
    return telling;
  };
  return (one, other) => {
    const key = `${one}\n${other}`;
    const answer = answers.get(key) ?? compared(tellingOf(one), tellingOf(other));
    answers.set(key, answer);
    return answer;
  };
}

/**
 * The files, given in the order of their begins, put together to the logs that they are parts of: exports of one log that overlap tell
 * the same, to the letter, wherever both were written, or nothing there, and bear one name but for its numbers; so do those
 * of which one begins where the other ends.
 */
export function logsOf(
  files: readonly ImportedFile[],
): readonly (readonly [ImportedFile, ...ImportedFile[]])[] {
  const logs: { readonly files: [ImportedFile, ...ImportedFile[]]; readonly parts: Part[] }[] = [];
  const tellers = new Map<string, readonly Part[]>();
  for (const file of files) {
    const part = { name: logName(file.input.file), streams: file.streams, ...tellingIn(file) };
    const keys = [...part.told.map(({ key }) => key), ...part.first];
    const known = new Set(keys.flatMap((key) => tellers.get(key) ?? []));
    const goesOn = (one: Part): boolean =>
      known.has(one)
        ? compared(one, part) === 'same'
        : one.name === part.name &&
          (follows(part, one) || (overlap(one, part) && areSilent(one, part))) &&
          areReadAlike(one, part);
    // What goes on with several brings them together.
    const [log, ...others] = logs.filter(({ parts }) => parts.some(goesOn));
    if (log === undefined) logs.push({ files: [file], parts: [part] });
    else {
      log.files.push(...others.flatMap(({ files }) => files), file);
      log.parts.push(...others.flatMap(({ parts }) => parts), part);
      for (const other of others) logs.splice(logs.indexOf(other), 1);
    }
    for (const key of keys) tellers.set(key, [part, ...(tellers.get(key) ?? [])]);
  }
  return logs.map((log) => log.files);
}

/** What a file tells, and the name of the log that it may be of. */
interface Part extends Telling {
  readonly name: string;
  readonly streams: readonly Stream[];
}

/** So much apart may be what one poll was spaced by in two files. Chosen here. */
const mostApart = 1.1;

/** Two polls of one unit, each at its own pace, are no parts of one. */
function areReadAlike({ streams }: Part, { streams: others }: Part): boolean {
  return streams.every(({ kind, unit, spacing }) =>
    others.every(
      (other) =>
        kind !== 'reading' ||
        other.kind !== kind ||
        other.unit !== unit ||
        Math.max(spacing, other.spacing) <= mostApart * Math.min(spacing, other.spacing),
    ),
  );
}

/**
 * True if a part begins right where the other ends: a poll before the other, of the same units, would count as no longer read, a journal
 * no longer after it than so many of its entries are apart.
 */
function follows(part: Part, one: Part): boolean {
  const gap = part.from - one.to;
  const isOf = (kind: Stream['kind']): boolean =>
    [...part.streams, ...one.streams].every((stream) => stream.kind === kind);
  if (gap <= 0) return false;
  if (isOf('entry')) return gap <= spacingsAfter * Math.max(entrySpacing(part), entrySpacing(one));
  const units = new Set(one.streams.map(({ unit }) => unit));
  const spacing = part.streams.reduce((most, s) => Math.max(most, s.spacing), 0);
  return (
    isOf('reading') && gap <= spacingsAfter * spacing && part.streams.every(({ unit }) => units.has(unit))
  );
}

/** How far the entries of a journal are apart, in the mean. */
function entrySpacing({ from, to, told }: Part): number {
  return (to - from) / Math.max(1, told.length);
}

/** The name of a file without numbers, signs, and what it is packed in: days and turns of one log have one. */
export function logName(file: string): string {
  return file
    .replaceAll(/\.(?:gz|zip)\b/gi, '')
    .replaceAll(/[^\p{L}]+/gu, '')
    .toLowerCase();
}

const noTelling: Telling = { from: 0, to: 0, told: [], first: new Set() };

function tellingIn({ input, changes }: ImportedFile): Telling {
  const all = allChanges(changes).map((change) => ({
    time: change.time,
    key: keyOf(change),
    isTold: isTold(change),
  }));
  return {
    from: input.from ?? 0,
    to: input.to ?? 0,
    told: all.filter((one) => one.isTold),
    first: new Set(all.flatMap((one) => (one.isTold ? [] : [one.key]))),
  };
}

/** A first reading says how things are: each part has its own. */
function isTold({ kind, before, value }: Change): boolean {
  return kind === 'entry' || (kind === 'reading' && before !== null && before !== value);
}

/** A change by its own stamp and words. */
function keyOf({ time, text, signal }: Change): string {
  return [time, signal, text].join('\n');
}

/** The same only if they share a change, and each tells all that the other does between the last of their begins and the first of their ends. */
export function compared(a: Telling, b: Telling): Common {
  const { from, to } = commonOf(a, b);
  const within = ({ told }: Telling): ReadonlyMap<string, number> =>
    new Map(told.flatMap(({ time, key }) => (time >= from && time <= to ? [[key, time] as const] : [])));
  const [one, other] = [within(a), within(b)];
  const isKnownTo = (known: ReadonlyMap<string, number>, { first }: Telling, key: string): boolean =>
    known.has(key) || first.has(key);
  const isShared =
    [...one.keys()].some((key) => isKnownTo(other, b, key)) ||
    [...other.keys()].some((key) => a.first.has(key));
  if (!isShared) return areSilent(a, b) ? 'silent' : 'different';
  // At its very ends an export may begin or stop in the middle of a stamp.
  const isInside = (time: number): boolean => time > from && time < to;
  const isSame =
    [...one].every(([key, time]) => isKnownTo(other, b, key) || !isInside(time)) &&
    [...other].every(([key, time]) => isKnownTo(one, a, key) || !isInside(time));
  return isSame ? 'same' : 'different';
}

/** True if neither tells anything where both were written; most that do tell it early. */
function areSilent(a: Telling, b: Telling): boolean {
  const { from, to } = commonOf(a, b);
  const tells = ({ told }: Telling): boolean => told.some(({ time }) => time >= from && time <= to);
  return !tells(a) && !tells(b);
}

function overlap(a: Interval, b: Interval): boolean {
  return a.from <= b.to && b.from <= a.to;
}

/** From the later begin to the earlier end: where both were written, if that is not before the other. */
function commonOf(a: Interval, b: Interval): Interval {
  return { from: Math.max(a.from, b.from), to: Math.min(a.to, b.to) };
}

/** The parts of a log as one file, named as the first: what two parts tell counts once. */
export function asOneFile([first, ...rest]: readonly [ImportedFile, ...ImportedFile[]]): ImportedFile {
  if (rest.length === 0) return first;
  const parts = [first, ...rest];
  const stamps = parts.flatMap(({ input: { from, to } }) => (from === null || to === null ? [] : [from, to]));
  const changes = new Map<string, Change>();
  let streams = 0;
  for (const part of parts) {
    for (const change of eachChange(part.changes)) {
      const key = `${keyOf(change)}\n${isTold(change)}`;
      if (!changes.has(key)) changes.set(key, { ...change, stream: change.stream + streams });
    }
    streams += part.streams.length;
  }
  return {
    ...first,
    input: { ...first.input, from: Math.min(...stamps), to: Math.max(...stamps) },
    streams: parts.flatMap((part) => part.streams),
    changes: changesFrom(changes.values()),
  };
}
