import { join } from 'node:path';
import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { choose, folderWith, goToView, launchChromium, openPage } from '../support/open-page.ts';
import { unknownExport, unknownRows } from '../support/unknown-export.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

async function openSources(page: Page, folder: string, ...names: readonly string[]): Promise<void> {
  await choose(page, ...names.map((name) => join(folder, name)));
  await page.waitForSelector('header nav a');
  await goToView(page, 'sources');
}

const rows = unknownRows.toLocaleString('en');

describe('an export in wholly unknown words', () => {
  test('is taught by table and drop-downs to a verdict, its effect said before', async () => {
    const folder = folderWith({ 'tall.csv': unknownExport() });
    const { page, told } = await openPage(browser);
    await openSources(page, folder, 'tall.csv');
    await page.waitForSelector(
      `.verdict:has-text("One file was read; ${rows} of ${rows} rows were not recognised")`,
    );
    await page.selectOption('select[aria-label="Meaning of unit weir-4-a"]', 'half');
    await page.waitForSelector(
      'tr:has-text("weir-4-b") :text("half b of weir-4, by the rule of the other half")',
    );
    await page.selectOption('select[aria-label="Meaning of Duty = leads"]', 'role active');
    await page.selectOption('select[aria-label="Value of Duty = follows"]', 'standby');
    await page.selectOption('select[aria-label="Meaning of Twin in step"]', 'partner-ready');
    await page.selectOption('select[aria-label="Value of Twin in step = J"]', 'yes');
    await page.selectOption('select[aria-label="Value of Twin in step = N"]', 'no');
    await page.selectOption('select[aria-label="Meaning of Badge"]', 'serial');
    await page.waitForSelector(
      `#effect:has-text("With these 4 rules, ${rows} of ${rows} rows would be recognised; now 0.")`,
    );
    await page.click('#apply-rules:has-text("Apply 4 rules and read again")');
    await page.waitForSelector(`.verdict:has-text("One file was read; all ${rows} rows were recognised.")`);
    await goToView(page, 'swap');
    await page.waitForSelector('swap-view .verdict:has-text("weir-4")');
    expect(told).toEqual([]);
    await page.context().close();
  });

  test('is taught by keyboard alone', async () => {
    const folder = folderWith({ 'tall.csv': unknownExport() });
    const { page, told } = await openPage(browser);
    await openSources(page, folder, 'tall.csv');
    await page.waitForSelector('table.values');
    const tabTo = async (selector: string): Promise<void> => {
      for (let tabs = 0; tabs < 80; tabs += 1) {
        await page.keyboard.press('Tab');
        if (await page.evaluate(`document.activeElement?.matches(${JSON.stringify(selector)})`)) return;
      }
      throw new Error(`Tab does not come to ${selector}.`);
    };
    await page.focus('wording-form input[name=find]');
    await tabTo('select[aria-label="Meaning of unit weir-4-a"]');
    await page.keyboard.type('half');
    await tabTo('select[aria-label="Meaning of Duty"]');
    await page.keyboard.type('role');
    await tabTo('select[aria-label="Value of Duty = leads"]');
    await page.keyboard.type('active');
    await tabTo('select[aria-label="Value of Duty = follows"]');
    await page.keyboard.type('standby');
    await tabTo('#apply-rules');
    await page.keyboard.press('Enter');
    // Each poll has a row on the duty of every half that is there: two of 241 polls, less the ten without half b.
    const left = unknownRows - (2 * 241 - 10);
    await page.waitForSelector(
      `.verdict:has-text("${left.toLocaleString('en')} of ${rows} rows were not recognised")`,
    );
    await tabTo('#undo');
    await page.keyboard.press('Enter');
    await page.waitForSelector(`.verdict:has-text("${rows} of ${rows} rows were not recognised")`);
    expect(told).toEqual([]);
    await page.context().close();
  });
});

test('columns by drop-down: five rows are read live, and what is missing or wrong stands beside', async () => {
  const text = 'When it was;Box;Words\n2026-03-14T09:00:00Z;RO1-A;module removed\n';
  const wide = Array.from({ length: 200 }, (_, i) => `col${i}`);
  const folder = folderWith({
    'odd.csv': text,
    'wide.csv': `${wide.join(',')}\n${wide.map((_, i) => i).join(',')}\n${wide.map((_, i) => i + 1).join(',')}\n`,
  });
  const { page, told } = await openPage(browser);
  await openSources(page, folder, 'odd.csv', 'wide.csv');
  const odd = page.locator('file-rule', { hasText: 'odd.csv' });
  await odd.locator('summary').click();
  const column = (name: string) => odd.locator(`select[aria-label="Column ${name} is"]`);
  await column('When it was').selectOption('time');
  await column('Box').selectOption('time');
  await odd.locator(':text("Another column is the time already.")').waitFor();
  await column('Box').selectOption('');
  await odd.locator('#unit-said:has-text("No column names a unit: choose one, or give it here.")').waitFor();
  await column('Box').selectOption('unit');
  await column('Words').selectOption('message');
  await odd.locator('table.preview tr:has-text("half A of RO1"):has-text("removed")').waitFor();
  await odd.locator('button[type=submit]').click();
  await page.waitForSelector('#file-rules li:has-text("odd.csv: columns time")');
  const many = page.locator('file-rule', { hasText: 'wide.csv' });
  await many.locator('summary').click();
  await many.locator('#all-columns:has-text("Show all 200 columns")').click();
  expect(await many.locator('select[name=column]').count()).toBe(200);
  await many.locator('#columns-said:has-text("Still missing: the column of the time")').waitFor();
  await page.waitForSelector('#effect:has-text("1 of 1 rows would be recognised")');
  await page.waitForSelector('#effect:has-text("wide.csv would still be left out")');
  await page.click('#apply-rules');
  await page.waitForSelector('.verdict:has-text("One file was read, one left out; its row was recognised.")');
  expect(told).toEqual([]);
  await page.context().close();
});

