import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { dragFiles } from '../support/drag-files.ts';
import { choose, folderWith, goToView, launchChromium, openPage } from '../support/open-page.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

async function openFleet(page: Page): Promise<void> {
  await page.waitForSelector('table.pairs .strip');
  await goToView(page, 'fleet');
  await page.waitForSelector('fleet-view .verdict');
}

const day = 86_400_000;
const begin = Date.UTC(2026, 0, 1);

/** A journal of many pairs over a hundred days: the first lose their partner nine times, all others once. */
function manyPairs(count: number): string {
  const entries = Array.from({ length: count }, (_, index) => index).flatMap((index) => {
    const pair = `P${String(index + 1).padStart(4, '0')}`;
    const losses = index < 3 ? 9 : 1;
    const lost = Array.from({ length: losses }, (__, loss) => begin + (10 + loss * 9) * day + index * 1000);
    return [
      { time: begin, pair, message: 'partner ready' },
      ...lost.flatMap((time) => [
        { time, pair, message: 'partner not ready' },
        { time: time + 120_000, pair, message: 'partner ready' },
      ]),
      { time: begin + 100 * day, pair, message: 'link a up' },
    ];
  });
  const rows = entries
    .toSorted((a, b) => a.time - b.time)
    .map(({ time, pair, message }) => `${new Date(time).toISOString()},${pair},${message}\n`);
  return `time,unit,message\n${rows.join('')}`;
}

describe('a fleet of a thousand pairs', () => {
  test('shows the worst twelve and all on request; how long the page is held is printed', async () => {
    const folder = folderWith({ 'many.csv': manyPairs(1000) });
    const { page, told } = await openPage(browser);
    await choose(page, join(folder, 'many.csv'));
    await page.waitForSelector('table.pairs tbody tr');
    await page.evaluate(
      "(window.held = [], new PerformanceObserver((l) => held.push(...l.getEntries().map((e) => Math.round(e.duration)))).observe({ type: 'longtask' }))",
    );
    await goToView(page, 'fleet');
    await page.waitForSelector('fleet-view .verdict:has-text("P0001 (9 losses")');
    await expect.poll(() => page.locator('#fleet-pairs chart-figure svg').count()).toBe(1);
    const drawn = 'Shown: the worst pairs, 12 of 1000.';
    expect(await page.textContent('#fleet-pairs figcaption')).toContain(drawn);
    const rows = page.locator('#fleet-pairs tbody tr');
    expect(await rows.count()).toBe(12);
    expect(await rows.first().textContent()).toContain('stands out');
    await page.waitForSelector('#fleet-pairs [role=status]:has-text("12 shown of 1000 rows")');
    const held: unknown = await page.evaluate('Math.max(0, ...held)');
    console.log(`Opening a fleet of 1,000 pairs held the page for at most ${held} ms.`);
    await page.focus('#fleet-pairs button:has-text("Show all 1000")');
    await page.keyboard.press('Enter');
    await expect.poll(() => rows.count()).toBe(1000);
    await page.waitForSelector('#fleet-pairs button:focus:has-text("Show the first 12")');
    await page.keyboard.press('Enter');
    await expect.poll(() => rows.count()).toBe(12);
    expect(told).toEqual([]);
    await page.context().close();
  });
});

test('stored timelines that are dropped on the page are read', async () => {
  const { page, told } = await openPage(browser);
  const box = await page.locator('.drop').boundingBox();
  const at = { x: (box?.x ?? 0) + 20, y: (box?.y ?? 0) + 20 };
  const folder = join('samples', 'marrow-bay-fleet');
  const files = readdirSync(folder)
    .filter((name) => name.endsWith('.parquet'))
    .map((name) => join(folder, name));
  const letGo = await dragFiles(page, at, files);
  await letGo();
  await openFleet(page);
  expect(await page.textContent('fleet-view .verdict')).toContain('RO2 (23 losses');
  expect(told).toEqual([]);
  await page.context().close();
});

