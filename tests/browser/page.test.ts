import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import axe from 'axe-core';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { goToSwap, goToView, launchChromium, openDemo, openPage, viewsOf } from '../support/open-page.ts';

const shots = join('out', 'screenshots');
let browser: Browser;

beforeAll(async () => {
  mkdirSync(shots, { recursive: true });
  browser = await launchChromium();
});
afterAll(() => browser?.close());

describe.each(['light', 'dark'] as const)('the page, %s', (colorScheme) => {
  test('shows every view without a request, a word on the console or a fault that axe finds', async () => {
    const { page, told } = await openPage(browser, { colorScheme, bypassCSP: true });
    const look = async (name: string): Promise<void> => {
      expect(await page.evaluate('document.documentElement.scrollWidth <= innerWidth')).toBe(true);
      await page.screenshot({ path: join(shots, `page-${name}-${colorScheme}.png`), fullPage: true });
      if ((await page.evaluate('typeof axe')) === 'undefined')
        await page.addScriptTag({ content: axe.source });
      const found: unknown = await page.evaluate(
        "axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] }).then((r) => r.violations.map((v) => v.id + ': ' + v.nodes.map((n) => n.target + ' ' + n.html.slice(0, 120)).join(' | ')))",
      );
      expect([name, found]).toEqual([name, []]);
    };
    await look('start');
    await openDemo(page);
    await page.hover('table.pairs tbody tr');
    await page.waitForSelector('side-notes .cited-line');
    await look('pairs');
    await goToSwap(page);
    await page.hover('table.steps tbody tr');
    await page.waitForSelector('side-notes .around');
    await look('swap-verified');
    await page.selectOption('#swap', { index: 2 });
    await page.waitForSelector('.verdict:has-text("not verified")');
    await page.waitForSelector('staff-figure chart-figure svg');
    await look('swap-not-verified');
    await goToView(page, 'diagnosis');
    await page.hover('table.ladder tbody tr:has(button)');
    await page.waitForSelector('side-notes .around');
    await look('wont-sync');
    await goToView(page, 'sources');
    await page.locator('wording-form table.messages select[name=signal]').first().selectOption('note');
    await page.waitForSelector('#effect:has-text("rows would be recognised")');
    await look('sources');
    const special = ['pairs', 'swap', 'diagnosis', 'sources'];
    for (const id of (await viewsOf(page)).filter((view) => !special.includes(view))) {
      await goToView(page, id);
      await page.waitForSelector(`${id}-view .verdict`);
      await look(id);
    }
    expect(told).toEqual([]);
    await page.context().close();
  });
});

test('is usable at 200 % zoom: nothing scrolls sideways', async () => {
  const { page } = await openPage(browser, { viewport: { width: 683, height: 384 } });
  await openDemo(page);
  const all = await viewsOf(page);
  expect(all.length).toBeGreaterThan(4);
  for (const id of all) {
    await (id === 'swap' ? goToSwap(page) : goToView(page, id));
    expect([id, await page.evaluate('document.documentElement.scrollWidth <= innerWidth')]).toEqual([
      id,
      true,
    ]);
  }
  await page.context().close();
});
