import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  choose,
  folderWith,
  goToView,
  launchChromium,
  openDemo,
  openPage,
  viewsOf,
} from '../support/open-page.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

test('a file that is dropped beside the drop target does not take the place of the page', async () => {
  const { page } = await openPage(browser);
  await openDemo(page);
  const isKept = (kind: string): Promise<unknown> =>
    page.evaluate(
      `document.body.dispatchEvent(new DragEvent('${kind}', { bubbles: true, cancelable: true })) === false`,
    );
  expect([await isKept('dragover'), await isKept('drop')]).toEqual([true, true]);
  await page.context().close();
});

describe('the evidence in the margin', () => {
  test('goes when another pair is chosen, and when the files are read again', async () => {
    const { page, told } = await openPage(browser);
    await openDemo(page);
    await goToView(page, 'diagnosis');
    await page.hover('tr:has(th:text-is("for"))');
    await page.waitForSelector('side-notes .note');
    await page.selectOption('#diagnosed', 'RO1');
    await page.waitForSelector('side-notes:not(:has(.note))');
    await goToView(page, 'sources');
    await page.hover('wording-form tbody tr');
    await page.waitForSelector('side-notes .note');
    // Away from what would be cited anew.
    await page.mouse.move(0, 0);
    await page.locator('button:has-text("Read without it")').dispatchEvent('click');
    await page.waitForSelector('sources-view:has-text("Only the built-in phrasebook")');
    await page.waitForSelector('side-notes:not(:has(.note))');
    expect(told).toEqual([]);
    await page.context().close();
  });
});

describe('of two phrasebooks', () => {
  const files = {
    'ro1.csv': 'time,unit,message\n2026-03-14T09:00:00Z,RO1,partner ready\n2026-03-14T09:10:00Z,RO1,odd\n',
    'a.yaml': 'name: first\n',
    'b.yaml': 'name: second\n',
  };

  test('one is used, the other is told of, and what is taught is used', async () => {
    const folder = folderWith(files);
    const { page, told } = await openPage(browser);
    await choose(page, ...Object.keys(files).map((name) => join(folder, name)));
    await page.waitForSelector('table.pairs');
    await goToView(page, 'sources');
    await page.waitForSelector('sources-view:has-text("a.yaml: it is a phrasebook beside b.yaml")');
    await page.selectOption('select[aria-label="Meaning of odd"]', 'note');
    await page.click('#apply-rules');
    await page.waitForSelector('sources-view .verdict:has-text("all 2 rows were recognised")');
    await page.waitForSelector('sources-view:has-text("In use: b.yaml")');
    expect(told).toEqual([]);
    await page.context().close();
  });
});

test('what turns the direction of the text is seen where a file is left out', async () => {
  const { page } = await openPage(browser);
  await page.setInputFiles('start-view input[type=file]:not([webkitdirectory])', {
    name: 'bad\u202egnp.yaml',
    mimeType: 'text/yaml',
    buffer: Buffer.from('messages: 5\n'),
  });
  await page.waitForSelector('#left-out li:has-text("messages is 5")');
  expect(await page.textContent('#left-out li')).toContain('bad‹202E›gnp.yaml');
  await page.context().close();
});

test('one healthy pair with a name of 200 letters scrolls no view sideways', async () => {
  const name = 'V'.repeat(200);
  const folder = folderWith({
    'long.csv': `time,unit,message\n2026-03-14T09:00:00Z,${name}-A,partner ready\n2026-03-14T09:10:00Z,${name}-A,light steady\n`,
  });
  const { page } = await openPage(browser);
  await choose(page, join(folder, 'long.csv'));
  await page.waitForSelector('.verdict:has-text("One pair; it needs no attention.")');
  for (const view of await viewsOf(page)) {
    await goToView(page, view);
    await page.waitForSelector(`${view}-view .verdict`);
    expect([view, await page.evaluate('document.documentElement.scrollWidth')]).toEqual([view, 1366]);
  }
  await page.context().close();
});
