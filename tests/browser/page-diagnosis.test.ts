import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { choose, download, goToView, launchChromium, openDemo, openPage } from '../support/open-page.ts';

const demo = join('samples', 'marrow-bay');
let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

describe("Won't sync", () => {
  test('answers for the pair that is worst now, and for the one that is chosen', async () => {
    const { page, told } = await openPage(browser);
    await openDemo(page);
    await goToView(page, 'diagnosis');
    await page.waitForSelector('diagnosis-view .verdict:has-text("PRETREAT has had no ready partner")');
    await page.waitForSelector('diagnosis-view h3:has-text("1. A network link goes down (link-down)")');
    await page.hover('tr:has(th:text-is("for"))');
    await page.waitForSelector('side-notes:has-text("pretreat-network.log")');
    // Its log ended months before the others, so that it comes after the pair that is without a partner now.
    await page.selectOption('#diagnosed', { index: 1 });
    await page.waitForSelector('diagnosis-view .verdict:has-text("RO3 has had no ready partner")');
    await page.selectOption('#diagnosed', 'RO1');
    await page.waitForSelector('diagnosis-view:not(:has(table.ladder)) .verdict');
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('saves the report that the command writes, byte for byte', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'steadypair-page-'));
    cpSync(join(demo, 'wont-sync'), folder, { recursive: true });
    const logs = readdirSync(folder).filter((name) => /\.(csv|log|txt)$/.test(name));
    const yaml = ['--phrasebook', 'phrasebook.yaml', '--out', 'reports'];
    const command = [resolve('dist', 'steadypair.mjs'), 'diagnose', ...logs.sort(), ...yaml];
    const { status, stderr } = spawnSync(process.execPath, command, { cwd: folder, encoding: 'utf8' });
    expect([status, stderr]).toEqual([1, '']);
    const { page } = await openPage(browser);
    await choose(page, ...[...logs, 'phrasebook.yaml'].map((name) => join(folder, name)));
    await page.waitForSelector('table.pairs .strip');
    await goToView(page, 'diagnosis');
    await page.waitForSelector('#save-diagnosis');
    const { name, text } = await download(page, '#save-diagnosis');
    expect(text).toBe(readFileSync(join(folder, 'reports', name), 'utf8'));
    await page.context().close();
  });
});
