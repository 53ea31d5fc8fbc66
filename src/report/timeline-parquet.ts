import { allChanges } from '../changes.ts';
import type {
  Change,
  FailureKind,
  GaugeBin,
  GaugeSeries,
  ImportedFile,
  Notice,
  Setting,
} from '../vocabulary.ts';
import { type Column, instant, number, parquetTable, text } from './parquet-file.ts';

/** What could not be read, so that the timeline tells of the loss as the logs would. */
export interface StoredFailure {
  readonly where: string;
  readonly what: string;
  readonly fix: string;
  readonly kind: FailureKind;
  readonly setting?: Setting | undefined;
}

/** One row: a change, or a five-minute bin of a gauge (`kind` is then `gauge`, `time` its begin). */
interface Row {
  readonly source: number;
  readonly stream: number;
  readonly file: ImportedFile;
  readonly unit: string | null;
  readonly change: Change | null;
  readonly series: GaugeSeries | null;
  readonly bin: GaugeBin | null;
}

/**
 * What the files say as a Parquet file, one change or gauge bin a row, instants in milliseconds UTC. The rest of each file
 * (its input, streams, notices) is JSON in the metadata, so that reading it gives the same files as the logs did. Equal
 * files give equal bytes. `digest` gives the SHA-256 in lower-case hexadecimal. Source: Apache Parquet format 2.11 (2025).
 */
export function timelineParquet(
  files: readonly ImportedFile[],
  failures: readonly StoredFailure[],
  digest: (bytes: Uint8Array) => string,
  phrasebookNotices: readonly Notice[] = [],
): Uint8Array {
  const rows = files.flatMap(rowsOf);
  const stored = {
    schema: 'steadypair/stored-timeline/1',
    files: files.map(({ changes: _changes, gauges, ...rest }) => ({
      ...rest,
      gauges: gauges.map(({ subject, gauge }) => ({ subject, gauge })),
    })),
    // Not said of most: files that hold no other kind stay as they were, byte for byte.
    failures: failures.map(({ where, what, fix, kind, setting }) => ({
      where,
      what,
      fix,
      ...(kind === 'unreadable' ? {} : { kind }),
      ...(setting === undefined ? {} : { setting }),
    })),
    ...(phrasebookNotices.length === 0 ? {} : { phrasebookNotices }),
  };
  const table = parquetTable(columns, JSON.stringify(stored), digest);
  table.add(rows);
  return table.whole();
}

function rowsOf(file: ImportedFile, source: number): readonly Row[] {
  const changes = allChanges(file.changes).map((change) => ({
    source,
    stream: change.stream,
    file,
    unit: file.streams[change.stream]?.unit ?? null,
    change,
    series: null,
    bin: null,
  }));
  const bins = file.gauges.flatMap((series, stream) =>
    series.bins.map((bin) => ({ source, stream, file, unit: null, change: null, series, bin })),
  );
  return [...changes, ...bins];
}

const columns: readonly Column<Row>[] = [
  text('site', (row) => subjectOf(row)?.site ?? row.file.site),
  text('pair', (row) => subjectOf(row)?.pair ?? null),
  text('half', (row) => subjectOf(row)?.half ?? null),
  text('role', (row) => subjectOf(row)?.role ?? null),
  text('signal', ({ change, series }) => change?.signal ?? series?.gauge ?? null),
  text('value', ({ change }) => change?.value ?? null),
  text('before', ({ change }) => change?.before ?? null),
  text('kind', ({ change }) => change?.kind ?? 'gauge'),
  instant('time', ({ change, bin }) => change?.time ?? bin?.from ?? null),
  instant('earliest', ({ change }) => change?.earliest ?? null),
  text('file', ({ file }) => file.input.file),
  number('line', 'INT32', ({ change }) => change?.line ?? null),
  text('text', ({ change }) => change?.text ?? null),
  number('count', 'INT32', ({ change, bin }) => change?.count ?? bin?.count ?? null),
  text('unit', ({ unit }) => unit),
  text('unit_site', (row) => subjectOf(row)?.site ?? null),
  number('minimum', 'DOUBLE', ({ bin }) => bin?.minimum ?? null),
  number('mean', 'DOUBLE', ({ bin }) => bin?.mean ?? null),
  number('maximum', 'DOUBLE', ({ bin }) => bin?.maximum ?? null),
  number('source', 'INT32', ({ source }) => source),
  number('stream', 'INT32', ({ stream }) => stream),
];

function subjectOf({ change, series }: Row): Change['subject'] | undefined {
  return change?.subject ?? series?.subject;
}
