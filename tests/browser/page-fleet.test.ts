import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { choose, download, folderWith, goToView, launchChromium, openPage } from '../support/open-page.ts';

const demo = join('samples', 'marrow-bay-fleet');
const logs = readdirSync(demo)
  .filter((name) => name.endsWith('.parquet'))
  .sort();
const shots = join('out', 'screenshots');
let browser: Browser;
beforeAll(async () => {
  mkdirSync(shots, { recursive: true });
  browser = await launchChromium();
});
afterAll(() => browser?.close());

async function openFleet(page: Page): Promise<void> {
  await page.click('#demo-fleet');
  await page.waitForSelector('table.pairs .strip');
  await goToView(page, 'fleet');
  await page.click('#all-sections');
  // Away from rows that would cite their lines as the page scrolls under the pointer.
  await page.mouse.move(0, 0);
  await expect.poll(() => page.locator('fleet-view chart-figure svg').count()).toBe(14);
}

describe('Fleet', () => {
  test.each(['light', 'dark'] as const)(
    'shows two years of the demo site and passes axe, %s',
    async (colorScheme) => {
      // Axe is put into the page by the test: without the policy, which other tests are about.
      const { page, told } = await openPage(browser, { colorScheme, bypassCSP: true });
      await openFleet(page);
      expect(await page.textContent('fleet-view .verdict')).toBe(
        '2 of 8 pairs lose their partner more often than the rest: RO2 (23 losses in 22 bouts) and OUTFALL (22 losses in 21 bouts).',
      );
      expect(await page.evaluate('document.documentElement.scrollWidth <= innerWidth')).toBe(true);
      await page.screenshot({ path: join(shots, `fleet-${colorScheme}.png`), fullPage: true });
      await page.addScriptTag({ content: axe.source });
      const found: unknown = await page.evaluate(
        "axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] }).then((r) => r.violations.map((v) => v.id + ': ' + v.nodes.map((n) => n.target).join(' ')))",
      );
      expect(found).toEqual([]);
      expect(told).toEqual([]);
      await page.context().close();
    },
  );

  test('asks again for another group, campaign and time, and shows the lines of a row', async () => {
    const { page, told } = await openPage(browser);
    await openFleet(page);
    await page.selectOption('#grouped', 'model');
    await page.waitForSelector('h2:has-text("Sync times by model")');
    await page.fill('#swaps', '40');
    await page.press('#swaps', 'Enter');
    await page.waitForSelector('p:has-text("next 40 swaps")');
    // Fit for a swap rests on the partner that is ready now, not on losses long ago.
    await page.focus('#fleet-readiness tbody tr button');
    await page.waitForSelector('side-notes .note:has-text("RO2,partner ready")');
    await page.fill('#ready-days', '400');
    await page.press('#ready-days', 'Enter');
    await page.waitForSelector('#fleet-readiness .fail:has-text("not ready")');
    await page.focus('#fleet-pairs tbody tr button');
    await page.waitForSelector('side-notes .note:has-text("ro2-journal.csv")');
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('saves what the command writes, byte for byte', async () => {
    const out = mkdtempSync(join(tmpdir(), 'fleet-'));
    const command = [resolve('dist', 'steadypair.mjs'), 'fleet', ...logs, '--out', out];
    const { status, stderr } = spawnSync(process.execPath, command, { cwd: demo, encoding: 'utf8' });
    expect([status, stderr]).toEqual([1, '']);
    const { page, told } = await openPage(browser);
    await choose(page, ...logs.map((name) => join(demo, name)));
    await page.waitForSelector('table.pairs .strip');
    await goToView(page, 'fleet');
    await page.waitForSelector('fleet-view .verdict');
    await page.click('.more-files summary');
    const written = readdirSync(out).sort();
    expect(written).toHaveLength(10);
    for (const wanted of written) {
      const { name, text } = await download(page, `button[data-name="${wanted}"]`);
      expect(name).toBe(wanted);
      expect(text === readFileSync(join(out, name), 'utf8'), name).toBe(true);
    }
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('of a pair with little in its log says so in words, and hostile names stay text', async () => {
    const attack = '<img src=x onerror=alert(1)>';
    const folder = folderWith({
      'x.csv': `time,pair,half,parameter,value\n2026-03-14T09:00:00Z,RO1,A,firmware,${attack}\n2026-03-14T09:10:00Z,RO1,B,firmware,=1+1\n`,
    });
    const { page, told } = await openPage(browser);
    await choose(page, join(folder, 'x.csv'));
    await page.waitForSelector('table.pairs');
    await goToView(page, 'fleet');
    await page.waitForSelector('fleet-view .verdict:has-text("observed for less than 30 days")');
    await page.click('#all-sections');
    await page.waitForSelector('#fleet-census:has-text("<img src=x")');
    await page.waitForSelector('fleet-view p:has-text("the logs show no bring-up")');
    expect(await page.locator('fleet-view chart-figure').count()).toBe(0);
    expect(await page.locator('main img').count()).toBe(0);
    expect(told).toEqual([]);
    await page.context().close();
  });
});
