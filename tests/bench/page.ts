import { existsSync, mkdirSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { writeBig } from '../../samples/big.ts';
import { choose, launchChromium, openPage, watchLongTasks } from '../support/open-page.ts';

const folder = join('out', 'bench');

/** `npm run bench:page -- 1000`: how long the page takes for a poll of so many megabytes, and how long it blocks. */
export async function benchPage(megabytes = '200', share = '0.0002'): Promise<string> {
  mkdirSync(folder, { recursive: true });
  const input = join(folder, `poll-${megabytes}-${share}.csv`);
  if (!existsSync(input)) await writeBig(input, megabytes, '8', share);
  const browser = await launchChromium();
  try {
    return await measured(browser, input);
  } finally {
    await browser.close();
  }
}

async function measured(browser: Browser, input: string): Promise<string> {
  const { page } = await openPage(browser);
  const longestTask = await watchLongTasks(page);
  const begin = performance.now();
  await choose(page, input);
  await page.waitForSelector('table.pairs .strip', { timeout: 600_000 });
  const seconds = (performance.now() - begin) / 1000;
  const longest = await longestTask();
  const bytes = statSync(input).size;
  return [
    `${(bytes / 1e6).toFixed(0)} MB in the page: ${seconds.toFixed(1)} s, ${(bytes / 1e6 / seconds).toFixed(0)} MB/s;`,
    `longest task of its main thread ${longest.toFixed(0)} ms (none below 50 ms is counted);`,
    `largest renderer ${largestRenderer().toFixed(0)} MB at its peak`,
  ].join(' ');
}

/** The largest resident set that a renderer ever had, in megabytes; Linux alone tells. */
function largestRenderer(): number {
  const peaks = readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .flatMap((process) => {
      try {
        const isRenderer = readFileSync(`/proc/${process}/cmdline`, 'utf8').includes('--type=renderer');
        const peak = /VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${process}/status`, 'utf8'))?.[1];
        return isRenderer && peak !== undefined ? [Number(peak) / 1024] : [];
      } catch {
        // It ended while it was looked at.
        return [];
      }
    });
  return Math.max(0, ...peaks);
}
