import axe from 'axe-core';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  goToSwap,
  goToView,
  launchChromium,
  openDemo,
  openPage,
  watchLongTasks,
} from '../support/open-page.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

interface Place {
  readonly x: number;
  readonly y: number;
}

/** A place on the part of the staff that time runs along, as a share of its length. */
async function onStaff(page: Page, share: number): Promise<Place> {
  return placeIn(page.locator('staff-stage .ground'), share);
}

async function placeIn(found: Locator, share: number): Promise<Place> {
  await found.scrollIntoViewIfNeeded();
  const box = await found.boundingBox();
  if (box === null) throw new Error('It is not drawn.');
  return { x: box.x + box.width * share, y: box.y + box.height * 0.3 };
}

async function drag(page: Page, from: Place, to: Place): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y, { steps: 12 });
  await page.mouse.up();
}

/** The span that the staff says it shows. */
function shown(page: Page): Promise<string> {
  return page
    .locator('staff-stage [role=slider]')
    .evaluate((slider) => slider.getAttribute('aria-valuetext') ?? '');
}

async function openFleetStaff(page: Page): Promise<void> {
  await page.click('#demo-fleet');
  await page.waitForSelector('table.pairs .strip');
  await goToView(page, 'swap');
  await page.selectOption('#swap', { label: 'RO2, no replacement' });
  await page.waitForSelector('staff-stage svg text:has-text("no ready partner")');
}

