import type { FileSource } from '../pipeline.ts';
import type { Output } from './streams.ts';

export interface Progress {
  onFile(source: FileSource): void;
  onProgress(bytes: number, rows: number): void;
  end(): void;
}

const megabyte = 1_048_576;
const stepBytes = 8 * megabyte;

/** Progress of reading, on one line that is written over; nothing where no person looks. */
export function progressTo(stderr: Output, sources: readonly FileSource[]): Progress {
  const nothing: Progress = { onFile: () => undefined, onProgress: () => undefined, end: () => undefined };
  if (!stderr.isTerminal) return nothing;
  let current: FileSource | undefined;
  let index = 0;
  let next = 0;
  const clear = '\r\u001b[2K';
  return {
    onFile(source) {
      current = source;
      index += 1;
      next = stepBytes;
      stderr.write(`${clear}Reading ${index} of ${sources.length}: ${shown(source.name)}`);
    },
    onProgress(bytes, rows) {
      if (bytes < next || current === undefined) return;
      next = bytes + stepBytes;
      const share =
        current.bytes === null ? '' : `, ${Math.floor((bytes / Math.max(1, current.bytes)) * 100)} %`;
      stderr.write(
        `${clear}Reading ${index} of ${sources.length}: ${shown(current.name)}${share}, ${rows} rows`,
      );
    },
    end() {
      stderr.write(clear);
    },
  };
}

function shown(name: string): string {
  const printable = name.replace(/[^\p{L}\p{N}\p{P}\p{S} ]/gu, '?');
  return printable.length > 60 ? `…${printable.slice(-59)}` : printable;
}
