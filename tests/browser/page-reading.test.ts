import { createHash } from 'node:crypto';
import { readFileSync, statSync, unlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { zipSync } from 'fflate';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeBig } from '../../samples/big.ts';
import { dragFiles } from '../support/drag-files.ts';
import {
  builtPage,
  choose,
  folderWith,
  goToView,
  launchChromium,
  openDemo,
  openPage,
  watchLongTasks,
} from '../support/open-page.ts';

/** How long a row may take to be told on a busy machine: ten times as long as it does. */
const soon = { timeout: 20_000 };

let browser: Browser;
let big: string;
beforeAll(async () => {
  big = join(
    folderWith({ 'note.csv': 'time,unit,message\n2026-03-14T09:00:00Z,RO1,partner ready\n' }),
    'big.csv',
  );
  await writeBig(big, '50');
  browser = await launchChromium();
});
afterAll(async () => {
  unlinkSync(big);
  await browser?.close();
});

/** Drops files or folders on the page, as the system would. */
async function drop(page: Page, ...paths: readonly string[]): Promise<void> {
  const box = await page.locator('.drop').boundingBox();
  if (box === null) throw new Error('There is nothing to drop on.');
  const letGo = await dragFiles(page, { x: box.x + 20, y: box.y + 20 }, paths);
  await letGo();
}

describe('files that are dropped', () => {
  test('are read', async () => {
    const { page, told } = await openPage(browser);
    const site = join('samples', 'marrow-bay', 'bad-swap');
    await drop(page, join(site, 'ro3-poll.csv'), join(site, 'ro3-events.log'), join(site, 'phrasebook.yaml'));
    await page.waitForSelector('table.pairs:has-text("RO3")');
    expect(told).toEqual([]);
    await page.context().close();
  });
  test('as a folder are read, or the page says what to do instead', async () => {
    const { page, told } = await openPage(browser);
    await drop(page, join('samples', 'marrow-bay', 'bad-swap'));
    const outcome = page.locator('table.pairs:has-text("RO3"), [role=alert]:has-text("Choose a folder")');
    await outcome.first().waitFor();
    expect(told).toEqual([]);
    await page.context().close();
  });
  test('in gzip and zip are read, and one that is cut off says so', async () => {
    const text = (pair: string): string => `time,unit,message\n2026-03-14T09:00:00Z,${pair},partner ready\n`;
    const folder = folderWith({});
    const whole = gzipSync(text('RO1'));
    writeFileSync(join(folder, 'a.csv.gz'), whole);
    writeFileSync(join(folder, 'b.zip'), zipSync({ 'deep/b.csv': new TextEncoder().encode(text('RO2')) }));
    writeFileSync(join(folder, 'c.csv.gz'), gzipSync(text('RO4')).subarray(0, -9));
    const { page, told } = await openPage(browser);
    await choose(page, ...['a.csv.gz', 'b.zip', 'c.csv.gz'].map((name) => join(folder, name)));
    await page.waitForSelector('table.pairs:has-text("RO1"):has-text("RO2")');
    await page.click('a[href="#sources"]');
    await page.click('.known-files summary');
    await page.waitForSelector('file-fold:has-text("b.zip/deep/b.csv")');
    await page.waitForSelector('#files > file-fold:has-text("c.csv.gz"):has-text("cut off or damaged")');
    expect(told).toEqual([]);
    await page.context().close();
  });
  test('that can not be read are listed with the reason beside those that were', async () => {
    const folder = folderWith({
      'good.csv': 'time,unit,message\n2026-03-14T09:00:00Z,RO1,partner ready\n',
      'empty.csv': '',
      'prose.txt': 'nothing to see\nin this file\n',
      'compose.yaml': 'services: { web: {} }\n',
    });
    writeFileSync(
      join(folder, 'picture.csv'),
      Uint8Array.from({ length: 600 }, (_, index) => index % 7),
    );
    const { page } = await openPage(browser);
    await choose(
      page,
      ...['good.csv', 'empty.csv', 'prose.txt', 'picture.csv', 'compose.yaml'].map((name) =>
        join(folder, name),
      ),
    );
    await page.waitForSelector('table.pairs:has-text("RO1")');
    await page.click('a[href="#sources"]');
    await page.waitForSelector('sources-view h2:text("Left out")');
    const left = await page.locator('sources-view section:has(h2:text("Left out")) li').allTextContents();
    const said = left.map((text) => text.replace(/\s+/g, ' ').trim());
    await page.screenshot({ path: join('out', 'screenshots', 'page-left-out-light.png'), fullPage: true });
    expect(said).toHaveLength(4);
    expect(said[0]).toContain('compose.yaml: services is not a key here.');
    expect(said[1]).toContain('empty.csv: the file is empty. Export it again.');
    expect(said[2]).toContain('picture.csv: this is a binary file, not text.');
    expect(said[3]).toContain('prose.txt');
    await page.context().close();
  });
});

