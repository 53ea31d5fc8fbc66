import { join } from 'node:path';
import axe from 'axe-core';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { choose, download, folderWith, goToView, launchChromium, openPage } from '../support/open-page.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

const known =
  'time,unit,message\n2026-03-14T09:00:00Z,RO2,partner ready\n2026-03-14T09:10:00Z,RO2,light steady\n';
/** 3 of its 4 rows say what no rule knows: 75 %; of all 6 rows with those of the other file 50 %. */
const unknown = `time,unit,message
2026-03-14T09:00:00Z,RO1,partner ready
2026-03-14T09:10:00Z,RO1,mirror image broken
2026-03-14T09:20:00Z,RO1,mirror image broken
2026-03-14T09:30:00Z,RO1,mirror image whole
`;

describe('what is not known', () => {
  const files = {
    'ro1.csv': unknown,
    'ro2.csv': known,
    'site.yaml': 'services: { web: {} }\n',
    'void.csv': '',
  };

  test('stands above every verdict, with a button to where it is mended', async () => {
    const folder = folderWith(files);
    const { page, told } = await openPage(browser, { bypassCSP: true });
    await choose(page, ...Object.keys(files).map((name) => join(folder, name)));
    await page.waitForSelector('table.pairs .strip');
    const said = [
      ['3 of 6 rows were not recognised (50 %).', '#wordings'],
      ['site.yaml was refused: services is not a key here.', '#phrasebook'],
      ['One file was left out: void.csv.', '#left-out'],
    ] as const;
    for (const view of ['pairs', 'swap', 'diagnosis', 'fleet']) {
      await goToView(page, view);
      await page.waitForSelector(`${view}-view .verdict`);
      for (const [at, [words, section]] of said.entries()) {
        const line = page.locator('.not-known p').nth(at);
        expect(await line.textContent()).toContain(words);
        const above = await line.boundingBox();
        const verdict = await page.locator(`${view}-view .verdict`).boundingBox();
        expect((above?.y ?? Number.NaN) < (verdict?.y ?? Number.NaN)).toBe(true);
        await line.locator('button').click();
        await page.waitForSelector(`sources-view ${section}:focus`);
        await page.goBack();
        await page.waitForSelector(`${view}-view .verdict`);
      }
    }
    await page.addScriptTag({ content: axe.source });
    expect(
      await page.evaluate(
        "axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] }).then((r) => r.violations.map((v) => v.id))",
      ),
    ).toEqual([]);
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('is told of the pair: the share of the rows in the files that name it', async () => {
    const folder = folderWith(files);
    const { page } = await openPage(browser);
    await choose(page, join(folder, 'ro1.csv'), join(folder, 'ro2.csv'));
    await page.waitForSelector('table.pairs .strip');
    await goToView(page, 'diagnosis');
    await page.selectOption('#diagnosed', 'RO1');
    await page.waitForSelector(
      '.not-known-of-pair:text-is("In its files 3 of 4 rows were not recognised (75 %).")',
    );
    await page.selectOption('#diagnosed', 'RO2');
    await page.waitForSelector('diagnosis-view .verdict:has-text("RO2")');
    expect(await page.locator('.not-known-of-pair').count()).toBe(0);
    const { text } = await download(page, '#save-diagnosis');
    const [before = ''] = text.split('<p class="verdict">');
    expect(before).toContain('3 of 6 rows were not recognised (50 %).');
    await page.context().close();
  });

  test('is not there where all was recognised, and only then nothing needs attention', async () => {
    const folder = folderWith(files);
    const { page } = await openPage(browser);
    await choose(page, join(folder, 'ro2.csv'));
    await page.waitForSelector('.verdict:text-is("One pair; it needs no attention.")');
    expect(await page.locator('.not-known').count()).toBe(0);
    await page.reload();
    await choose(page, join(folder, 'ro1.csv'), join(folder, 'ro2.csv'));
    await page.waitForSelector(
      '.verdict:text-is("2 pairs; nothing that needs attention was found in the rows recognised.")',
    );
    await page.context().close();
  });
});
