import { join } from 'node:path';
import axe from 'axe-core';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { choose, folderWith, goToView, launchChromium, openPage } from '../support/open-page.ts';
import { steadypair } from '../support/run-command.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

test('what the command remarks on the phrasebook and doubts in a file stands under Sources', async () => {
  const phrasebook = [
    'files:',
    '  - { match: "absent-*.log", layout: lines }',
    'messages:',
    '  - { when: "never said", signal: restart }',
  ].join('\n');
  const log = Array.from(
    { length: 12 },
    (_, i) => `14.03.2026 07:00:${10 + i} <weir-4-${i % 2 === 0 ? 'east' : 'west'}> light steady\n`,
  ).join('');
  const folder = folderWith({ 'site.yaml': phrasebook, 'weir.log': log });
  const { page } = await openPage(browser);
  await choose(page, join(folder, 'site.yaml'), join(folder, 'weir.log'));
  await page.waitForSelector('wording-form');
  const { out } = await steadypair(
    'inspect',
    join(folder, 'weir.log'),
    '--phrasebook',
    join(folder, 'site.yaml'),
    '--json',
  );
  const { findings } = JSON.parse(out);
  const statements: readonly string[] = findings.map((f: { statement: string }) =>
    f.statement.replaceAll(`${folder}/`, ''),
  );
  expect(statements.join('\n')).toContain('never said');
  expect(statements.join('\n')).toContain('absent-*.log');
  expect(statements.join('\n')).toContain('unit not known');
  const shown = ((await page.locator('sources-view').textContent()) ?? '').replaceAll(/\s+/g, ' ');
  // The page says its own control where the command says an option.
  for (const statement of statements)
    expect(shown).toContain(
      statement
        .replace(/^weir\.log: /, '')
        .replace(/ (?:Set time\.zone|If it is a unit|Add the wording|Or pass --).*$/, '')
        .replaceAll(/\s+/g, ' '),
    );
  expect(shown).not.toMatch(/(?<![\w-])--[a-z]/);
  await page.context().close();
});

test('where no stamp is found the page says so, and offers no draft', async () => {
  const folder = folderWith({ 'weir.log': 'the gate holds\nthe gate holds\n' });
  const { page } = await openPage(browser);
  await choose(page, join(folder, 'weir.log'));
  await page.waitForSelector('sources-view p:has-text("No timestamp was found in any file")');
  expect(await page.locator('#save-draft').isDisabled()).toBe(true);
  await page.context().close();
});

test('two hundred files are a line each, those with most to teach first, and axe finds nothing', async () => {
  const files = Object.fromEntries(
    Array.from({ length: 200 }, (_, i) => {
      const odd = i === 150 ? `2026-03-14T10:00:00Z,RO1-A,odd thing\n` : '';
      return [
        `day-${String(i).padStart(3, '0')}.csv`,
        // Files with the same content are used once.
        `time,unit,message\n2026-03-14T09:0${Math.floor(i / 60)}:${String(i % 60).padStart(2, '0')}Z,RO1-A,light steady\n${odd}`,
      ];
    }),
  );
  const folder = folderWith(files);
  const { page, told } = await openPage(browser, { bypassCSP: true });
  await choose(page, ...Object.keys(files).map((name) => join(folder, name)));
  await page.waitForSelector('table.pairs');
  await goToView(page, 'sources');
  await page.waitForSelector('wording-form table');
  await page.waitForSelector(
    'file-fold:first-of-type summary:has-text("day-150.csv: 2 rows, 1 not recognised")',
  );
  await page.click('file-fold:first-of-type summary');
  await page.waitForSelector('file-fold:first-of-type code:has-text("SHA-256")');
  await page.addScriptTag({ content: axe.source });
  const found = await page.evaluate(
    "axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] }).then((r) => r.violations.map((v) => v.id + ': ' + v.nodes.map((n) => n.target).join(' ')))",
  );
  expect(found).toEqual([]);
  await page.click('.known-files > details > summary:has-text("199 of 200 files: all 199 rows recognised")');
  await expect.poll(() => page.locator('file-fold').count()).toBe(200);
  expect(told).toEqual([]);
  await page.context().close();
});
