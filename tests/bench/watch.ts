import { spawn } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { writeBig } from '../../samples/big.ts';
import { followFiles } from '../../src/cli/followed-files.ts';
import { platform } from '../../src/cli/platform.ts';
import {
  analyse,
  followedReadings,
  type Imported,
  importFiles,
  keptUnpacking,
  lastHour,
  readPhrasebook,
  swapsNow,
} from '../../src/pipeline.ts';
import { panelText } from '../../src/report/panel.ts';

const folder = join('out', 'bench');

/** Appends rows of a poll, with the stamps of their writing, until it is ended; in a process of its own, so that its work is not counted. */
const writer = `
const { appendFileSync } = require('node:fs');
const [file, perSecond] = process.argv.slice(1);
const each = Math.max(1, Math.round(perSecond / 20));
let count = 0;
setInterval(() => {
  const stamp = new Date().toISOString();
  let rows = '';
  for (let i = 0; i < each; i += 1) {
    count += 1;
    rows += stamp + ',RO' + (1 + (count % 8)) + ',partner-ready,' + (Math.floor(count / 4001) % 2 ? 'no' : 'yes') + '\\n';
  }
  appendFileSync(file, rows);
}, 50);
`;

interface Turn {
  readonly milliseconds: number;
  /** How old the newest row that was read is, in milliseconds. */
  readonly delay: number;
  readonly megabytes: number;
  readonly rows: number;
}

/** `npm run bench:watch -- 1000 1000 60`: a poll of so many megabytes is read, then so many rows a second are appended for so many seconds. */
export async function benchWatch(megabytes = '1000', perSecond = '1000', seconds = '60'): Promise<string> {
  const log = await history(megabytes);
  const read = reader(log);
  const begun = performance.now();
  const first = await read.turn();
  const firstSeconds = (performance.now() - begun) / 1000;
  const child = spawn(process.execPath, ['-e', writer, log, perSecond], { stdio: 'inherit' });
  const used = process.cpuUsage();
  const from = performance.now();
  const turns: Turn[] = [];
  while (performance.now() - from < Number(seconds) * 1000) {
    await read.files.changed(1000);
    turns.push(await read.turn());
  }
  const { user, system } = process.cpuUsage(used);
  const elapsed = performance.now() - from;
  child.kill();
  await read.files.close();
  const share = ((user + system) / 1000 / elapsed) * 100;
  return [
    `${megabytes} MB of history: ${firstSeconds.toFixed(1)} s, ${first.megabytes.toFixed(0)} MB of memory`,
    `${turns.at(-1)?.rows} rows, ${((statSync(log).size - Number(megabytes) * 1e6) / 1e6).toFixed(1)} MB appended in ${(elapsed / 1000).toFixed(0)} s, ${turns.length} turns`,
    `look, read, judge and draw: ${spread(turns.map((t) => t.milliseconds))}`,
    `from the row to the panel: ${spread(turns.slice(3).map((t) => t.delay))}`,
    `CPU: ${share.toFixed(1)} % of one core`,
    `memory: ${tenths(turns.map((t) => t.megabytes))} MB, from tenth to tenth of the time`,
  ].join('\n');
}

async function history(megabytes: string): Promise<string> {
  mkdirSync(folder, { recursive: true });
  const input = join(folder, `poll-${megabytes}-0.0002.csv`);
  if (!existsSync(input)) await writeBig(input, megabytes, '8', '0.0002');
  const site = join(folder, 'watched');
  rmSync(site, { recursive: true, force: true });
  mkdirSync(site);
  copyFileSync(input, join(site, 'poll.csv'));
  return join(site, 'poll.csv');
}

function reader(log: string): {
  readonly files: ReturnType<typeof followFiles>;
  turn(): Promise<Turn>;
} {
  const files = followFiles([log]);
  const unpack = keptUnpacking();
  const kept = followedReadings();
  const phrasebook = readPhrasebook('built-in phrasebook', null);
  const importAll = async (): Promise<Imported> => {
    const { sources } = await unpack((await files.look()).files, platform);
    const { sha256 } = platform;
    return importFiles(sources, { phrasebook, zone: null, order: null, year: null, sha256, kept });
  };
  return {
    files,
    async turn() {
      const begun = performance.now();
      const imported = await importAll();
      draw(imported);
      const [file] = imported.files;
      const milliseconds = performance.now() - begun;
      const delay = Date.now() - (file?.input.to ?? 0);
      return {
        milliseconds,
        delay,
        megabytes: process.memoryUsage.rss() / 1e6,
        rows: file?.input.rows.read ?? 0,
      };
    },
  };
}

/** What a watch of one pair makes of a reading, to the panel. */
function draw(imported: Imported): void {
  const analysed = analyse(imported);
  const [now] = swapsNow(analysed, 'RO1', null);
  if (now === undefined) throw new Error('The history tells nothing of RO1.');
  const clock = { at: now.at, isSilent: false, behindSeconds: 0 };
  const staff = lastHour(analysed, 'RO1');
  panelText(now, { zone: 'UTC', paint: (text) => text, clock, staff, width: 80 });
}

function spread(values: readonly number[]): string {
  const sorted = values.toSorted((a, b) => a - b);
  const at = (share: number): string =>
    `${(sorted[Math.floor((sorted.length - 1) * share)] ?? 0).toFixed(0)} ms`;
  return `median ${at(0.5)}, 95th percentile ${at(0.95)}, worst ${at(1)}`;
}

function tenths(values: readonly number[]): string {
  return Array.from({ length: 11 }, (_, i) =>
    values[Math.floor(((values.length - 1) * i) / 10)]?.toFixed(0),
  ).join(' ');
}