test('what is wrong stands beside its field, in words of the page, and is never applied', async () => {
  const log = 'time,unit,message\n03/04/2026 09:00:00,RO1-A,mirror broken\n';
  const folder = folderWith({ 'open.csv': log, 'bad.yaml': 'time: { zone: Mars/Olympus }\n' });
  const { page, told } = await openPage(browser);
  await openSources(page, folder, 'open.csv', 'bad.yaml');
  await page.waitForSelector('#left-out li:has-text("Refused: bad.yaml"):has-text("which is no time zone")');
  await page.waitForSelector(
    '#left-out li:has-text("Left out: open.csv"):has-text("Time zone and date format")',
  );
  await page.fill('stamps-form input[name=zone]', 'Mars/Olympus');
  await page.waitForSelector('#zone-said:has-text("There is no time zone \\"Mars/Olympus\\".")');
  await page.fill('stamps-form input[name=year]', '26');
  await page.waitForSelector('#year-said:has-text("four digits")');
  await page.click('#apply-stamps');
  await page.waitForSelector('#stamps-said:has-text("There is no time zone")');
  expect(await page.evaluate('document.activeElement.name')).toBe('zone');
  await page.fill('stamps-form input[name=year]', '');
  await page.fill('stamps-form input[name=zone]', 'lisbon');
  await page.selectOption('stamps-form select[name=found]', 'Europe/Lisbon');
  await page.waitForSelector('#zone-said:has-text("Europe/Lisbon: UTC+0")');
  await page.waitForSelector('stamps-form .preview td:has-text("may be day-first or month-first")');
  await page.selectOption('stamps-form select[name=order]', 'day-first');
  // Lisbon is an hour ahead of UTC on 3 April 2026 (IANA time zone database, europe, 2024): 09:00 there is 08:00 UTC.
  await page.waitForSelector('stamps-form .preview td:has-text("3 Apr 2026 08:00:00")');
  await page.selectOption('select[aria-label="Meaning of mirror broken"]', 'partner-ready');
  await page.waitForSelector('.lack:has-text("Choose the value of partner-ready.")');
  await page.selectOption('select[aria-label="Value of mirror broken"]', 'no');
  await page.click('details.pattern summary');
  await page.fill('input[name=pattern]', 'mirror (');
  await page.waitForSelector('.said:has-text("Not applied: this is not a valid pattern")');
  await page.fill('input[name=pattern]', 'mirror mended');
  await page.waitForSelector('.said:has-text("Not applied: this pattern matches no row.")');
  expect(await page.locator('#apply-rules').count()).toBe(0);
  await page.fill('input[name=pattern]', 'mirror broken');
  await page.waitForSelector('.said:has-text("Matches one row.")');
  expect(await page.locator('body').textContent()).not.toMatch(/(?<![\w-])--[a-z]/);
  await page.click('#apply-stamps');
  await page.waitForSelector('.verdict:has-text("One file was read; its row was recognised.")');
  expect(told).toEqual([]);
  await page.context().close();
});

test.each(['light', 'dark'] as const)(
  'five thousand values and hostile wordings are bounded, stay text, and axe finds nothing, %s',
  async (colorScheme) => {
    const hostile = [
      '<script>alert(1)</script><img src=x onerror=alert(1)>',
      '=HYPERLINK("x")',
      '\u202Eevil \u05E9\u05DC\u05D5\u05DD',
      'x'.repeat(5000),
    ];
    const values = Array.from({ length: 5000 }, (_, i) => `2026-03-14T09:00:00Z,RO1-A,Mode,v${i}\n`).join('');
    const messages = hostile.map((h) => `2026-03-14T09:00:00Z,RO1-A,"${h.replaceAll('"', '""')}"\n`).join('');
    const folder = folderWith({
      'values.csv': `time,unit,parameter,value\n${values}`,
      'hostile.csv': `time,unit,message\n${messages}`,
    });
    const { page, told } = await openPage(browser, { colorScheme, bypassCSP: true });
    await openSources(page, folder, 'values.csv', 'hostile.csv');
    await page.waitForSelector('table.values tr:has-text("Mode"):has-text("40 or more different values")');
    await page.waitForSelector('table.messages');
    expect(await page.locator('sources-view script, sources-view img').count()).toBe(0);
    expect(await page.locator('table.messages tbody tr').count()).toBe(hostile.length);
    for (const select of await page.locator('table.messages select[name=signal]').all())
      await select.selectOption('note');
    await page.waitForSelector('#apply-rules:has-text("Apply 4 rules")');
    await page.addScriptTag({ content: axe.source });
    const found = await page.evaluate(
      "axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] }).then((r) => r.violations.map((v) => v.id + ': ' + v.nodes.map((n) => n.target).join(' ')))",
    );
    expect(found).toEqual([]);
    const shots = process.env.SCREENSHOTS;
    if (shots !== undefined)
      await page.screenshot({ path: join(shots, `teach-${colorScheme}.png`), fullPage: true });
    await page.click('#apply-rules');
    await page.waitForSelector('.verdict:has-text("5,000 of 5,004 rows were not recognised")');
    expect(told).toEqual([]);
    await page.context().close();
  },
);
