import { once } from 'node:events';
import { createWriteStream } from 'node:fs';
import { seeded } from './random.ts';

/** What a big export holds. */
export interface BigExport {
  readonly bytes: number;
  readonly rows: number;
  /** Changes of value, without the first readings. */
  readonly changes: number;
}

const parameters = ['partner-ready', 'light', 'configuration'] as const;
const spacingMs = 10_000;
const begin = Date.UTC(2026, 0, 1);
const blockPolls = 200;

/**
 * Writes a poll export (readings, ISO stamps) of at least `megabytes` MB: `pairs` pairs read every ten seconds, in which
 * the given share of the readings are changes. The same seed gives the same bytes.
 */
export async function writeBig(
  file: string,
  megabytes: string,
  pairs = '8',
  share = '0.001',
  seed = '1',
): Promise<BigExport> {
  const random = seeded(Number(seed));
  const names = Array.from({ length: Number(pairs) }, (_, index) => `RO${index + 1}`);
  const state = new Map<string, string>();
  const stream = createWriteStream(file);
  let [bytes, rows, changes] = [0, 0, 0];
  const write = async (text: string): Promise<void> => {
    bytes += text.length;
    if (!stream.write(text)) await once(stream, 'drain');
  };
  await write('time,unit,parameter,value\n');
  for (let poll = 0; bytes < Number(megabytes) * 1_000_000; poll += blockPolls) {
    const block: string[] = [];
    for (let index = poll; index < poll + blockPolls; index += 1) {
      const stamp = new Date(begin + index * spacingMs).toISOString().slice(0, 19);
      for (const name of names) {
        for (const parameter of parameters) {
          const key = name + parameter;
          const before = state.get(key);
          const flip = before !== undefined && random() < Number(share);
          if (flip) changes += 1;
          const value = before === undefined ? first(parameter) : flip ? other(before) : before;
          state.set(key, value);
          rows += 1;
          block.push(`${stamp}Z,${name},${parameter},${value}\n`);
        }
      }
    }
    await write(block.join(''));
  }
  stream.end();
  await once(stream, 'finish');
  return { bytes, rows, changes };
}

function first(parameter: string): string {
  if (parameter === 'light') return 'steady';
  return parameter === 'configuration' ? 'current' : 'yes';
}

function other(value: string): string {
  if (value === 'yes' || value === 'no') return value === 'yes' ? 'no' : 'yes';
  if (value === 'steady' || value === 'flashing') return value === 'steady' ? 'flashing' : 'steady';
  return value === 'current' ? 'pending' : 'current';
}
