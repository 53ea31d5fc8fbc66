import { statSync, unlinkSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { writeBig } from '../../samples/big.ts';
import { builtPage, choose, folderWith, launchChromium, openPage } from '../support/open-page.ts';

let browser: Browser;
let big: string;
beforeAll(async () => {
  big = join(folderWith({ 'note.csv': 'time,unit,message\n' }), 'big.csv');
  await writeBig(big, '50');
  browser = await launchChromium();
});
afterAll(async () => {
  unlinkSync(big);
  await browser?.close();
});

const line = 'main > [role=status]:has-text("cut off")';
const said = (megabytes: string): string =>
  `big.csv (${megabytes} MB): the last reading was cut off: the tab crashed or ran out of memory. Read fewer files at a time, or use the command line.`;

/** Runs `act` as soon as the page has marked that it reads. */
async function onMark(page: Page, act: () => Promise<unknown>): Promise<void> {
  const marked = new Promise<void>((resolve) => {
    void page.exposeFunction('marked', () => {
      resolve();
    });
  });
  await page.evaluate(
    `const set = Storage.prototype.setItem; Storage.prototype.setItem = function (...given) { set.apply(this, given); marked(); };`,
  );
  await choose(page, big);
  await marked;
  await act();
}

async function openAgain(page: Page): Promise<Page> {
  const again = await page.context().newPage();
  await again.goto(`file://${builtPage()}`);
  await again.waitForSelector('#demo');
  return again;
}

test('a tab that died while it read is told of at the next opening, once', async () => {
  const { page } = await openPage(browser);
  const crashed = page.waitForEvent('crash');
  const session = await page.context().newCDPSession(page);
  await onMark(page, async () => {
    // What is killed does not answer.
    session.send('Page.crash').catch(() => undefined);
    await crashed;
  });
  const again = await openAgain(page);
  await again.waitForSelector(line);
  expect(await again.locator(line).allTextContents()).toEqual([said((statSync(big).size / 1e6).toFixed(1))]);
  const third = await openAgain(again);
  await third.waitForTimeout(500);
  expect(await third.locator(line).count()).toBe(0);
  await page.context().close();
});

test('a tab that is left while it reads, or still reads, or has read, is no tab that died', async () => {
  const { page } = await openPage(browser);
  await onMark(page, async () => {
    const other = await openAgain(page);
    await other.waitForTimeout(500);
    expect(await other.locator(line).count()).toBe(0);
    // Whether it has read to its end by now or not: it is left by its person.
    await page.goto('about:blank');
  });
  const again = await openAgain(page);
  await choose(again, join('samples', 'marrow-bay', 'bad-swap', 'ro3-events.log'));
  await again.waitForSelector('header nav');
  await again.reload();
  await again.waitForTimeout(500);
  expect(await again.locator(line).count()).toBe(0);
  expect(await again.evaluate('Object.keys(localStorage)')).toEqual([]);
  await page.context().close();
});
