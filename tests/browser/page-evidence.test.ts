import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { goToSwap, launchChromium, openDemo, openPage } from '../support/open-page.ts';

const demo = join('samples', 'marrow-bay');
let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

describe('evidence', () => {
  test('stands in the margin with file, line and the lines around it, as they are in the file', async () => {
    const { page } = await openPage(browser);
    await openDemo(page);
    await goToSwap(page);
    await page.hover('table.steps tbody tr:has-text("Module removed, half B")');
    await page.waitForSelector('side-notes .note .around');
    const note = page.locator('side-notes .note').first();
    const [, name = '', line = ''] =
      /^(.*), line (\d+)$/.exec((await note.locator('figcaption').textContent()) ?? '') ?? [];
    const lines = readFileSync(join(demo, 'clean-swap', name), 'utf8').split(/\r?\n/);
    const at = Number(line);
    expect(
      await note
        .locator('li')
        .allTextContents()
        .then((all) => all.map((text) => text.trim())),
    ).toEqual(lines.slice(at - 3, at + 2).map((text) => text.trim()));
    expect((await note.locator('.cited-line').textContent())?.trim()).toBe(lines[at - 1]?.trim());
    await page.context().close();
  });

  test('follows the span that is marked on the staff, and so do the steps', async () => {
    const { page } = await openPage(browser);
    await openDemo(page);
    await goToSwap(page);
    const all = await page.locator('table.steps tbody tr').count();
    const picture = page.locator('staff-stage .ground');
    await picture.scrollIntoViewIfNeeded();
    const box = await picture.boundingBox();
    if (box === null) throw new Error('The staff is not drawn.');
    await page.keyboard.down('Shift');
    await page.mouse.move(box.x + box.width * 0.15, box.y + box.height * 0.4);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width * 0.3, box.y + box.height * 0.5, { steps: 8 });
    await page.mouse.up();
    await page.keyboard.up('Shift');
    await page.waitForSelector('side-notes .cited:has-text("What is marked")');
    await page.waitForSelector(`[role=status]:has-text("of ${all} steps")`);
    const steps = await page.locator('table.steps tbody tr').count();
    expect(steps).toBeGreaterThan(0);
    expect(steps).toBeLessThan(all);
    await page.click('button:has-text("Zoom to span")');
    await page.waitForSelector('staff-figure:not(:has-text("Marked:"))');
    expect(await page.locator('table.steps tbody tr').count()).toBe(steps);
    await page.click('button:has-text("Fit log")');
    await expect.poll(() => page.locator('table.steps tbody tr').count()).toBe(all);
    await page.context().close();
  });

  test('follows the mark that is pointed at', async () => {
    const { page } = await openPage(browser);
    await openDemo(page);
    await goToSwap(page);
    const said = page.locator('staff-figure svg text:has-text("B removed")').first();
    await said.scrollIntoViewIfNeeded();
    const word = await said.boundingBox();
    if (word === null) throw new Error('The staff has no word for the removal.');
    // The word stands right of its tick, from which a leader rises.
    await page.mouse.move(word.x, word.y - 40);
    await page.waitForSelector('side-notes .cited:has-text("B removed")');
    await page.context().close();
  });
});