describe('the staff', () => {
  test('is read out under the pointer and by keys, says what is abnormal in words, and axe finds nothing', async () => {
    const { page, told } = await openPage(browser, { bypassCSP: true });
    await openDemo(page);
    await goToSwap(page);
    expect(await page.locator('staff-stage svg text').allTextContents()).toContain(
      'no ready partner 7 min 11 s',
    );
    await page.waitForSelector(
      'staff-figure .rest:has-text("Links of both halves up and straight throughout.")',
    );
    // The swap runs from 08:59:05 to 10:21:21; at a quarter, 09:19:39, B was reflashed and not yet ready again.
    const { x, y } = await onStaff(page, 0.25);
    await page.mouse.move(x, y);
    await page.waitForSelector('.read-out:has-text("14 Mar 2026 09:19")');
    const read = await page.textContent('.read-out');
    expect(read).toContain('A: active, firmware 6.4.1');
    expect(read).toContain('B: standby, not ready, light flashing');
    expect(read).toContain('no ready partner since 14 Mar 2026 09:14:05');
    await page.mouse.move(5, 5);
    const slider = page.locator('staff-stage [role=slider]');
    await slider.focus();
    await page.keyboard.press('Control+ArrowLeft');
    expect(await shown(page)).toMatch(/; A: .*; B: .*partner/);
    // What happened there is marked in the table of steps, and its lines stand beside it.
    await page.waitForSelector('table.steps tr.near');
    await page.waitForSelector('side-notes .cited:has-text("What happened there")');
    await page.addScriptTag({ content: axe.source });
    const found: unknown = await page.evaluate(
      "axe.run('staff-figure').then((r) => r.violations.map((v) => v.id + ': ' + v.nodes.map((n) => n.target).join(' ')))",
    );
    expect(found).toEqual([]);
    await page.keyboard.press('Escape');
    await page.waitForSelector('table.steps tr.near', { state: 'detached' });
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('shows the instant of the step that is pointed at', async () => {
    const { page } = await openPage(browser);
    await openDemo(page);
    await goToSwap(page);
    await page.hover('table.steps tbody tr:has-text("Module removed, half B")');
    await page.waitForSelector('staff-stage line.at', { state: 'attached' });
    expect(await page.textContent('.read-out')).toContain('09:14:05');
    await page.mouse.move(5, 5);
    await page.waitForSelector('staff-stage line.at', { state: 'detached' });
    await page.context().close();
  });

  test('comes from two years to ten seconds in five gestures, and back with two keys', async () => {
    const { page, told } = await openPage(browser);
    await openFleetStaff(page);
    expect(await shown(page)).toContain('730 days');
    // The first gesture: a part of the whole log is marked on the strip under the staff.
    const strip = page.locator('staff-overview .hold');
    await drag(page, await placeIn(strip, 0.385), await placeIn(strip, 0.4));
    await expect.poll(() => shown(page)).toMatch(/, 1\d days$/);
    // Four more: the wheel is spun over a place on the staff, eight notches each.
    const { x, y } = await onStaff(page, 0.4);
    await page.mouse.move(x, y);
    await page.keyboard.down('Control');
    for (let notch = 0; notch < 4 * 8; notch += 1) await page.mouse.wheel(0, -100);
    await page.keyboard.up('Control');
    await expect.poll(() => shown(page)).toMatch(/, 10 s$/);
    await page.locator('staff-stage [role=slider]').focus();
    await page.keyboard.press('End');
    await expect.poll(() => shown(page)).toContain('730 days');
    await page.keyboard.press('+');
    await expect.poll(() => shown(page)).toContain('365 days');
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('is panned by a drag and tells where it came to rest; the window of its strip goes with it', async () => {
    const { page } = await openPage(browser);
    await openFleetStaff(page);
    await page.evaluate(
      "globalThis.spans = []; document.addEventListener('span', (event) => spans.push(event.detail));",
    );
    await page.click('staff-figure button:has-text("Zoom in")');
    await expect.poll(() => page.evaluate('spans.length')).toBe(1);
    const before = await shown(page);
    const held = await watchLongTasks(page);
    await drag(page, await onStaff(page, 0.7), await onStaff(page, 0.3));
    console.log(`A drag over two years held the page for at most ${await held()} ms.`);
    expect(await shown(page)).not.toBe(before);
    expect(await shown(page)).toMatch(/, 365 days$/);
    await expect.poll(() => page.evaluate('spans.length')).toBe(2);
    // Half of the log is shown; four tenths of that to the right, its window begins at 0.25 + 0.2 of the strip.
    const at = await page
      .locator('staff-overview .window')
      .evaluate((box) => Number(box.getAttribute('x')) / Number(box.parentElement?.getAttribute('width')));
    expect(at).toBeCloseTo(0.45, 1);
    await page.click('staff-figure button:has-text("Fit log")');
    await expect.poll(() => page.evaluate('spans.at(-1)')).toBeNull();
    // A span given from outside is shown at once, and told of to nobody.
    await page.evaluate(
      "{ const staff = document.querySelector('staff-figure'); const { from } = staff.health.staff; staff.span = { from: from + 86400000, to: from + 2 * 86400000 }; }",
    );
    await expect.poll(() => shown(page)).toBe('2 Nov 2024 00:00:00 to 3 Nov 2024 00:00:00, 24 h 00 min');
    expect(await page.evaluate('spans.length')).toBe(3);
    await page.context().close();
  });

  test('leaves a plain wheel to the page until it has the focus, and is legible on a narrow window', async () => {
    const { page } = await openPage(browser, { viewport: { width: 360, height: 740 } });
    await openDemo(page);
    await goToSwap(page);
    const before = await shown(page);
    const { x, y } = await onStaff(page, 0.5);
    await page.mouse.move(x, y);
    await page.mouse.wheel(0, 100);
    await expect.poll(() => page.evaluate('scrollY')).not.toBe(0);
    expect(await shown(page)).toBe(before);
    await page.locator('staff-stage [role=slider]').focus();
    const again = await onStaff(page, 0.5);
    await page.mouse.move(again.x, again.y);
    await page.mouse.wheel(0, -100);
    await expect.poll(() => shown(page)).not.toBe(before);
    const wide: unknown = await page.evaluate('document.documentElement.scrollWidth');
    expect(Number(wide)).toBeLessThanOrEqual(360);
    await page.context().close();
  });
});
