import { changesFrom } from '../change-columns.ts';
import { allChanges, eachChange } from '../changes.ts';
import type { Change, ImportedFile } from '../vocabulary.ts';

/**
 * The files put together to the logs that they are parts of, in the order of their first files: exports of one log that overlap tell
 * the same, to the letter, wherever both were written. A file that shares no change with another is a log by itself.
 */
export function logsOf(
  files: readonly ImportedFile[],
): readonly (readonly [ImportedFile, ...ImportedFile[]])[] {
  const logs: [ImportedFile, ...ImportedFile[]][] = [];
  const tellers = new Map<string, readonly ImportedFile[]>();
  for (const file of files) {
    const keys = allChanges(file.changes).filter(isTold).map(keyOf);
    const known = new Set(keys.flatMap((key) => tellers.get(key) ?? []));
    const log = logs.find((l) => l.some((part) => known.has(part) && saySame(part, file)));
    if (log === undefined) logs.push([file]);
    else log.push(file);
    for (const key of keys) tellers.set(key, [file, ...(tellers.get(key) ?? [])]);
  }
  return logs;
}

/** A first reading says how things are: each part has its own. */
function isTold({ kind, before, value }: Change): boolean {
  return kind === 'entry' || (kind === 'reading' && before !== null && before !== value);
}

/** A change by its own stamp and words. */
function keyOf({ time, text, signal }: Change): string {
  return [time, signal, text].join('\n');
}

/** True if each tells all that the other does between the last of their begins and the first of their ends. */
function saySame(a: ImportedFile, b: ImportedFile): boolean {
  const from = Math.max(a.input.from ?? 0, b.input.from ?? 0);
  const to = Math.min(a.input.to ?? 0, b.input.to ?? 0);
  const [ofOne, ofOther] = [allChanges(a.changes).filter(isTold), allChanges(b.changes).filter(isTold)];
  const [one, other] = [new Set(ofOne.map(keyOf)), new Set(ofOther.map(keyOf))];
  const isIn = (told: ReadonlySet<string>, change: Change): boolean =>
    // At its very ends an export may begin or stop in the middle of a stamp.
    change.time <= from || change.time >= to || told.has(keyOf(change));
  return ofOne.every((c) => isIn(other, c)) && ofOther.every((c) => isIn(one, c));
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