describe('the two years of the demo site', () => {
  test('are opened, grouped, traced to their lines and saved by the keyboard alone', async () => {
    const { page, told } = await openPage(browser);
    /** Presses Tab until the focus is on what the selector means; fails after two hundred. */
    const tabTo = async (selector: string): Promise<void> => {
      for (let presses = 0; presses < 200; presses += 1) {
        await page.keyboard.press('Tab');
        if ((await page.locator(`${selector}:focus`).count()) > 0) {
          expect([selector, await page.locator(`${selector}:focus-visible`).count()]).toEqual([selector, 1]);
          return;
        }
      }
      throw new Error(`The focus never came to ${selector}.`);
    };
    await tabTo('#demo-fleet');
    await page.keyboard.press('Enter');
    await page.waitForSelector('table.pairs .strip');
    await tabTo('header nav a[href="#fleet"]');
    await page.keyboard.press('Enter');
    await page.waitForSelector('fleet-view .verdict');
    await tabTo('#grouped');
    await page.keyboard.type('model');
    await page.waitForSelector('h2:has-text("Sync times by model")');
    await tabTo('#swaps');
    await page.keyboard.type('25');
    await page.keyboard.press('Enter');
    await page.waitForSelector('p:has-text("next 25 swaps")');
    await tabTo('#fleet-pairs tbody tr:nth-child(2) button');
    await page.waitForSelector('side-notes .note:has-text("outfall-journal.csv")');
    await page.locator('.more-files summary').focus();
    await page.keyboard.press('Enter');
    await tabTo('button[data-name="fleet-forecast.csv"]');
    const [saved] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
    expect(saved.suggestedFilename()).toBe('fleet-forecast.csv');
    await page.waitForSelector('fleet-view [role=status]:has-text("Saved fleet-forecast.csv.")');
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('have pictures that a screen reader says in their sentence', async () => {
    const { page } = await openPage(browser);
    await page.click('#demo-fleet');
    await openFleet(page);
    await page.click('#all-sections');
    await expect.poll(() => page.locator('fleet-view chart-figure svg').count()).toBe(14);
    const named = await page
      .locator('fleet-view [role=img]')
      .evaluateAll((all) => all.map((one) => one.ariaLabel));
    expect(named).toEqual(await page.locator('fleet-view figcaption').allTextContents());
    expect(new Set(named).size).toBe(14);
    // The names of pairs in them lead where those in the tables do.
    await page.click('fleet-view .picture text.pair-name:text-is("OUTFALL")');
    await page.waitForSelector('diagnosis-view .verdict:has-text("OUTFALL")');
    await page.goBack();
    await page.waitForSelector('#fleet-pairs tr[data-pair=OUTFALL]');
    await expect.poll(() => page.locator('fleet-view chart-figure svg').count()).toBe(14);
    expect(
      await page
        .locator('fleet-view chart-figure :is([role], [aria-roledescription]):not([role=img])')
        .count(),
    ).toBe(0);
    await page.context().close();
  });

  test('are usable at 200 % zoom: nothing scrolls sideways, and axe finds nothing', async () => {
    const viewport = { width: 683, height: 384 };
    const { page } = await openPage(browser, { viewport, bypassCSP: true });
    await page.click('#demo-fleet');
    await openFleet(page);
    await page.click('#all-sections');
    await expect.poll(() => page.locator('fleet-view chart-figure svg').count()).toBe(14);
    expect(await page.evaluate('document.documentElement.scrollWidth <= innerWidth')).toBe(true);
    await page.addScriptTag({ content: axe.source });
    const found: unknown = await page.evaluate(
      "axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] }).then((r) => r.violations.map((v) => v.id + ': ' + v.nodes.map((n) => n.target).join(' ')))",
    );
    expect(found).toEqual([]);
    await page.context().close();
  });

  test('print as their report, folded as they are: answer, pictures and tables, without form and buttons', async () => {
    const { page } = await openPage(browser);
    await page.click('#demo-fleet');
    await openFleet(page);
    await page.waitForSelector('html.on-paper');
    const file = join(mkdtempSync(join(tmpdir(), 'print-')), 'page.pdf');
    writeFileSync(file, await page.pdf({ format: 'A4' }));
    const text = execFileSync('pdftotext', [file, '-'], { encoding: 'utf8' }).replace(/\s+/g, ' ');
    for (const wanted of [
      'lose their partner more often',
      'bouts per year, with 95 % limits',
      'Which pairs are ready for a swap',
      'check at the cabinet',
    ])
      expect(text).toContain(wanted);
    for (const kept of ['Save report', 'days without a break', '20 lines', 'Show all'])
      expect(text).not.toContain(kept);
    await page.context().close();
  });
});
