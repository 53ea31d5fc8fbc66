import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  choose,
  folderWith,
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

describe('the phrasebook', () => {
  const journal = `time,unit,message
2026-03-14T09:00:00Z,RO1,partner ready
2026-03-14T09:10:00Z,RO1,mirror image broken
2026-03-14T09:20:00Z,RO1,mirror image broken
2026-03-14T09:30:00Z,RO1,mirror image whole
`;

  test('is taught a wording, counts the rows it would use, reads again, and is saved', async () => {
    const folder = folderWith({ 'ro1.csv': journal });
    const { page, told } = await openPage(browser);
    await choose(page, join(folder, 'ro1.csv'));
    await page.waitForSelector('table.pairs');
    await goToView(page, 'sources');
    await page.selectOption('select[aria-label="Meaning of mirror image broken"]', 'partner-ready');
    await page.selectOption('select[aria-label="Value of mirror image broken"]', 'no');
    await page.waitForSelector('.said:has-text("Matches 2 rows.")');
    await page.click('details.pattern summary');
    await page.fill('wording-form input[name=pattern]', 'mirror image');
    await page.waitForSelector('.said:has-text("Matches 3 rows.")');
    await page.fill('wording-form input[name=pattern]', 'mirror image (');
    await page.waitForSelector('.said:has-text("is not a valid pattern")');
    await page.fill('wording-form input[name=pattern]', 'mirror image broken');
    await page.waitForSelector('.said:has-text("Matches 2 rows.")');
    await page.click('#apply-rules');
    await page.waitForSelector('sources-view .verdict:has-text("1 of 4 rows")');
    const [file] = await Promise.all([page.waitForEvent('download'), page.click('#save-phrasebook')]);
    const saved = readFileSync((await file.path()) ?? '', 'utf8');
    expect(saved).toContain('when: mirror image broken');
    await goToView(page, 'pairs');
    await page.waitForSelector('table.pairs:has-text("no ready partner since 14 Mar 2026 09:10:00")');
    await goToView(page, 'sources');
    await page.click('button:has-text("Read without it")');
    await page.waitForSelector('sources-view .verdict:has-text("3 of 4 rows")');
    await page.setInputFiles('#phrasebook input[type=file]', {
      name: 'saved.yaml',
      mimeType: 'text/yaml',
      buffer: Buffer.from(saved),
    });
    await page.waitForSelector('sources-view .verdict:has-text("1 of 4 rows")');
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('is taught the columns of a file that could not be read', async () => {
    const text = 'When it was;Box;Words\n2026-03-14T09:00:00Z;RO1-A;module removed\n';
    const folder = folderWith({ 'odd.csv': text });
    const { page } = await openPage(browser);
    await choose(page, join(folder, 'odd.csv'));
    await page.waitForSelector('sources-view li:has-text("odd.csv")');
    await page.click('file-rule summary');
    await page.selectOption('select[aria-label="Column When it was is"]', 'time');
    await page.selectOption('select[aria-label="Column Box is"]', 'unit');
    await page.selectOption('select[aria-label="Column Words is"]', 'message');
    await page.click('columns-form button[type=submit]');
    await page.click('#apply-rules');
    await page.waitForSelector('sources-view .verdict:has-text("its row was recognised")');
    await page.context().close();
  });

  test('is taught how stamps are read that a file leaves open; the file then says what became of it', async () => {
    const text = 'time,unit,parameter,value,note\n03/04/2026 09:00:00,RO1-A,light,steady,\n';
    const folder = folderWith({ 'open.csv': text });
    const { page, told } = await openPage(browser);
    await choose(page, join(folder, 'open.csv'));
    await page.waitForSelector('sources-view li:has-text("if the day comes first")');
    await page.fill('stamps-form input[name=zone]', 'Europe/Lisbon');
    await page.selectOption('stamps-form select[name=order]', 'day-first');
    await page.click('stamps-form button[type=submit]');
    await page.waitForSelector('sources-view .verdict:has-text("its row was recognised")');
    const said = ((await page.locator('section.file').textContent()) ?? '').replaceAll(/\s+/g, ' ');
    expect(said).toContain('Time zone Europe/Lisbon: from the phrasebook.');
    expect(said).toContain(
      'Columns: time: time; unit: unit; parameter: parameter; value: value. Columns not used: note.',
    );
    expect(said).toContain('Parameters: light: light.');
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('that is wrong is refused in one sentence, and what was read before stays', async () => {
    const folder = folderWith({ 'bad.yaml': 'messages:\n  - { when: "(", signal: note }\n' });
    const { page } = await openPage(browser);
    await openDemo(page);
    await goToView(page, 'sources');
    await page.setInputFiles('#phrasebook input[type=file]', join(folder, 'bad.yaml'));
    await page.waitForSelector('[role=alert]:has-text("messages[0].when is not a valid pattern")');
    await goToView(page, 'pairs');
    expect(await page.locator('table.pairs tbody tr').count()).toBe(3);
    await page.context().close();
  });
});

test('clocks that disagree are shown, and set right only by the switch', async () => {
  const row = (minute: number, shift: number, value: string): string =>
    `2026-03-14T09:${String(minute).padStart(2, '0')}:${String(shift).padStart(2, '0')}.000Z,RO1,partner ${value}`;
  const minutes = [0, 7, 15, 22, 34, 41];
  const values = (index: number): string => (index % 2 === 0 ? 'ready' : 'not ready');
  const file = (shift: number): string =>
    `time,unit,message\n${minutes.map((m, i) => row(m, shift, values(i))).join('\n')}\n`;
  // What only the file with the other clock tells is known to within the offset: 09:45:40 less 40 s is 09:45:00.
  const alone = '2026-03-14T09:45:40.000Z,RO1-B,restart\n';
  const folder = folderWith({ 'a.csv': file(0), 'b.csv': `${file(40)}${alone}` });
  const { page } = await openPage(browser);
  await choose(page, join(folder, 'a.csv'), join(folder, 'b.csv'));
  await page.waitForSelector('table.pairs');
  await goToView(page, 'sources');
  await page.waitForSelector('td:has-text("40 s ahead of a.csv")');
  expect(await page.locator('#align').isChecked()).toBe(false);
  await goToSwap(page);
  const restart = async (): Promise<string | null> =>
    page.locator('swap-view tbody tr', { hasText: 'restart' }).locator('th').textContent();
  expect(await restart()).toMatch(/^14 Mar 2026 09:45:00 to 09:45:40 /);
  await goToView(page, 'sources');
  await page.check('#align');
  await expect
    .poll(() => page.evaluate("document.querySelector('sources-view').state.site.isAligned"))
    .toBe(true);
  await goToSwap(page);
  expect(await restart()).toMatch(/^14 Mar 2026 09:45:00 one line/);
  await page.context().close();
});
