import { execFileSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import axe from 'axe-core';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { prepareHtml } from '../../src/report/prepare-html.ts';
import type { WorkSheet } from '../../src/vocabulary.ts';
import { longSheet } from '../support/long-sheet.ts';
import { launchChromium } from '../support/open-page.ts';
import { morning, sheetOfFiles, twoDays } from '../support/prepared.ts';

let browser: Browser;
let sheet: WorkSheet;

beforeAll(async () => {
  browser = await launchChromium();
  sheet = await sheetOfFiles(twoDays(morning));
});
afterAll(() => browser?.close());

/** The text of each page that a sheet prints. */
async function pagesOf(of: WorkSheet, format: string): Promise<readonly string[]> {
  const page = await browser.newPage();
  await page.setContent(prepareHtml(of, { zone: 'Europe/Lisbon', version: '0.0.0' }));
  const file = join(mkdtempSync(join(tmpdir(), 'print-')), 'sheet.pdf');
  writeFileSync(file, await page.pdf({ format, preferCSSPageSize: false }));
  await page.close();
  const text = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' });
  // Each page ends with a form feed.
  return text.split('\f').slice(0, -1);
}

describe.each(['A4', 'Letter'])('the work sheet on %s', (format) => {
  test('has two pages: what the work rests on, and the work', async () => {
    const pages = await pagesOf(sheet, format);
    expect(pages).toHaveLength(2);
    const [before = '', work = ''] = pages;
    for (const text of ['Half B of RO1 was standby', 'ready for a swap', 'Evidence', 'SHA-256'])
      expect(before).toContain(text);
    for (const text of ['Clock', 'Initials', 'Hold point', 'five minutes', 'Sign-off', 'Signature'])
      expect(work).toContain(text);
    expect(work.replace(/\s+/g, ' ')).toContain('check at the cabinet which half is standby');
  });

  test('has two pages where everything is as long as it gets', async () => {
    const pages = await pagesOf(longSheet(sheet), format);
    expect(pages).toHaveLength(2);
    expect(pages[0]).toContain('Evidence');
    expect(pages[1]).toContain('Signature');
  });
});

test.each(['light', 'dark'] as const)('the work sheet on the screen passes axe, %s', async (colorScheme) => {
  const context = await browser.newContext({ colorScheme, offline: true, bypassCSP: true });
  const page = await context.newPage();
  await page.setContent(prepareHtml(sheet, { zone: 'Europe/Lisbon', version: '0.0.0' }));
  await page.addScriptTag({ content: axe.source });
  const found: unknown = await page.evaluate(
    "axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] }).then((r) => r.violations.map((v) => v.id + ': ' + v.nodes.map((n) => n.target).join(' ')))",
  );
  expect(found).toEqual([]);
  expect(await page.evaluate('document.documentElement.scrollWidth <= innerWidth')).toBe(true);
  await context.close();
});
