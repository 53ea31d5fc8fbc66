import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { cleanSwapUntil, follow, giveFolder, write } from '../support/followed-page.ts';
import { download, goToView, launchChromium, openPage } from '../support/open-page.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

/** The clock ticks each second, and the machine may be busy. */
const poll: typeof expect.poll = (look) => expect.poll(look, { timeout: 10_000 });

async function awaits(page: Page, words: string): Promise<void> {
  await page.waitForSelector(`now-view h1:has-text("${words}")`);
}

async function faultsOf(page: Page): Promise<unknown> {
  await page.addScriptTag({ content: axe.source });
  return page.evaluate(
    "axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] }).then((r) => r.violations.map((v) => v.id + ': ' + v.nodes.map((n) => n.target).join(' | ')))",
  );
}

/** Where the lowest of some elements ends, in pixels from the top of the window. */
async function lowest(page: Page, ...selectors: readonly string[]): Promise<number> {
  const boxes = await Promise.all(selectors.map((s) => page.locator(s).first().boundingBox()));
  return Math.max(...boxes.map((box) => (box === null ? Number.POSITIVE_INFINITY : box.y + box.height)));
}

describe('a folder that is followed', () => {
  test('shows the swap as it goes: what is awaited, its clock in the title, the hold point, and what is announced', async () => {
    const { page, told } = await openPage(browser);
    await giveFolder(page);
    await follow(page);
    await awaits(page, 'No swap is under way: no pair is known yet.');
    await write(page, cleanSwapUntil('09:13:50'));
    await awaits(page, 'RO1: no swap is under way.');
    await page.waitForSelector('#now-hold h2:has-text("before half B is removed")');
    await page.waitForSelector('.hold:has-text("met")');
    expect(await page.textContent('#now-hold .cautions')).toContain('check at the cabinet');

    await write(page, cleanSwapUntil('09:14:30'));
    await awaits(page, 'RO1: waiting for a module in half B');
    await poll(() => page.title()).toMatch(/^0:\d\d of 15:00 half B insertion - RO1$/);
    await page.waitForSelector('#now-halves tr:has-text("removed")');

    await write(page, cleanSwapUntil('09:22:00'));
    await awaits(page, 'RO1: waiting for the light of half B to be steady');
    // Flashing since 09:18:53.912, the end of the reflash: 3 min 0 s at the newest poll, 09:21:54, and on.
    await poll(() => page.title()).toMatch(/^3:[01]\d of 5:00 half B light - RO1$/);
    await page.waitForSelector('.hold:has-text("waiting")');
    await page.waitForSelector('now-clock [role=status]:has-text("Awaited now: the light of half B to be")');
    const before = await page.textContent('.running');
    await poll(() => page.textContent('.running')).not.toBe(before);
    const held = ['.running', '.hold', '.cautions', '#now-halves', '.tail', '#save-report', '#print'];
    expect(await lowest(page, ...held, '#copy-markdown')).toBeLessThanOrEqual(768);

    await write(page, cleanSwapUntil('09:25:00'));
    await page.waitForSelector('.hold:has-text("met")');
    await page.waitForSelector('now-clock [role=status]:has-text("switchover to half B: met.")');
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('is looked at without a word about evidence that a person keeps, and gives the report of the swap as it is', async () => {
    const { page, told } = await openPage(browser);
    await giveFolder(page);
    await write(page, cleanSwapUntil('09:22:00'));
    await follow(page);
    await awaits(page, 'light of half B');
    await page.click('#now-hold .condition:has-text("A module is in half B") button');
    await page.waitForSelector('side-notes .around');
    await write(page, cleanSwapUntil('09:22:30'));
    await page.waitForSelector('.clock-facts:has-text("09:22:")');
    await poll(() => page.textContent('.period')).toContain('09:22:24');
    await page.waitForSelector('side-notes .cited:has-text("A module is in half B")');
    const now = await download(page, '#save-report');
    await goToView(page, 'swap');
    await page.waitForSelector('swap-view .verdict:has-text("still open")');
    const record = await download(page, '#save-report');
    expect(now).toEqual(record);
    expect(now.text).toContain('The swap of pair RO1 is still open');
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('is read anew where a file shrinks; one that vanishes is said and still counts', async () => {
    const { page, told } = await openPage(browser);
    await giveFolder(page);
    await write(page, cleanSwapUntil('09:22:00'));
    await follow(page);
    await awaits(page, 'light of half B');
    const shorter = cleanSwapUntil('09:14:30');
    await write(page, { ...shorter, 'ro1-journal.csv': null });
    await page.waitForSelector('.follow-bar:has-text("logs/ro1-journal.csv is no longer in the folder")');
    await page.waitForSelector('.follow-bar:has-text("read again from the start")');
    // The journal that vanished still tells of the work up to 09:22.
    await awaits(page, 'light of half B');
    await write(page, { 'ro1-journal.csv': shorter['ro1-journal.csv'] ?? '' });
    await awaits(page, 'waiting for a module in half B');
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('announces a limit that passes between two rows, and keeps the screen on only in its view', async () => {
    const { page, told } = await openPage(browser);
    await giveFolder(page);
    await page.evaluate(() => {
      const own = navigator.wakeLock.request.bind(navigator.wakeLock);
      const locks: WakeLockSentinel[] = [];
      Object.assign(window, { locks });
      navigator.wakeLock.request = async (kind) => {
        const lock = await own(kind);
        locks.push(lock);
        return lock;
      };
    });
    const row = (line: string): string => `2026-03-14T${line}\n`;
    const text = `time,unit,message
${row('08:40:00Z,RO1-A,role active')}${row('08:40:00Z,RO1-B,role standby')}${row('08:40:00Z,RO1-B,serial T2-1')}
${row('09:00:00Z,RO1-B,module removed')}${row('09:02:00Z,RO1-B,module inserted')}${row('09:02:00Z,RO1-B,role standby')}
${row('09:02:00Z,RO1-B,serial T2-2')}${row('09:02:00Z,RO1-B,light flashing')}${row('09:05:00Z,RO1,partner ready')}`.replaceAll(
      '\n\n',
      '\n',
    );
    await write(page, { 'ro1.csv': text });
    await follow(page);
    await awaits(page, 'light of half B');
    // The limit is 09:07:00.
    await write(page, { 'ro1.csv': text + row('09:06:57Z,RO1-A,link a up') });
    await page.waitForSelector('.running:not(.past):has-text("4:5")');
    await page.waitForSelector('.running.past:has-text("limit passed")');
    await page.waitForSelector('now-clock [role=alert]:has-text("The limit of 5:00 has passed.")');
    await page.waitForSelector('text=The screen stays on while this view is open.');
    await goToView(page, 'pairs');
    await poll(() => page.title()).toBe('Pairs, Steadypair');
    await poll(() => page.evaluate('locks.length > 0 && locks.every((l) => l.released)')).toBe(true);
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('with two pairs in work shows the one with the newest step, or the one that is chosen; hostile text stays text', async () => {
    const { page, told } = await openPage(browser);
    await giveFolder(page);
    const attack = '<img src=x onerror="document.title=1">';
    const rows = (pair: string, minute: string): string =>
      [
        '00:00Z,A,role active',
        '00:00Z,B,role standby',
        '00:00Z,B,serial <b>1</b>',
        `${minute}:00Z,B,module removed`,
      ]
        .map((row) => row.split(','))
        .map(
          ([clock, half, words]) =>
            `2026-03-14T08:${clock},"${pair.replaceAll('"', '""')}-${half}",${words}\n`,
        )
        .join('');
    await write(page, {
      'evil<img src=x>.csv': `time,unit,message\n${rows('RO1', '30')}${rows(attack, '40')}`,
      'words.yaml': 'units:\n  - pattern: "^(?<pair>.+)-(?<half>[AB])$"\n',
    });
    await follow(page);
    await awaits(page, 'onerror');
    await page.waitForSelector('.tail:has-text("onerror")');
    await poll(() => page.title()).toContain(`insertion - ${attack}`);
    expect(await page.locator('img, .tail b, main script').count()).toBe(0);
    await page.selectOption('#now-pair', { label: 'RO1, in work' });
    await awaits(page, 'RO1: waiting for a module in half B');
    expect(await page.evaluate('location.hash')).toBe('#now?pair=RO1');
    expect(told).toEqual([]);
    await page.context().close();
  });
});

describe.each(['light', 'dark'] as const)('Swap now, %s', (colorScheme) => {
  test('has no fault that axe finds, at full size, at 200 % and on 360 pixels', async () => {
    const { page, told } = await openPage(browser, { colorScheme, bypassCSP: true });
    await giveFolder(page);
    await write(page, cleanSwapUntil('09:22:00'));
    await follow(page);
    await awaits(page, 'light of half B');
    await page.waitForSelector('now-staff svg');
    for (const [width, height] of [
      [1366, 768],
      [683, 384],
      [360, 740],
    ] as const) {
      await page.setViewportSize({ width, height });
      expect([width, await page.evaluate('document.documentElement.scrollWidth')]).toEqual([width, width]);
      expect([width, await faultsOf(page)]).toEqual([width, []]);
    }
    expect(told).toEqual([]);
    await page.context().close();
  });
});
