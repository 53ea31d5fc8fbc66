import { parquetMetadata, parquetReadObjects } from 'hyparquet';
import { InputError } from '../bytes/input-error.ts';
import { damagedTimeline } from './parquet-file.ts';

/** A Parquet file in memory: a text of its key-value metadata, and its rows. */
export interface ParquetFile {
  /** `undefined` without that key. */
  readonly text: string | undefined;
  rows(): Promise<readonly unknown[]>;
}

/** A site's months are kilobytes; what is far beyond that is no timeline. Chosen here. */
const mostRows = 5_000_000;
const mostPageBytes = 536_870_912;

/** Opens a Parquet file. Throws InputError if it is damaged, or holds a text under `key` in its metadata and is far too long. */
export function openParquet(name: string, bytes: ArrayBuffer, key: string): ParquetFile {
  const metadata = guarded(name, () => parquetMetadata(bytes));
  const text = metadata.key_value_metadata?.find((entry) => entry.key === key)?.value;
  const unpacked = metadata.row_groups.reduce((sum, group) => sum + Number(group.total_byte_size), 0);
  // How long one of another writer is matters to nobody.
  if (text !== undefined && (metadata.num_rows > mostRows || unpacked > mostPageBytes))
    throw new InputError(
      name,
      `it contains more than ${mostRows} rows or 512 MiB.`,
      'Write one for each month.',
    );
  return {
    text,
    rows: () => parquetReadObjects({ file: bytes, metadata }).catch((error: unknown) => refuse(name, error)),
  };
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
