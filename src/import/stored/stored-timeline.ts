import { changesFrom } from '../../change-columns.ts';
import type { Change, GaugeBin, ImportedFile, Input, Notice, Subject } from '../../vocabulary.ts';
import { eachChunk } from '../bytes/damaged-end.ts';
import type { FileSource, NewHasher } from '../bytes/file-source.ts';
import { InputError } from '../bytes/input-error.ts';
import { checkMemoryBudget, type MemoryBudget } from '../changes/memory-budget.ts';
import { figuresHead } from './figures-schema.ts';
import { figuresForTimeline, foreignTimeline, isParquet, magicBytes } from './parquet-file.ts';
import { parsedJson, readSealed } from './sealed-file.ts';
import { asStored, storedFiles, storedRows } from './stored-timeline-schema.ts';

/** The files that a stored timeline was made from, and what could not be read when it was. */
export interface StoredTimeline {
  readonly files: readonly ImportedFile[];
  readonly failures: readonly InputError[];
  /** What was said of the phrasebook that the logs were read with. */
  readonly phrasebookNotices: readonly Notice[];
}

/** How to read it back. */
export interface StoredOptions extends MemoryBudget {
  readonly sha256: NewHasher;
  readonly onProgress?: (bytes: number, rows: number) => void;
}

/** True if the file is a timeline as `timeline --format parquet` writes it, or any other Parquet file. */
export async function isStoredTimeline(source: FileSource): Promise<boolean> {
  let head: readonly number[] = [];
  await eachChunk(source, (chunk) => {
    head = [...head, ...chunk.subarray(0, magicBytes)].slice(0, magicBytes);
    return head.length < magicBytes;
  });
  return isParquet(Uint8Array.from(head));
}

/**
 * Reads the files back that a stored timeline was made from, each with its own name, size and SHA-256; their container is
 * the timeline. Throws InputError if the file is damaged, too large, or another kind of Parquet file.
 */
export async function readStoredTimeline(
  source: FileSource,
  options: StoredOptions,
): Promise<StoredTimeline> {
  const { name } = source;
  const { parquet, text, sha256 } = await readSealed(source, options, 'timeline');
  if (text === null) throw foreignTimeline(name);
  const head = parsedJson(text);
  if (asStored(figuresHead, head) !== null) throw figuresForTimeline(name);
  const stored = asStored(storedFiles, head);
  const rows = asStored(storedRows, await parquet.rows());
  if (stored === null || rows === null) throw foreignTimeline(name);
  checkMemoryBudget(name, rows.length, options);
  const container = { file: name, sha256 };
  const files = filled(name, stored.files, rows);
  return {
    files: files.map((file) => ({
      ...file,
      input: contained(file.input, container),
    })),
    phrasebookNotices: stored.phrasebookNotices,
    failures: stored.failures.map(
      ({ where, what, fix, kind, setting }) => new InputError(where, what, fix, kind, setting),
    ),
  };
}

function contained(input: Input, container: NonNullable<Input['container']>): Input {
  const { file, sha256, bytes, ...rest } = input;
  return { file, sha256, bytes, container, ...rest };
}

type Rows = NonNullable<ReturnType<typeof asStored<typeof storedRows>>>;
type Files = NonNullable<ReturnType<typeof asStored<typeof storedFiles>>>['files'];
type ChangeRow = Exclude<Rows[number], { readonly kind: 'gauge' }>;

/** The files with the changes and gauge bins of the rows in their places. */
function filled(name: string, files: Files, rows: Rows): readonly ImportedFile[] {
  const changes = files.map((): Change[] => []);
  const bins = files.map((file) => file.gauges.map((): GaugeBin[] => []));
  for (const row of rows) {
    if (row.kind === 'gauge') {
      const { time: from, count, minimum, mean, maximum } = row;
      placed(name, placed(name, bins, row.source), row.stream).push({ from, count, minimum, mean, maximum });
    } else {
      placed(name, placed(name, files, row.source).streams, row.stream);
      placed(name, changes, row.source).push(toChange(row));
    }
  }
  return files.map((file, place) => ({
    ...file,
    changes: changesFrom(changes[place] ?? []),
    gauges: file.gauges.map((series, at) => ({ ...series, bins: bins[place]?.[at] ?? [] })),
  }));
}

/** Throws InputError where a row names a place that the metadata do not have. */
function placed<T>(name: string, list: readonly T[], place: number): T {
  const found = list[place];
  if (found === undefined) throw foreignTimeline(name);
  return found;
}

function toChange(row: ChangeRow): Change {
  const {
    kind,
    pair,
    half,
    role,
    unit_site,
    signal,
    value,
    before,
    time,
    earliest,
    stream,
    line,
    text,
    count,
  } = row;
  const subject: Subject = { pair, half, role, ...(unit_site === null ? {} : { site: unit_site }) };
  return { kind, time, earliest, subject, signal, value, before, stream, line, text, count };
}
