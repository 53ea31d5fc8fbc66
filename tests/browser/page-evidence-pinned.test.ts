import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { goToSwap, launchChromium, openDemo, openPage } from '../support/open-page.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

const removed = 'table.steps tbody tr:has-text("Module removed, half B")';
const inserted = 'table.steps tbody tr:has-text("New module inserted, half B")';

async function title(page: Page): Promise<string | null> {
  return page.locator('side-notes .cited').textContent();
}

async function faults(page: Page): Promise<unknown> {
  await page.addScriptTag({ content: axe.source });
  return page.evaluate(
    "axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] }).then((r) => r.violations.map((v) => v.id + ': ' + v.nodes.map((n) => n.target).join(' | ')))",
  );
}

/** The words of what has the focus. */
async function focused(page: Page): Promise<unknown> {
  return page.evaluate('document.activeElement.textContent.trim()');
}

describe('evidence in the margin', () => {
  test('stays where it was pinned by a press, until another is pressed or Escape', async () => {
    const { page, told } = await openPage(browser);
    await openDemo(page);
    await goToSwap(page);
    await page.click(`${removed} lines-button button`);
    await page.hover(inserted);
    await page.waitForTimeout(300);
    expect(await title(page)).toBe('Module removed, half B');
    expect(await page.locator('lines-button [aria-pressed=true]').count()).toBe(1);
    await page.click(`${inserted} lines-button button`);
    expect(await title(page)).toBe('New module inserted, half B');
    await page.keyboard.press('Escape');
    await page.hover(removed);
    await page.waitForSelector('side-notes .cited:has-text("Module removed, half B")');
    expect(await page.locator('lines-button [aria-pressed=true]').count()).toBe(0);
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('is pinned, copied, gone through and closed by keyboard alone', async () => {
    const { page } = await openPage(browser, { permissions: ['clipboard-read', 'clipboard-write'] });
    await openDemo(page);
    await goToSwap(page);
    await page.focus(`${removed} lines-button button`);
    await page.keyboard.press('Enter');
    await expect.poll(() => focused(page)).toBe('Copy');
    await page.keyboard.press('Enter');
    await page.waitForSelector('side-notes [role=status]:has-text("copied")');
    const lines = await page
      .locator(`${removed} lines-button`)
      .evaluate((b) => ('lines' in b ? b.lines : []));
    const copied = String(await page.evaluate('navigator.clipboard.readText()'));
    // A heading, then each line with its file and number.
    const rows = copied.trimEnd().split('\n');
    expect(rows[0]).toBe('Module removed, half B');
    expect(rows).toHaveLength(1 + (Array.isArray(lines) ? lines.length : 0));
    expect(rows[1]).toMatch(/^\S+, line \d+: .*RO1.*/);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    expect(await focused(page)).toBe('Next');
    await page.keyboard.press('Enter');
    await page.waitForSelector('side-notes .cited:has-text("New module inserted, half B")');
    expect(await focused(page)).toBe('Next');
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('Enter');
    await page.waitForSelector('side-notes .cited:has-text("Module removed, half B")');
    await page.keyboard.press('Escape');
    expect(await page.locator(`${removed} lines-button button:focus`).count()).toBe(1);
    await page.context().close();
  });

  test('shows all lines of what is pinned, however many', async () => {
    const { page } = await openPage(browser);
    await openDemo(page);
    await goToSwap(page);
    const most = page.locator('lines-button:has-text("12 lines")').first();
    await most.locator('button').hover();
    await page.waitForSelector('side-notes :text("and 4 further lines")');
    await most.locator('button').click();
    await expect.poll(() => page.locator('side-notes .note').count()).toBe(12);
    await page.context().close();
  });

  test('pins the mark of the staff that is pressed', async () => {
    const { page } = await openPage(browser);
    await openDemo(page);
    await goToSwap(page);
    const said = page.locator('staff-figure svg text:has-text("B removed")').first();
    await said.scrollIntoViewIfNeeded();
    const word = await said.boundingBox();
    if (word === null) throw new Error('The staff has no word for the removal.');
    await page.mouse.click(word.x, word.y - 40);
    await page.waitForSelector('side-notes .cited:has-text("B removed")');
    await page.hover(inserted);
    await page.waitForTimeout(300);
    expect(await title(page)).toContain('B removed');
    await page.context().close();
  });
});

describe.each([
  ['light', 360],
  ['dark', 683],
] as const)('in a window without a margin, %s, %i pixels wide', (colorScheme, width) => {
  test('evidence opens under what was pressed, and only then', async () => {
    const options = { viewport: { width, height: 740 }, colorScheme, bypassCSP: true };
    const { page, told } = await openPage(browser, options);
    await openDemo(page);
    await goToSwap(page);
    await page.hover(removed);
    expect(await page.locator('side-notes').count()).toBe(0);
    await page.click(`${removed} lines-button button`);
    await page.waitForSelector(`${removed} + tr.opened side-notes .around`);
    expect(await page.evaluate('document.documentElement.scrollWidth <= innerWidth')).toBe(true);
    const box = await page.locator('tr.opened side-notes').boundingBox();
    expect((box?.x ?? -1) >= 0 && (box?.x ?? 0) + (box?.width ?? width + 1) <= width).toBe(true);
    expect(await faults(page)).toEqual([]);
    await page.click('side-notes .next');
    await page.waitForSelector(`${inserted} + tr.opened side-notes`);
    expect(await page.locator('side-notes').count()).toBe(1);
    expect(await focused(page)).toBe('Next');
    await page.keyboard.press('Escape');
    expect(await page.locator('side-notes, tr.opened').count()).toBe(0);
    expect(await page.locator(`${inserted} lines-button button:focus`).count()).toBe(1);
    expect(told).toEqual([]);
    await page.context().close();
  });
});
