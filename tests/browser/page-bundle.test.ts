import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Browser, Download, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { choose, goToSwap, goToView, launchChromium, openPage } from '../support/open-page.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

/** What the browser saves when a button is pressed, in its order. */
async function downloads(page: Page, button: string, count: number): Promise<readonly Download[]> {
  const files: Download[] = [];
  const all = new Promise<void>((done) => {
    page.on('download', (file) => {
      files.push(file);
      if (files.length === count) done();
    });
  });
  await page.click(button);
  await all;
  page.removeAllListeners('download');
  return files;
}

test('the bundle saved from the page is the command’s, byte for byte, and the page reads it back', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'steadypair-page-bundle-'));
  cpSync(join('samples', 'marrow-bay', 'clean-swap'), folder, { recursive: true });
  const logs = readdirSync(folder)
    .filter((name) => name.startsWith('ro1'))
    .sort();
  const command = resolve('dist', 'steadypair.mjs');
  const yaml = ['--phrasebook', 'phrasebook.yaml', '--job', 'job.yaml', '--pair', 'RO1'];
  const run = (...args: readonly string[]) =>
    spawnSync(process.execPath, [command, 'verify', ...logs, ...yaml, ...args], {
      cwd: folder,
      encoding: 'utf8',
    });
  expect([run('--bundle', 'plain.zip').stderr, run('--bundle', 'masked.zip', '--mask').stderr]).toEqual([
    '',
    '',
  ]);

  const { page, told } = await openPage(browser);
  await choose(page, ...[...logs, 'phrasebook.yaml', 'job.yaml'].map((name) => join(folder, name)));
  await page.waitForSelector('table.pairs .strip');
  await goToSwap(page);
  await page.click('.more-files summary');
  const [plain] = await downloads(page, '#save-bundle', 1);
  expect(plain?.suggestedFilename()).toBe('RO1-swap-bundle.zip');
  const bytes = readFileSync((await plain?.path()) ?? '');
  expect(bytes.equals(readFileSync(join(folder, 'plain.zip')))).toBe(true);

  await page.check('#mask-names');
  const [masked, key] = await downloads(page, '#save-bundle', 2);
  expect(key?.suggestedFilename()).toBe('RO1-swap-bundle.key.json');
  expect(readFileSync((await masked?.path()) ?? '').equals(readFileSync(join(folder, 'masked.zip')))).toBe(
    true,
  );
  expect(readFileSync((await key?.path()) ?? '', 'utf8')).toBe(
    readFileSync(join(folder, 'masked.key.json'), 'utf8'),
  );
  await page.context().close();

  const again = await openPage(browser);
  await choose(again.page, join(folder, 'plain.zip'));
  await again.page.waitForSelector('table.pairs .strip');
  await goToSwap(again.page);
  expect(await again.page.textContent('swap-view .verdict')).toMatch(/^Pair RO1 is verified/);
  expect(await again.page.inputValue('input[name=workOrder]')).toBe('WO-26-0314');
  await goToView(again.page, 'sources');
  expect(await again.page.textContent('sources-view')).toContain('4 files, 12,204 rows');
  expect([...told, ...again.told]).toEqual([]);
  await again.page.context().close();
});
