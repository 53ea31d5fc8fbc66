import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import axe from 'axe-core';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { oddLog } from '../support/odd-log.ts';
import { choose, download, folderWith, goToView, launchChromium, openPage } from '../support/open-page.ts';
import { steadypair } from '../support/run-command.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

describe('a log that nothing is known of', () => {
  test('is drafted, taught in two wordings at once and read; a lesson can be taken back and undone', async () => {
    const folder = folderWith({ 'gate.log': oddLog() });
    const { page, told } = await openPage(browser);
    await choose(page, join(folder, 'gate.log'));
    await page.waitForSelector('sources-view li:has-text("the layout is not known")');
    await page.click('file-rule summary');
    expect(await page.inputValue('draft-form input[name=line]')).toContain('(?<unit>');
    expect(await page.inputValue('draft-form input[name="time.format"]')).toBe('yyyyMMdd-HH:mm:ss');
    await page.click('draft-form button[type=submit]');
    const teach = async (words: string, signal: string, value: string): Promise<void> => {
      await page.fill('wording-form input[name=find]', words);
      await page.waitForSelector('#found:has-text("shown: 1 message")');
      await page.selectOption('table.messages select[name=signal]', signal);
      await page.selectOption('table.messages select[name=value]', value);
      await page.waitForSelector(`table.messages details:has-text("${signal} ${value}")`, {
        state: 'attached',
      });
    };
    await teach('STEP fell', 'partner-ready', 'no');
    await teach('in step after', 'partner-ready', 'yes');
    await teach('carry', 'role', 'standby');
    await teach('carry', 'role', 'active');
    await page.click('#apply-rules');
    await page.waitForSelector('sources-view .verdict:has-text("One file was read")');
    await goToView(page, 'pairs');
    await page.waitForSelector('table.pairs:has-text("gate-7")');
    await goToView(page, 'sources');
    await page.click('#undo');
    await page.waitForSelector('sources-view li:has-text("the layout is not known")');
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('gives the draft that the command writes', async () => {
    const folder = folderWith({ 'gate.log': oddLog() });
    const { page } = await openPage(browser);
    await choose(page, join(folder, 'gate.log'));
    await page.waitForSelector('wording-form');
    const saved = await download(page, '#save-draft');
    await steadypair('inspect', join(folder, 'gate.log'), '--draft-phrasebook', join(folder, 'site.yaml'));
    // The page knows a file by its name, the command by its path.
    const written = readFileSync(join(folder, 'site.yaml'), 'utf8');
    expect(saved.text).toBe(written.replaceAll(`${folder}/`, ''));
    await page.context().close();
  });

  test.each(['light', 'dark'] as const)(
    'is taught with the keyboard alone, and axe finds nothing, %s',
    async (colorScheme) => {
      const hostile = '20260314-07:00:00 | I | gate-7-a | lost <img src=x onerror=alert(1)> {{7*7}}\n';
      const folder = folderWith({ 'gate.log': `${oddLog()}${hostile}` });
      const { page, told } = await openPage(browser, { colorScheme, bypassCSP: true });
      await choose(page, join(folder, 'gate.log'));
      await page.waitForSelector('wording-form');
      await page.click('file-rule summary');
      await page.focus('wording-form input[name=find]');
      await page.keyboard.type('onerror');
      await page.waitForSelector('#found:has-text("shown: 1 message")');
      // Past the switch and the button of its line.
      for (const key of ['Tab', 'Tab', 'Tab']) await page.keyboard.press(key);
      await page.keyboard.type('note');
      await page.waitForSelector('details.pattern');
      expect(await page.locator('wording-form img').count()).toBe(0);
      await page.addScriptTag({ content: axe.source });
      const found = await page.evaluate(
        "axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] }).then((r) => r.violations.map((v) => v.id + ': ' + v.nodes.map((n) => n.target).join(' ')))",
      );
      expect(found).toEqual([]);
      const shots = process.env.SCREENSHOTS;
      if (shots !== undefined)
        await page.screenshot({ path: join(shots, `sources-${colorScheme}.png`), fullPage: true });
      expect(told).toEqual([]);
      await page.context().close();
    },
  );
});
