import { execFileSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  download,
  goToBadSwap,
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

/** What is printed, as one line of text. */
async function printed(page: Page): Promise<string> {
  const file = join(mkdtempSync(join(tmpdir(), 'print-')), 'page.pdf');
  writeFileSync(file, await page.pdf({ format: 'A4' }));
  return execFileSync('pdftotext', [file, '-'], { encoding: 'utf8' }).replace(/\s+/g, ' ');
}

describe('what is printed', () => {
  test('is the report of the swap, whatever is zoomed, folded or pinned', async () => {
    const { page } = await openPage(browser);
    await openDemo(page);
    await goToBadSwap(page);
    // Zoomed in: the first of the staff's buttons.
    await page.locator('staff-figure .choices button').first().click();
    await page.waitForSelector('#swap-steps [role=status]');
    await page.click('.reasons lines-button button');
    await page.waitForSelector('html.on-paper');
    const text = await printed(page);
    const { text: saved } = await download(page, '#save-report');
    const hashes = saved.match(/SHA-256 [0-9a-f]{64}/g) ?? [];
    expect(hashes.length).toBeGreaterThan(2);
    const packed = text.replaceAll(' ', '');
    for (const hash of hashes) expect(packed).toContain(hash.replace(' ', ''));
    for (const head of ['Sign-off', 'Signature', 'Evidence', 'Cautions', 'Files', 'Steps', 'Checks'])
      expect(text).toContain(head);
    // A title or a reason is broken where its cell ends: its words are told by the first of them.
    const checks = [...saved.matchAll(/<tr id="check-[^"]*"><th scope="row">((?:[^\s<]+ ?){1,4})/g)];
    expect(checks).toHaveLength(16);
    for (const [, words = ''] of checks) expect(text).toContain(words.trim());
    for (const button of ['Save report', 'Copy summary', 'Sections']) expect(text).not.toContain(button);
    await page.context().close();
  });

  test('is the view itself where it has no report, and what is typed stands in the report', async () => {
    const { page } = await openPage(browser);
    await openDemo(page);
    await goToSwap(page);
    await page.fill('input[name=technician]', 'Shift engineer 4');
    await page.press('input[name=technician]', 'Tab');
    await expect
      .poll(() => page.evaluate("document.querySelector('report-form').model.job.technician"))
      .toBe('Shift engineer 4');
    await page.waitForSelector('html.on-paper');
    expect(await printed(page)).toContain('Done by: Shift engineer 4');
    await goToView(page, 'pairs');
    const text = await printed(page);
    expect(text).toContain('need attention');
    expect(text).not.toContain('Sign-off');
    await page.context().close();
  });

  test('waits until the report is written', async () => {
    const { page } = await openPage(browser);
    await openDemo(page);
    await page.evaluate('window.print = () => { window.printed = document.documentElement.className; }');
    await goToView(page, 'swap');
    await page.keyboard.press('Control+p');
    await expect.poll(() => page.evaluate('window.printed')).toBe('on-paper');
    await page.context().close();
  });
});