describe('reading', () => {
  test('of a big poll shows its progress, leaves the page responsive, and says how long it took', async () => {
    const { page, told } = await openPage(browser);
    const longestTask = await watchLongTasks(page);
    const begin = performance.now();
    await choose(page, big);
    await page.waitForSelector('reading-progress progress');
    await expect
      .poll(() => page.locator('reading-progress .amount').textContent(), soon)
      .toMatch(/[1-9][\d,]* rows so far/);
    await page.screenshot({ path: join('out', 'screenshots', 'page-reading-light.png') });
    await page.waitForSelector('table.pairs .strip', { timeout: 50_000 });
    const seconds = (performance.now() - begin) / 1000;
    const longest = await longestTask();
    console.log(
      `50 MB poll export: ${seconds.toFixed(1)} s; longest task of the main thread ${longest.toFixed(0)} ms (none below 50 ms is counted)`,
    );
    expect(await page.locator('table.pairs tbody tr').count()).toBe(8);
    // A large file is hashed in a worker of its own; what it comes to is the platform's.
    await goToView(page, 'sources');
    const digest = createHash('sha256').update(readFileSync(big)).digest('hex');
    await page.waitForSelector(`code:has-text("SHA-256 ${digest}")`);
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('is ended by Cancel, and the page is as it was', async () => {
    const { page, told } = await openPage(browser);
    await choose(page, big);
    await page.click('#cancel');
    await page.waitForSelector('#demo');
    await openDemo(page);
    expect(await page.locator('table.pairs tbody tr').count()).toBe(3);
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('of a file that vanishes in the middle says so, and goes on with the others', async () => {
    const vanishing = join(folderWith({}), 'vanishing.csv');
    writeFileSync(vanishing, readFileSync(big));
    const { page } = await openPage(browser);
    await choose(page, vanishing, join(dirname(big), 'note.csv'));
    await page.waitForSelector('reading-progress progress');
    // Files are read in the order of their names: the note is done by then.
    await expect
      .poll(() => page.locator('reading-progress p:has-text("vanishing")').textContent(), soon)
      .toMatch(/[1-9][\d,]* rows/);
    unlinkSync(vanishing);
    await page.waitForSelector('table.pairs:has-text("RO1")', { timeout: 50_000 });
    await page.click('a[href="#sources"]');
    await page.waitForSelector('sources-view h2:text("Left out")');
    const left = await page.locator('sources-view section:has(h2:text("Left out")) li').allTextContents();
    expect(left.join(' ')).toContain('vanishing.csv');
    expect(left.join(' ')).toContain('it cannot be read any more');
    await page.context().close();
  });
});

test('the demo site is soon there, and the file is small: both are printed', async () => {
  const times: number[] = [];
  for (let round = 0; round < 3; round += 1) {
    const { page } = await openPage(browser);
    const shown: unknown = await page.evaluate(
      `new Promise((resolve) => {
        const begin = performance.now();
        new MutationObserver((_, observer) => {
          if (document.querySelector('table.pairs .strip line') === null) return;
          observer.disconnect();
          requestAnimationFrame(() => resolve(performance.now() - begin));
        }).observe(document.body, { childList: true, subtree: true });
        document.querySelector('#demo').click();
      })`,
    );
    times.push(Number(shown));
    await page.context().close();
  }
  const median = times.toSorted((a, b) => a - b)[1] ?? Number.NaN;
  const raw = statSync(builtPage()).size;
  const zipped = gzipSync(readFileSync(builtPage()), { level: 9 }).length;
  console.log(
    `demo site to first picture: median ${median.toFixed(0)} ms of ${times.map((t) => t.toFixed(0)).join(', ')}; page ${(raw / 1e6).toFixed(2)} MB, gzipped ${(zipped / 1e3).toFixed(0)} kB`,
  );
  expect(median).toBeGreaterThan(0);
});
