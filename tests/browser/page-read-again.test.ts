import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, test } from 'vitest';
import { choose, folderWith, goToView, launchChromium, openDemo, openPage } from '../support/open-page.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

describe('files that no folder is followed for', () => {
  test('stand at their newest row; the demo has no swap that runs', async () => {
    const { page } = await openPage(browser);
    await openDemo(page);
    await page.keyboard.press('6');
    await page.waitForSelector('now-view:has-text("the clock stands at the newest row that was read")');
    await page.click('#read-again');
    await page.waitForSelector('table.pairs, now-view h1');
    await page.context().close();
  });

  test('are read again where the browser lets, else it is said in a sentence what to choose', async () => {
    const { page } = await openPage(browser);
    await page.evaluate('Object.defineProperty(window, "showDirectoryPicker", { value: undefined })');
    const begin = 'time,unit,message\n2026-03-14T08:00:00Z,RO1-A,role active\n';
    const folder = folderWith({ 'a.csv': begin });
    await choose(page, join(folder, 'a.csv'));
    await page.waitForSelector('table.pairs');
    await goToView(page, 'now');
    await page.waitForSelector('now-view:has-text("This browser cannot follow a folder.")');
    await page.waitForTimeout(1100);
    writeFileSync(
      join(folder, 'a.csv'),
      `${begin}2026-03-14T08:00:00Z,RO1-B,role standby\n2026-03-14T08:30:00Z,RO1-B,module removed\n`,
    );
    await page.click('#read-again');
    await page.waitForSelector(
      'p[role=status]:has-text("a.csv changed since it was chosen, and this browser does not let a page read it again: press Choose the files again.")',
    );
    await page.setInputFiles('.follow-bar input[type=file]', join(folder, 'a.csv'));
    await page.waitForSelector('now-view h1:has-text("waiting for a module in half B")');
    await page.context().close();
  });
});
