import { fstatSync, writeSync } from 'node:fs';
import { identityOf } from './identity.ts';
import { OutputRefused } from './output-refused.ts';
import type { Output, Screen, Streams } from './streams.ts';

type Stream = NodeJS.WriteStream & { readonly fd: number };

/** Where this process writes, and whether all of it could be written. */
export interface ProcessOutputs extends Streams {
  isWhole(): boolean;
}

/**
 * The outputs of this process. What a file or a device refuses of stdout is thrown as OutputRefused; what a pipe or a terminal refuses
 * later is told on stderr. There is nobody to tell what stderr refuses.
 */
export function processOutputs(stdout: Stream, stderr: Stream): ProcessOutputs {
  const errors = outputOf(stderr, () => undefined);
  let isWhole = true;
  stdout.on('error', (error: Error & { readonly code?: string }) => {
    // A reader that closes early, as `head` does, is no fault.
    if (error.code === 'EPIPE' || !isWhole) return;
    isWhole = false;
    void import('./tell-error.ts').then(({ tellError }) =>
      tellError(new OutputRefused(error), [], { stderr: errors }),
    );
  });
  stderr.on('error', () => undefined);
  const thrown = (error: unknown): never => {
    throw new OutputRefused(error);
  };
  return { stdout: outputOf(stdout, thrown), stderr: errors, isWhole: () => isWhole };
}

function outputOf(stream: Stream, refused: (error: unknown) => void): Output {
  return {
    write: isDirect(stream)
      ? (text) => writeAll(stream.fd, text, refused)
      : (text) => {
          stream.write(text);
        },
    goesTo: fileBehind(stream.fd),
    isTerminal: stream.isTTY === true && process.env.NO_COLOR === undefined,
    ...(stream.isTTY === true && process.env.TERM !== 'dumb' ? { screen: screenOf(stream) } : {}),
  };
}

/** Files and devices take what they are given before the call returns. */
function isDirect({ fd, isTTY }: Stream): boolean {
  const found = fstatSync(fd);
  return found.isFile() || (found.isCharacterDevice() && isTTY !== true);
}

/** Node's own stream asks only once: a disk that becomes full takes a part, and nobody hears of the rest. */
function writeAll(descriptor: number, text: string, refused: (error: unknown) => void): void {
  const bytes = Buffer.from(text);
  try {
    for (let at = 0; at < bytes.length; ) at += writeSync(descriptor, bytes, at);
  } catch (error) {
    refused(error);
  }
}

function screenOf(stream: NodeJS.WriteStream): Screen {
  return {
    columns: () => stream.columns,
    rows: () => stream.rows,
    onResize(tell) {
      stream.on('resize', tell);
      return () => void stream.off('resize', tell);
    },
  };
}

/** The file that a shell sent a stream to. */
function fileBehind(descriptor: number): string | null {
  const found = fstatSync(descriptor, { bigint: true });
  return found.isFile() ? identityOf(found) : null;
}
