import { parquetMetadata, parquetReadObjects } from 'hyparquet';
import { InputError } from '../bytes/input-error.ts';
import { damagedTimeline } from './parquet-file.ts';

/** A Parquet file in memory: a text of its key-value metadata, and its rows. */
export interface ParquetFile {
  /** `undefined` without that key. */
  readonly text: string | undefined;
  rows(): Promise<readonly unknown[]>;
  /** How many groups its rows are in. */
  readonly groups: number;
  /** Some columns of the rows of one group. */
  groupRows(group: number, columns: readonly string[]): Promise<readonly unknown[]>;
}

/** What is far beyond a site's months is not read. Chosen here. */
const mostRows = 5_000_000;
const mostPageBytes = 536_870_912;

/** Opens a Parquet file. Throws InputError if it is damaged; where it is read, if it is far too long. */
export function openParquet(name: string, bytes: ArrayBuffer, key: string): ParquetFile {
  const metadata = guarded(name, () => parquetMetadata(bytes));
  const groups = metadata.row_groups.map((group) => ({
    rows: Number(group.num_rows),
    bytes: Number(group.total_byte_size),
  }));
  const read = (from: number, to: number, columns?: readonly string[]): Promise<readonly unknown[]> => {
    const [before, own] = [groups.slice(0, from), groups.slice(from, to)];
    refuseTooMany(name, own);
    const rowStart = before.reduce((sum, { rows }) => sum + rows, 0);
    const rowEnd = rowStart + own.reduce((sum, { rows }) => sum + rows, 0);
    const asked = { file: bytes, metadata, ...(columns === undefined ? {} : { columns: [...columns] }) };
    return parquetReadObjects({ ...asked, rowStart, rowEnd }).catch((error: unknown) => refuse(name, error));
  };
  return {
    text: metadata.key_value_metadata?.find((entry) => entry.key === key)?.value,
    rows: () => read(0, groups.length),
    groups: groups.length,
    groupRows: (group, columns) => read(group, group + 1, columns),
  };
}

/** Throws InputError if groups of rows are far too much to be held at once. */
function refuseTooMany(
  name: string,
  groups: readonly { readonly rows: number; readonly bytes: number }[],
): void {
  const rows = groups.reduce((sum, group) => sum + group.rows, 0);
  const unpacked = groups.reduce((sum, group) => sum + group.bytes, 0);
  if (rows > mostRows || unpacked > mostPageBytes)
    throw new InputError(
      name,
      `it contains more than ${mostRows} rows or 512 MiB.`,
      'Write one for each month.',
    );
}

function guarded<T>(name: string, read: () => T): T {
  try {
    return read();
  } catch (error) {
    return refuse(name, error);
  }
}

/** Whatever stops the reader of the format lies in the bytes: they are all that it is given. */
function refuse(name: string, error: unknown): never {
  if (!(error instanceof Error)) throw error;
  throw damagedTimeline(name);
}
