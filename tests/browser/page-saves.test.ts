import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { choose, download, goToSwap, launchChromium, openDemo, openPage } from '../support/open-page.ts';

const demo = join('samples', 'marrow-bay');
let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

describe('what the page saves', () => {
  /** The demo's clean swap, verified by the command in its folder, and the same files chosen in the page. */
  async function both(files: readonly string[]): Promise<{ folder: string; page: Page }> {
    const folder = mkdtempSync(join(tmpdir(), 'steadypair-page-'));
    cpSync(join(demo, 'clean-swap'), folder, { recursive: true });
    const command = resolve('dist', 'steadypair.mjs');
    const yaml = ['--phrasebook', 'phrasebook.yaml', '--job', 'job.yaml', '--out', 'reports'];
    const { status, stderr } = spawnSync(process.execPath, [command, 'verify', ...files, ...yaml], {
      cwd: folder,
      encoding: 'utf8',
    });
    expect([status, stderr]).toEqual([0, '']);
    const { page } = await openPage(browser, { permissions: ['clipboard-read', 'clipboard-write'] });
    await choose(page, ...[...files, 'phrasebook.yaml', 'job.yaml'].map((name) => join(folder, name)));
    await page.waitForSelector('table.pairs .strip');
    await goToSwap(page);
    return { folder, page };
  }
  const logs = readdirSync(join(demo, 'clean-swap'))
    .filter((name) => /\.(csv|log|txt)$/.test(name))
    .sort();

  test('is byte for byte what the command writes for the same files and job', async () => {
    const { folder, page } = await both(logs);
    await page.click('.more-files summary');
    for (const button of ['#save-report', '#save-markdown']) {
      const { name, text } = await download(page, button);
      expect(text).toBe(readFileSync(join(folder, 'reports', name), 'utf8'));
      expect(text).toContain('WO-26-0314');
    }
    await page.click('#copy-markdown');
    await page.waitForSelector('save-bar [role=status]:has-text("clipboard")');
    expect(await page.evaluate('navigator.clipboard.readText()')).toBe(
      readFileSync(join(folder, 'reports', 'RO1-swap-2026-03-14.md'), 'utf8'),
    );
    await page.context().close();
  });

  test('carries what the person writes in the fields', async () => {
    const { page } = await both(logs);
    await page.fill('input[name=workOrder]', 'WO-77 <b>');
    await page.press('input[name=workOrder]', 'Tab');
    await page.fill('input[name=reviewer]', 'Shift engineer 9');
    await page.press('input[name=reviewer]', 'Tab');
    await expect
      .poll(() => page.evaluate("document.querySelector('report-form').model.job.reviewer"))
      .toBe('Shift engineer 9');
    const { text } = await download(page, '#save-report');
    expect(text).toContain('WO-77 &lt;b&gt;');
    expect(text).toContain('Shift engineer 9');
    await page.context().close();
  });

  test('prints verdict, steps, checks and evidence, without buttons', async () => {
    const { page } = await openPage(browser);
    await openDemo(page);
    await goToSwap(page);
    await page.waitForSelector('html.on-paper');
    const file = join(mkdtempSync(join(tmpdir(), 'print-')), 'page.pdf');
    writeFileSync(file, await page.pdf({ format: 'A4' }));
    const text = execFileSync('pdftotext', [file, '-'], { encoding: 'utf8' }).replace(/\s+/g, ' ');
    expect(text).toContain('Pair RO1 is verified');
    expect(text).toContain('Module removed, half B');
    expect(text).toContain('Ready partner for 30 minutes at the end');
    expect(text).not.toContain('Save report');
    expect(text).toContain('Evidence');
    await page.context().close();
  });
});
