import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { run } from '../../src/cli/main.ts';

/** Runs the command as a user would; gives its exit status and what it wrote. */
export async function steadypair(
  ...args: readonly string[]
): Promise<{ status: number; out: string; err: string }> {
  let [out, err] = ['', ''];
  const status = await run(args, {
    stdout: {
      write: (text) => {
        out += text;
      },
      isTerminal: false,
    },
    stderr: {
      write: (text) => {
        err += text;
      },
      isTerminal: false,
    },
  });
  return { status, out, err };
}

/** A file of its own with some content; gives its path. */
export function fileWith(content: string | Uint8Array, name = 'x.csv'): string {
  const path = join(mkdtempSync(join(tmpdir(), 'steadypair-')), name);
  writeFileSync(path, content);
  return path;
}
