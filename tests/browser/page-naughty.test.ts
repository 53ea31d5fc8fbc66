import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { naughty, naughtyLogs } from '../hostile/naughty-logs.ts';
import { choose, folderWith, goToView, launchChromium, openPage, viewsOf } from '../support/open-page.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

test('a published corpus of strings in every field stays text in every view of the page', async () => {
  const logs = naughtyLogs();
  const folder = folderWith(logs);
  const { page, told } = await openPage(browser);
  await choose(page, ...Object.keys(logs).map((name) => join(folder, name)));
  await page.waitForSelector('table.pairs');
  for (const view of await viewsOf(page)) {
    await goToView(page, view);
    if (view === 'diagnosis' || view === 'fleet') await page.waitForSelector(`${view}-view .verdict`);
    expect(
      await page.locator('main :is(script, img, iframe, object, embed, video, audio, svg script)').count(),
    ).toBe(0);
    expect(await page.locator('main a[href]:not([href^="#"])').count()).toBe(0);
  }
  // It is there, as it was written.
  await goToView(page, 'pairs');
  await page.click('pairs-view button.whole');
  const shown = (await page.locator('main').textContent()) ?? '';
  expect(naughty.filter((text) => /^<script>alert\(\d+\)/.test(text) && !shown.includes(text))).toEqual([]);
  expect(await page.title()).toBe('Pairs, Steadypair');
  expect(told).toEqual([]);
  await page.context().close();
}, 120_000);
