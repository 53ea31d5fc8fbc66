import { ByteWriter, ParquetWriter, schemaFromColumnData } from 'hyparquet-writer';

/** A column of a table whose rows are of one kind: its name, its type, and what a row has there. */
export interface Column<Row> {
  readonly name: string;
  readonly type: 'STRING' | 'INT32' | 'DOUBLE' | 'TIMESTAMP';
  of(row: Row): string | number | Date | null;
}

/** A Parquet file that is written a group of rows at a time. */
export interface ParquetTable<Row> {
  add(rows: readonly Row[], groupRows?: number): void;
  /** All of it, with its checksum; nothing can be added any more. */
  whole(): Uint8Array;
}

/**
 * Begins a Parquet file with some columns and a text of its metadata. Equal rows give equal bytes. `digest` gives the SHA-256 in
 * lower-case hexadecimal: it stands in the file, so that damage shows. Source: Apache Parquet format 2.11 (2025).
 */
export function parquetTable<Row>(
  columns: readonly Column<Row>[],
  text: string,
  digest: (bytes: Uint8Array) => string,
): ParquetTable<Row> {
  const writer = new ByteWriter();
  const table = new ParquetWriter({
    writer,
    schema: schemaFromColumnData({ columnData: columns.map(({ name, type }) => ({ name, type, data: [] })) }),
    kvMetadata: [
      { key: 'steadypair', value: text },
      { key: 'seal', value: blankChecksum },
    ],
    createdBy: 'steadypair',
  });
  return {
    add(rows, groupRows) {
      const columnData = columns.map(({ name, of }) => ({ name, data: rows.map(of) }));
      void table.write({ columnData, ...(groupRows === undefined ? {} : { rowGroupSize: groupRows }) });
    },
    whole() {
      void table.finish();
      return withChecksum(writer.getBytes(), digest);
    },
  };
}

/** A column of texts. */
export function text<Row>(name: string, of: (row: Row) => string | null): Column<Row> {
  return { name, type: 'STRING', of };
}

/** A column of numbers. */
export function number<Row>(
  name: string,
  type: 'INT32' | 'DOUBLE',
  of: (row: Row) => number | null,
): Column<Row> {
  return { name, type, of };
}

/** A column of instants, in milliseconds UTC. */
export function instant<Row>(name: string, of: (row: Row) => number | null): Column<Row> {
  const date = (row: Row): Date | null => {
    const time = of(row);
    return time === null ? null : new Date(time);
  };
  return { name, type: 'TIMESTAMP', of: date };
}

const mark = 'steadypair/sha256/';
const blankChecksum = `${mark}${'0'.repeat(64)}`;

/** Puts the digest of the bytes in place of the zeros, so that damage shows. The checksum is the last text but one. */
function withChecksum(bytes: Uint8Array, digest: (bytes: Uint8Array) => string): Uint8Array {
  const begin = Math.max(0, bytes.length - 1024);
  const place = new TextDecoder('windows-1252').decode(bytes.subarray(begin)).lastIndexOf(blankChecksum);
  if (place < 0) throw new RangeError('The checksum is not where a Parquet file ends.');
  const whole = bytes.slice();
  whole.set(new TextEncoder().encode(digest(bytes)), begin + place + mark.length);
  return whole;
}
