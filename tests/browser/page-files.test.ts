import { unlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { writeBig } from '../../samples/big.ts';
import { dragFiles } from '../support/drag-files.ts';
import {
  choose,
  download,
  folderWith,
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

function ready(pair: string): string {
  return `time,unit,message\n2026-03-14T09:00:00Z,${pair},partner ready\n`;
}

/** Drags files over the middle of the window; gives what drops them there. */
async function drag(page: Page, ...paths: readonly string[]): Promise<() => Promise<void>> {
  const letGo = await dragFiles(page, { x: 600, y: 400 }, paths);
  await page.waitForSelector('.drop-line');
  return letGo;
}

async function drop(page: Page, ...paths: readonly string[]): Promise<void> {
  const letGo = await drag(page, ...paths);
  await letGo();
}

/** What axe finds wrong with the page as it is. */
async function faultsOf(page: Page): Promise<unknown> {
  await page.addScriptTag({ content: axe.source });
  return page.evaluate(
    "axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] }).then((r) => r.violations.map((v) => v.id + ': ' + v.nodes.map((n) => n.target).join(' | ')))",
  );
}

async function namesOf(page: Page): Promise<readonly string[]> {
  const all = await page.locator('table.given tbody th').allTextContents();
  return all.map((text) => text.trim());
}

test('dropped in any view are added with Enter, replaced if wished, removed and put back; what was typed stays', async () => {
  const { page, told } = await openPage(browser, { bypassCSP: true });
  const folder = folderWith({ 'ro9.csv': ready('RO9'), 'copy.csv': ready('RO9'), 'ro8.csv': ready('RO8') });
  await openDemo(page);
  await goToSwap(page);
  await page.fill('input[name=workOrder]', 'WO-77');
  await page.keyboard.press('Tab');
  await page.waitForSelector('swap-view .verdict');
  await page.evaluate('window.scrollTo(0, 900)');
  await page.waitForTimeout(500);
  const scrolled = await page.evaluate('Math.round(window.scrollY)');
  expect(scrolled).toBeGreaterThan(500);
  await drop(page, join(folder, 'ro9.csv'));
  await page.waitForSelector('#add-files:focus');
  await page.keyboard.press('Enter');
  // The view, what was typed and where the page was scrolled to live through it.
  await page.waitForSelector('reading-progress', { state: 'detached' });
  await expect.poll(() => page.evaluate('Math.round(window.scrollY)')).toBe(scrolled);
  expect(await page.inputValue('input[name=workOrder]')).toBe('WO-77');
  await goToView(page, 'pairs');
  await page.waitForSelector('table.pairs:has-text("RO9")');
  await goToView(page, 'sources');
  await drop(page, join(folder, 'copy.csv'));
  await page.waitForSelector('#add-files:focus');
  await page.screenshot({ path: join('out', 'screenshots', 'page-files-ask-light.png') });
  expect(await faultsOf(page)).toEqual([]);
  await page.click('#add-files');
  await page.waitForSelector('main :text("copy.csv has the same content as ro9.csv and is used once.")');
  writeFileSync(join(folder, 'ro9.csv'), ready('RO9').replace('ready', 'lost'));
  await page.setInputFiles('files-given input[data-how=add]', join(folder, 'ro9.csv'));
  await page.waitForSelector('main :text("ro9.csv replaces the file of that name given before")');
  await page.setInputFiles('files-given input[data-how=replace]', [
    join(folder, 'ro8.csv'),
    join(folder, 'ro9.csv'),
  ]);
  await page.waitForSelector('files-given:has-text("2 files,")');
  expect(await namesOf(page)).toEqual(['ro8.csv', 'ro9.csv']);
  expect(await faultsOf(page)).toEqual([]);
  await page.click('table.given tr:has-text("ro8.csv") button');
  await page.waitForSelector('#undo-files:has-text("Undo: Removed ro8.csv")');
  expect(await namesOf(page)).toEqual(['ro9.csv']);
  await page.click('#undo-files');
  await page.waitForSelector('files-given:has-text("2 files,")');
  // And back to the demo site.
  await page.click('#undo-files');
  await page.waitForSelector('files-given:has-text("15 files,")');
  await drop(page, join(folder, 'ro8.csv'));
  await page.waitForSelector('#add-files:focus');
  await page.keyboard.press('Escape');
  await page.waitForSelector('.ask', { state: 'detached' });
  expect(told).toEqual([]);
  await page.context().close();
});

test('a drop is taken though the element under it has just changed', async () => {
  const { page, told } = await openPage(browser);
  const folder = folderWith({ 'ro8.csv': ready('RO8') });
  await openDemo(page);
  const letGo = await drag(page, join(folder, 'ro8.csv'));
  await page.evaluate(
    "document.querySelector('main').append(Object.assign(document.createElement('div'), { id: 'new', style: 'position: fixed; inset: 0' }))",
  );
  await letGo();
  await page.waitForSelector('#add-files:focus');
  expect(told).toEqual([]);
  await page.context().close();
});

test('leaving asks only while something typed is in no file', async () => {
  const { page, told } = await openPage(browser);
  await openDemo(page);
  await goToView(page, 'swap');
  await page.reload();
  expect(told).toEqual([]);
  // The address asks for the record: the same files show it again.
  await page.click('#demo');
  await page.fill('swap-view input[name=technician]', 'Kim');
  await page.keyboard.press('Tab');
  await expect.poll(() => page.inputValue('input[name=technician]')).toBe('Kim');
  const leave = async (): Promise<void> => {
    // A dialog that is dismissed keeps the page.
    await page.evaluate('setTimeout(() => location.reload(), 0)');
    await page.waitForTimeout(300);
  };
  await expect
    .poll(async () => {
      await leave();
      return told.length;
    })
    .toBeGreaterThan(0);
  expect(told.every((said) => said.startsWith('dialog:'))).toBe(true);
  await goToView(page, 'sources');
  await download(page, '#save-session');
  const before = told.length;
  await page.reload();
  await page.waitForSelector('#demo');
  expect(told).toHaveLength(before);
  await page.context().close();
});

test('a session opens by dropping it, in another page, at the view it was saved in; a damaged one changes nothing', async () => {
  const { page, told } = await openPage(browser);
  await openDemo(page);
  await goToView(page, 'swap');
  const verdict = await page.textContent('swap-view .verdict');
  await goToView(page, 'sources');
  const session = await download(page, '#save-session');
  expect(session.name).toBe('marrow-bay-2026-06-02.steadypair-session.json');
  const folder = folderWith({
    [session.name]: session.text,
    'damaged.steadypair-session.json': session.text.slice(0, -50),
    'newer.steadypair-session.json': session.text.replace('steadypair/session/1', 'steadypair/session/9'),
  });
  const other = await openPage(browser);
  await drop(other.page, join(folder, session.name));
  await other.page.waitForSelector('sources-view .verdict');
  await other.page.waitForSelector('.session-note:has-text("Opened from a session saved on")');
  await goToView(other.page, 'swap');
  expect(await other.page.textContent('swap-view .verdict')).toBe(verdict);
  for (const [name, says] of [
    ['damaged', 'damaged or cut off'],
    ['newer', 'of another version'],
  ]) {
    await drop(other.page, join(folder, `${name}.steadypair-session.json`));
    await other.page.click('#add-files');
    await other.page.waitForSelector(`[role=alert]:has-text("${says}")`);
    expect(await other.page.textContent('swap-view .verdict')).toBe(verdict);
  }
  expect(told).toEqual([]);
  expect(other.told).toEqual([]);
  await page.context().close();
  await other.page.context().close();
});

test('a reading can be cancelled, and the page reloaded in the middle of one', async () => {
  const folder = folderWith({ 'ro9.csv': ready('RO9') });
  const big = join(folder, 'big.csv');
  await writeBig(big, '150');
  const { page, told } = await openPage(browser);
  await choose(page, join(folder, 'ro9.csv'));
  await page.waitForSelector('table.pairs:has-text("RO9")');
  await drop(page, big);
  await page.keyboard.press('Enter');
  await page.waitForSelector('reading-progress .amount:has-text(" MB, ")');
  expect(await page.textContent('reading-progress .amount')).toMatch(/^\d+\.\d of 1[4-6]\d\.\d MB, \d+ %/);
  await page.screenshot({ path: join('out', 'screenshots', 'page-files-reading-light.png') });
  await page.click('#cancel');
  await page.waitForSelector('table.pairs:has-text("RO9")');
  expect(await page.locator('table.pairs tbody tr').count()).toBe(1);
  // What was there still answers.
  await goToView(page, 'sources');
  await page.waitForSelector('wording-form');
  await drop(page, big);
  await page.keyboard.press('Enter');
  await page.waitForSelector('reading-progress .amount:has-text(" MB, ")');
  await page.reload();
  // The address asks for Sources: the next files are shown there.
  await page.click('#demo');
  await page.waitForSelector('sources-view wording-form');
  expect(told).toEqual([]);
  unlinkSync(big);
  await page.context().close();
});
