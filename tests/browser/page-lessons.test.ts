import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { choose, folderWith, goToView, launchChromium, openPage } from '../support/open-page.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

/** What the page calls the reading that is shown: another after every reading. */
async function countReadings(page: Page): Promise<() => Promise<number>> {
  await page.evaluate(
    `globalThis.readings = 0; new MutationObserver((all) => { for (const { addedNodes } of all) for (const node of addedNodes) if (node.localName === 'reading-progress') readings += 1; }).observe(document.body, { childList: true, subtree: true });`,
  );
  return async () => Number(await page.evaluate('readings'));
}

async function teach(page: Page, words: string, fields: Readonly<Record<string, string>>): Promise<void> {
  await page.fill('wording-form input[name=find]', words);
  await page.waitForSelector('#found:has-text("shown: 1 message")');
  for (const [name, value] of Object.entries(fields))
    await page.selectOption(`table.messages select[name=${name}]`, value);
}

/** The row of a wording in the table, recognised or not. */
async function meaningOf(page: Page, words: string): Promise<string> {
  await page.check('wording-form input[name=all]');
  await page.fill('wording-form input[name=find]', words);
  return ((await page.locator('table.messages td.meaning > .second').first().textContent()) ?? '').trim();
}

/** Sixty records in ten minutes of one half, some of several lines; no line has a year or a unit. */
function kiln(half: 'a' | 'b'): string {
  const first = half === 'a' ? 'I carry the plant now' : 'I shadow the plant now';
  const told: Readonly<Record<number, string>> = {
    0: first,
    10: 'my twin fell out of step\n    cause 17\n    at block 4',
    20: 'my twin is in step after 61 s',
  };
  return Array.from({ length: 60 }, (_, i) => {
    const clock = `07:${String(Math.floor(i / 6)).padStart(2, '0')}:${String((i % 6) * 10).padStart(2, '0')}`;
    return `Mar 14 ${clock} ${i % 5 === 0 ? 'W' : 'I'} ${told[i] ?? `copied ${(i * 7) % 50} blocks to my twin`}\n`;
  }).join('');
}

