import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { choose, folderWith, launchChromium, openDemo, openPage } from '../support/open-page.ts';
import { fiftyPairs } from '../support/worst-of-fifty.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

/** Presses keys as a person does, and counts them; each letter typed is one. */
function keysOf(page: Page): {
  readonly press: (...keys: readonly string[]) => Promise<void>;
  readonly count: () => number;
} {
  let count = 0;
  return {
    press: async (...keys) => {
      for (const key of keys) {
        count += 1;
        await page.keyboard.press(key);
      }
    },
    count: () => count,
  };
}

async function give(page: Page, folder: string): Promise<void> {
  await choose(page, ...readdirSync(folder).map((name) => join(folder, name)));
  await page.waitForSelector('table.pairs .strip');
  // After the reading the focus is on what was read, so that the first Tab is in it.
  await page.waitForSelector('main:focus');
}

describe('from the drop, by keyboard alone', () => {
  test('a record is signed in at most 12 keys', async () => {
    const { page, told } = await openPage(browser);
    await give(page, join('samples', 'marrow-bay', 'clean-swap'));
    const { press, count } = keysOf(page);
    await press('2');
    await page.waitForSelector('swap-view .verdict:has-text("RO1")');
    await press('r', 'Tab', 'Tab', 'Tab');
    await page.waitForSelector('input[name=reviewer]:focus');
    // What was in the field is selected when the focus comes to it by Tab.
    await press('N', 'P', 'Tab', 's');
    await page.waitForSelector('#save-report:focus');
    // Saved at once: the report waits until the swap is judged with the new name.
    const [file] = await Promise.all([page.waitForEvent('download'), press('Enter')]);
    expect(readFileSync(await file.path(), 'utf8')).toMatch(/Reviewed by<\/dt><dd>NP</);
    expect(count()).toBeLessThanOrEqual(12);
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('why a pair will not sync is found and its evidence copied in at most 12 keys', async () => {
    const { page } = await openPage(browser, { permissions: ['clipboard-read', 'clipboard-write'] });
    await give(page, join('samples', 'marrow-bay', 'wont-sync'));
    const { press, count } = keysOf(page);
    await press('3');
    await page.waitForSelector('diagnosis-view .verdict:has-text("PRETREAT has had no ready partner")');
    await press('e', 'Enter');
    await page.waitForSelector('side-notes .copy:focus');
    await press('Enter');
    await page.waitForSelector('side-notes [role=status]:has-text("copied")');
    const copied = String(await page.evaluate('navigator.clipboard.readText()'));
    expect(copied).toMatch(/^A network link goes down\n/);
    expect(copied).toMatch(/\npretreat-network\.log, line \d+: .*down/);
    expect(count()).toBeLessThanOrEqual(12);
    await page.context().close();
  });

  test('the two worst of 50 pairs are named, alike in every view, and the review saved in at most 15 keys', async () => {
    const { page, told } = await openPage(browser);
    const folder = folderWith({ 'fifty.csv': fiftyPairs() });
    await give(page, folder);
    const worst = 'P07 (no ready partner) first, then P31 (critical finding)';
    expect(await page.textContent('pairs-view .verdict')).toBe(`50 pairs; 3 need attention: ${worst}.`);
    const { press, count } = keysOf(page);
    await press('4');
    await page.waitForSelector(`fleet-view p:has-text("Needs attention now: ${worst}")`);
    await press('s');
    await page.waitForSelector('button[data-name="fleet.html"]:focus');
    const [file] = await Promise.all([page.waitForEvent('download'), press('Enter')]);
    expect(file.suggestedFilename()).toBe('fleet.html');
    expect(count()).toBeLessThanOrEqual(15);
    await press('3');
    await page.waitForSelector('#diagnosed option:checked:has-text("P07, no ready partner")', {
      state: 'attached',
    });
    expect(told).toEqual([]);
    await page.context().close();
  });
});

const hash = (page: Page): Promise<string> => page.evaluate<string>('location.hash');

describe('the address', () => {
  test('says where the page is; back and forward restore pair, span, inputs and scroll', async () => {
    const { page, told } = await openPage(browser);
    expect(await page.title()).toBe('Steadypair');
    await openDemo(page);
    expect([await page.title(), await hash(page)]).toEqual(['Pairs, Steadypair', '#pairs']);
    await page.keyboard.press('2');
    // The worst pair that was swapped.
    await expect.poll(() => page.title()).toBe('RO3 swap of 17 Mar 2026, Steadypair');
    expect(await hash(page)).toBe('#swap?pair=RO3&swap=1');
    const steps = await page.evaluate('history.length');
    await page.selectOption('#swap', { index: 1 });
    await expect.poll(() => page.title()).toBe('RO1 swap of 14 Mar 2026, Steadypair');
    expect(await page.evaluate('history.length')).toBe(steps);
    await page.waitForSelector('staff-figure chart-figure svg');
    const span = '{ from: Date.UTC(2026, 2, 14, 9, 10), to: Date.UTC(2026, 2, 14, 9, 20) }';
    await page.evaluate(
      `document.querySelector('staff-figure').dispatchEvent(new CustomEvent('span', { bubbles: true, detail: ${span} }))`,
    );
    await page.evaluate('scrollTo(0, 700)');
    await expect.poll(() => page.evaluate('history.state.scroll')).toBe(700);
    const spanSaid = 'from=2026-03-14T09%3A10%3A00.000Z&to=2026-03-14T09%3A20%3A00.000Z';
    const record = `#swap?pair=RO1&swap=1&${spanSaid}`;
    expect(await hash(page)).toBe(record);

    // The chosen pair goes along.
    await page.keyboard.press('3');
    await expect.poll(() => page.title()).toBe('RO1 diagnosis, Steadypair');
    await page.keyboard.press('1');
    await page.waitForSelector('tr[data-pair=RO1][aria-current=true]');
    await page.keyboard.press('/');
    await page.keyboard.type('RO1');
    await expect.poll(() => page.locator('table.pairs tbody tr').count()).toBe(1);
    await page.click('tr[data-pair=RO1] .pair-links a:has-text("fleet")');
    await page.waitForSelector('#fleet-pairs tr[data-pair=RO1] a:focus');
    await page.selectOption('#grouped', 'model');
    await expect.poll(() => hash(page)).toBe(`#fleet?pair=RO1&${spanSaid}&by=model&show=RO1`);

    await page.goBack();
    await expect.poll(() => page.inputValue('input[type=search]')).toBe('RO1');
    await page.goBack();
    await page.waitForSelector('diagnosis-view .verdict:has-text("RO1")');
    await page.goBack();
    await expect.poll(() => hash(page)).toBe(record);
    await expect.poll(() => page.evaluate('scrollY')).toBe(700);
    await page.goForward();
    await expect.poll(() => page.title()).toBe('RO1 diagnosis, Steadypair');
    await page.goForward();
    await page.goForward();
    await page.waitForSelector('#grouped option:checked:has-text("model")', { state: 'attached' });
    expect(await page.title()).toBe('Fleet, Steadypair');
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('after a reload is said, and shown when the same files are given', async () => {
    const { page, told } = await openPage(browser);
    await openDemo(page);
    await page.keyboard.press('2');
    await page.waitForSelector('#swap');
    await page.selectOption('#swap', { index: 1 });
    await page.waitForSelector('staff-figure chart-figure svg');
    await page.evaluate('scrollTo(0, 500)');
    await expect.poll(() => page.evaluate('history.state.scroll')).toBe(500);
    await page.reload();
    await page.waitForSelector('#address-said:has-text("This address shows Swap record, pair RO1, swap 1.")');
    expect(await page.title()).toBe('Steadypair');
    await page.click('#demo');
    await page.waitForSelector('swap-view .verdict:has-text("RO1")');
    await expect.poll(() => page.evaluate('scrollY')).toBe(500);
    expect(await page.title()).toBe('RO1 swap of 14 Mar 2026, Steadypair');
    expect(await page.locator('#address-said').count()).toBe(0);
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('of what is not there, or hostile, falls back and says so', async () => {
    const { page, told } = await openPage(browser);
    await openDemo(page);
    const attack = encodeURIComponent('<img src=x onerror=alert(1)>');
    await page.evaluate(`location.hash = '#swap?pair=${attack}&swap=9'`);
    await page.waitForSelector('#address-said:has-text("no file read names pair <img src=x")');
    await page.waitForSelector('swap-view .verdict:has-text("RO3")');
    await page.evaluate(`location.hash = '#${attack}'`);
    await page.waitForSelector('#address-said:has-text("no view is named")');
    await page.waitForSelector('swap-view .verdict:has-text("RO3")');
    expect(await page.locator('main img').count()).toBe(0);
    expect(told).toEqual([]);
    await page.context().close();
  });
});

test('the keys are listed, and can be switched off', async () => {
  const { page, told } = await openPage(browser);
  await openDemo(page);
  await page.keyboard.press('?');
  await page.waitForSelector('dialog[open]:has-text("Swap record")');
  await page.keyboard.press('2');
  await page.keyboard.press('Space');
  await page.keyboard.press('Escape');
  await page.waitForSelector('dialog:not([open])', { state: 'attached' });
  await page.keyboard.press('4');
  await expect.poll(() => hash(page)).toBe('#pairs?keys=off');
  await page.click('#keys');
  await page.keyboard.press('Space');
  await page.keyboard.press('Escape');
  await page.keyboard.press('4');
  await expect.poll(() => hash(page)).toBe('#fleet');
  expect(told).toEqual([]);
  await page.context().close();
});
