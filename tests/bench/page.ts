import { readdirSync, readFileSync, statSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { writeBig } from '../../samples/big.ts';
import { writeMovingGauges } from '../../samples/moving-gauges.ts';
import { choose, launchChromium, openPage, watchLongTasks } from '../support/open-page.ts';
import { rounds } from './alternate.ts';
import type { Bench, Row } from './bench-case.ts';
import { pollFile } from './polls.ts';

/** What the page took for a file. */
interface Opened {
  readonly seconds: number;
  /** Megabytes. */
  readonly size: number;
  /** Milliseconds of the longest task of its main thread; none below 50 ms is counted. */
  readonly longestTask: number;
  readonly megabytes: number;
}

/** The built page over the quiet poll and the one with moving gauges, each time in a browser of its own; nothing else does this job. */
export const pageBench: Bench = {
  id: 'page',
  async measure(megabytes) {
    const inputs = [
      ['the first poll in the page', await quietPoll(String(megabytes), '0.0002')],
      ['moving gauges in the page', await gaugePoll(String(megabytes))],
    ] as const;
    const rows: Row[] = [];
    let longest = 0;
    for (const [job, input] of inputs) {
      const runs: Opened[] = [];
      for (let round = 0; round < rounds; round += 1) runs.push(await openedIn(input));
      const best = runs.reduce((a, b) => (b.seconds < a.seconds ? b : a));
      longest = Math.max(longest, ...runs.map(({ longestTask }) => longestTask));
      const amount = { count: best.size, unit: 'MB' } as const;
      const { seconds, megabytes: memory } = best;
      rows.push({
        job,
        program: 'the page in Chromium',
        seconds,
        megabytes: memory,
        amount,
        yardstick: null,
      });
    }
    const said =
      longest === 0
        ? 'The page had no task of 50 ms or more on its main thread.'
        : `The longest task of the page's main thread took ${longest.toFixed(0)} ms.`;
    return { rows, notes: [said], agrees: null };
  },
};

/** `npm run bench:page -- 1000`: how long the page takes for a poll of so many megabytes, and how long it blocks. */
export async function benchPage(megabytes = '200', share = '0.0002'): Promise<string> {
  const { size, seconds, longestTask, megabytes: peak } = await openedIn(await quietPoll(megabytes, share));
  return [
    `${size.toFixed(0)} MB in the page: ${seconds.toFixed(1)} s, ${(size / seconds).toFixed(0)} MB/s;`,
    `longest task of its main thread ${longestTask.toFixed(0)} ms (none below 50 ms is counted);`,
    `largest renderer ${peak.toFixed(0)} MB at its peak`,
  ].join(' ');
}

function quietPoll(megabytes: string, share: string): Promise<string> {
  const name = share === '0.0002' ? `poll-quiet-${megabytes}.csv` : `poll-${megabytes}-${share}.csv`;
  return pollFile(name, (file) => writeBig(file, megabytes, '8', share));
}

function gaugePoll(megabytes: string): Promise<string> {
  return pollFile(`poll-gauges-${megabytes}.csv`, (file) => writeMovingGauges(file, megabytes));
}

async function openedIn(input: string): Promise<Opened> {
  const browser = await launchChromium();
  try {
    return await opened(browser, input);
  } finally {
    await browser.close();
  }
}

async function opened(browser: Browser, input: string): Promise<Opened> {
  const { page } = await openPage(browser);
  const longestTask = await watchLongTasks(page);
  const begin = performance.now();
  await choose(page, input);
  await page.waitForSelector('table.pairs .strip', { timeout: 600_000 });
  const seconds = (performance.now() - begin) / 1000;
  return {
    seconds,
    size: statSync(input).size / 1e6,
    longestTask: await longestTask(),
    megabytes: largestRenderer(),
  };
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