describe('lessons', () => {
  test('say unit, records and year of files that have none, and are read with at once', async () => {
    const folder = folderWith({ 'kiln-7-a.log': kiln('a'), 'kiln-7-b.log': kiln('b') });
    const { page, told } = await openPage(browser);
    await choose(page, join(folder, 'kiln-7-a.log'), join(folder, 'kiln-7-b.log'));
    await page.waitForSelector('wording-form');
    const readings = await countReadings(page);
    for (const half of ['a', 'b']) {
      const form = page.locator('file-rule', { hasText: `kiln-7-${half}.log` });
      await form.locator('summary').click();
      expect(await form.locator('input[name=record]').inputValue()).not.toBe('');
      await form.locator('input[name="time.year"]').fill('2025');
      expect(await form.locator('input[name=unit]').inputValue()).toBe(`KILN_7-${half.toUpperCase()}`);
      await form.locator('input[name=unit]').fill(`KILN7-${half.toUpperCase()}`);
      await form.locator('button[type=submit]').click();
    }
    await teach(page, 'fell out of step', { signal: 'partner-ready', value: 'no' });
    await teach(page, 'in step after', { signal: 'partner-ready', value: 'yes' });
    await page.click('#apply-rules');
    // Of 60 records of each half, one says that the twin fell out of step and one that it is in step again.
    await page.waitForSelector('sources-view .verdict:has-text("2 files were read; 116 of 120 rows")');
    expect(await readings()).toBe(1);
    expect(await meaningOf(page, 'fell out of step')).toMatch(
      /^Read as partner-ready: no, by messages\[[01]\]$/,
    );
    expect(await meaningOf(page, 'in step after')).toMatch(
      /^Read as partner-ready: yes, by messages\[[01]\]$/,
    );
    await goToView(page, 'pairs');
    await page.waitForSelector('table.pairs:has-text("KILN7")');
    await page.waitForSelector('header .period:has-text("14 Mar 2025")');
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('say something of the half that does not speak', async () => {
    const log = ['I act', 'the far one was drawn', 'the far one was drawn']
      .map((says, i) => `2026-03-14T09:0${i}:00Z RO1-A: ${says}\n2026-03-14T09:0${i}:30Z RO1-B: idle\n`)
      .join('');
    const folder = folderWith({ 'ro1.log': log });
    const { page, told } = await openPage(browser);
    await choose(page, join(folder, 'ro1.log'));
    await page.waitForSelector('table.pairs, wording-form');
    await goToView(page, 'sources');
    await page.fill('wording-form input[name=find]', 'drawn');
    await page.selectOption('table.messages select[name=signal]', 'removed');
    await page.selectOption('table.messages select[name=whose]', 'other');
    await page.click('details.pattern summary');
    await page.waitForSelector('details.pattern:has-text("the half of RO1 that is not A: removed")');
    const readings = await countReadings(page);
    await page.click('#apply-rules');
    await page.waitForSelector('sources-view .verdict:has-text("4 of 6 rows")');
    expect(await readings()).toBe(1);
    expect(await meaningOf(page, 'drawn')).toBe('Read as removed, by messages[0]');
    await goToView(page, 'swap');
    // Half A says it, so it was half B.
    await page.waitForSelector('swap-view table.steps td:has-text("Module removed, half B")');
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('say which units are the halves of a pair, from the name of one of them', async () => {
    const line = (i: number, unit: string): string => `14.03.2026 07:00:0${i} <${unit}> light steady\n`;
    const folder = folderWith({
      'weir.log': ['weir-4-east', 'weir-4-west', 'weir-4-east', 'weir-4-west']
        .map((u, i) => line(i, u))
        .join(''),
    });
    const { page } = await openPage(browser);
    await choose(page, join(folder, 'weir.log'));
    await page.waitForSelector('wording-form');
    await page.selectOption('select[aria-label="Meaning of unit <weir-4-east>"]', 'half');
    await page.click('details.pattern summary');
    expect(await page.inputValue('input[name=pattern]')).toBe('^<(?<pair>weir-4)-(?<half>[\\pL\\d]+)>$');
    await page.waitForSelector('.said:has-text("Matches 4 rows.")');
    await page.click('#apply-rules');
    await page.waitForSelector('sources-view .verdict:has-text("all 4 rows were recognised")');
    await page.context().close();
  });

  test('are given, read with and undone with the keyboard alone', async () => {
    const rows = ['partner ready', 'mirror image broken', 'mirror image broken'];
    const folder = folderWith({
      'ro1.csv': `time,unit,message\n${rows.map((says, i) => `2026-03-14T09:0${i}:00Z,RO1,${says}\n`).join('')}`,
    });
    const { page, told } = await openPage(browser);
    await choose(page, join(folder, 'ro1.csv'));
    await page.waitForSelector('table.pairs');
    const press = async (...keys: readonly string[]): Promise<void> => {
      for (const key of keys) await page.keyboard.press(key);
    };
    const tabTo = async (selector: string): Promise<void> => {
      for (let tabs = 0; tabs < 40; tabs += 1) {
        await press('Tab');
        if (await page.evaluate(`document.activeElement?.matches(${JSON.stringify(selector)})`)) return;
      }
      throw new Error(`Tab does not come to ${selector}.`);
    };
    await page.focus('header .name');
    await tabTo('a[href="#sources"]');
    await press('Enter');
    await page.waitForSelector('wording-form table');
    await tabTo('wording-form input[name=find]');
    await page.keyboard.type('mirror');
    await tabTo('select[name=signal]');
    await page.keyboard.type('partner-r');
    await tabTo('select[name=value]');
    await page.keyboard.type('no');
    await page.waitForSelector('#effect:has-text("With this rule, 3 of 3 rows would be recognised; now 1.")');
    await tabTo('#apply-rules');
    await press('Enter');
    await page.waitForSelector('sources-view .verdict:has-text("all 3 rows were recognised")');
    await page.waitForSelector('#undo');
    await tabTo('#undo');
    await press('Enter');
    await page.waitForSelector('sources-view .verdict:has-text("2 of 3 rows")');
    expect(told).toEqual([]);
    await page.context().close();
  });
});
