import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { fiftyPairs } from '../support/fifty-pairs.ts';
import {
  choose,
  download,
  folderWith,
  goToBadSwap,
  goToSwap,
  goToView,
  launchChromium,
  openDemo,
  openPage,
} from '../support/open-page.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

const screen = 768;

/** Where the lowest of some elements ends, in pixels from the top of the window. */
async function lowest(page: Page, ...selectors: readonly string[]): Promise<number> {
  const ends = await Promise.all(
    selectors.map(async (selector) => {
      const box = await page.locator(selector).first().boundingBox();
      return box === null ? Number.POSITIVE_INFINITY : box.y + box.height;
    }),
  );
  return Math.max(...ends);
}

async function screensOf(page: Page): Promise<number> {
  return Number(await page.evaluate('document.documentElement.scrollHeight')) / screen;
}

describe('the first screen', () => {
  test('of a swap that is not verified holds verdict, each reason with its lines, the staff, Save, Print and Copy', async () => {
    const { page } = await openPage(browser);
    await openDemo(page);
    await goToBadSwap(page);
    // Three failed; what is not settled is folded to its count.
    expect(await page.locator('.reasons:visible li').count()).toBe(3);
    expect(await page.locator('.reasons:visible li lines-button').count()).toBe(3);
    await page.waitForSelector('.more-reasons summary:has-text("2 more checks did not pass")');
    const held = ['.not-known', '.verdict', '.more-reasons', '#save-report', '#print', '#copy-markdown'];
    expect(await lowest(page, ...held, '#save-all', 'staff-figure svg')).toBeLessThanOrEqual(screen);
    await page.context().close();
  });

  test('of a pair that will not sync holds the answer, what speaks for it, the staff and the buttons', async () => {
    const { page } = await openPage(browser);
    await openDemo(page);
    await goToView(page, 'diagnosis');
    await page.waitForSelector('staff-figure chart-figure svg');
    const held = ['.verdict', '.reasons lines-button', '#save-diagnosis', '#print', '#copy-markdown'];
    expect(await lowest(page, ...held, 'staff-figure chart-figure svg')).toBeLessThanOrEqual(screen);
    await page.context().close();
  });
});

describe('fifty pairs', () => {
  test('stand in three screens: the two worst first, tables of twelve rows, the rest of the sections a line each', async () => {
    const files = fiftyPairs();
    const folder = folderWith(files);
    const { page, told } = await openPage(browser);
    await choose(page, ...Object.keys(files).map((name) => join(folder, name)));
    await page.waitForSelector('table.pairs .strip', { timeout: 60_000 });
    await goToView(page, 'fleet');
    await page.waitForSelector('fleet-view .verdict:has-text("2 of 50 pairs")');
    await page.waitForSelector('#fleet-pairs chart-figure svg');
    expect(await screensOf(page)).toBeLessThanOrEqual(3);
    const worst = ['p:has-text("RO17: ") lines-button', 'p:has-text("RO42: ") lines-button'];
    expect(await lowest(page, '.verdict', ...worst, '#save-report', '#print')).toBeLessThanOrEqual(screen);
    const rows = page.locator('#fleet-pairs tbody tr');
    expect(await rows.count()).toBe(12);
    await page.click('#fleet-pairs button:has-text("Show all 50")');
    expect(await rows.count()).toBe(50);
    await page.click('#fleet-pairs th button:has-text("Pair")');
    const names = await page
      .locator('#fleet-pairs tbody th')
      .evaluateAll((all) => all.map((th) => th.textContent?.trim().slice(0, 4)));
    expect(names).toEqual(Array.from({ length: 50 }, (_, n) => `RO${String(n + 1).padStart(2, '0')}`));
    await page.fill('#fleet-pairs input[name=filter]', 'stands out');
    expect(await rows.count()).toBe(2);
    const { name, text } = await download(page, '#fleet-pairs .save-table');
    expect(name).toBe('fleet-pairs-shown.csv');
    expect(text.split('\r\n').map((line) => line.split(',')[0])).toEqual(['Pair', 'RO17', 'RO42', '']);
    expect(told).toEqual([]);
    await page.context().close();
  });
});

test('two hundred files stand in Sources within two screens, those with rows not recognised first', async () => {
  // Each says something else: the same file under two names is used once.
  const day = (n: number): string => new Date(Date.UTC(2026, 0, 1 + n)).toISOString().slice(0, 10);
  const file = (n: number): string =>
    `time,unit,message\n${day(n)}T00:00:00Z,RO1,partner ready\n${day(n)}T01:00:00Z,RO1,${n < 3 ? 'odd words' : 'light steady'}\n`;
  const files = Object.fromEntries(
    Array.from({ length: 200 }, (_, n) => [`day-${String(n).padStart(3, '0')}.csv`, file(n)]),
  );
  const folder = folderWith(files);
  const { page } = await openPage(browser);
  await choose(page, ...Object.keys(files).map((name) => join(folder, name)));
  await page.waitForSelector('table.pairs .strip');
  await goToView(page, 'sources');
  await page.waitForSelector('#files');
  await page.waitForSelector('wording-form tbody tr');
  expect(await screensOf(page)).toBeLessThanOrEqual(2);
  expect(await page.locator('#files file-fold').count()).toBe(3);
  await page.click('.known-files > details > summary:has-text("197 of 200 files")');
  await expect.poll(() => page.locator('#files file-fold').count()).toBe(200);
  await page.context().close();
});

test('all reports are saved as one zip, a folder for each pair', async () => {
  const { page } = await openPage(browser);
  await openDemo(page);
  await goToSwap(page);
  const [saved] = await Promise.all([page.waitForEvent('download'), page.click('#save-all')]);
  expect(saved.suggestedFilename()).toBe('swap-records.zip');
  const bytes = readFileSync((await saved.path()) ?? '');
  const names = Object.keys(unzipSync(bytes)).sort();
  expect(names).toEqual([
    'RO1/RO1-swap-2026-03-14.html',
    'RO1/RO1-swap-2026-03-14.md',
    'RO1/verify.json',
    'RO3/RO3-swap-2026-03-17.html',
    'RO3/RO3-swap-2026-03-17.md',
    'RO3/verify.json',
  ]);
  await page.context().close();
});

test('the margin lists the sections while it is idle; a press goes there, and evidence takes its place', async () => {
  const { page } = await openPage(browser);
  await openDemo(page);
  await goToSwap(page);
  await page.mouse.move(0, 0);
  const titles = await page.locator('nav.sections button').allTextContents();
  expect(titles).toEqual(await page.locator('main section[id] > h2').allTextContents());
  await page.click('nav.sections button:has-text("Exposure")');
  await page.waitForSelector('#swap-exposure:focus');
  await page.waitForSelector('nav.sections [aria-current=true]');
  await page.hover('table.steps tbody tr');
  await page.waitForSelector('aside details.sections');
  await page.mouse.move(0, 0);
  await page.keyboard.press('Escape');
  await page.waitForSelector('aside nav.sections');
  await page.context().close();
});

test('version and methods are reached from every view', async () => {
  const { page } = await openPage(browser);
  await openDemo(page);
  for (const view of ['pairs', 'swap', 'diagnosis', 'fleet', 'sources']) {
    await goToView(page, view);
    expect(await page.textContent('footer.about')).toMatch(/Steadypair \d+\.\d+\.\d+\./);
  }
  await page.click('footer.about button');
  await page.waitForSelector('#computed:focus');
  await page.waitForSelector('#computed:has-text("Garwood")');
  await page.context().close();
});
