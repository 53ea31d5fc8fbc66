import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  builtPage,
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

const attack = '<img src=x onerror="document.title=1"><script>document.title=2</script>';

describe('the policy', () => {
  test('allows no connection, scripts by their hash alone, and two things more: that a check sum is compiled, and that tables compile our constants', () => {
    const policy =
      /Content-Security-Policy" content="([^"]*)"/.exec(readFileSync(builtPage(), 'utf8'))?.[1] ?? '';
    // hash-wasm compiles SHA-256. Arquero compiles its verbs; its expressions name columns of ours. Lint forbids eval and
    // Function in our code (tests/architecture/lint.test.ts); page-policy-worker.test.ts shows that it is needed, and that it lets no more.
    expect(policy).toMatch(
      /^default-src 'none'; script-src (?:'sha256-[A-Za-z0-9+/=]{44}' )+'wasm-unsafe-eval' 'unsafe-eval'; /,
    );
    expect(policy).toContain("connect-src 'none'");
    expect(policy).toContain('worker-src blob:;');
    expect(policy.match(/'unsafe-[a-z-]+'/g)).toEqual(["'unsafe-eval'", "'unsafe-inline'"]);
    expect(policy).toContain("style-src 'unsafe-inline'");
  });
  test('stops markup that a careless page would have let through: the page itself runs into it', async () => {
    const careless = join(folderWith({}), 'careless.html');
    const page = readFileSync(builtPage(), 'utf8');
    // A function: the page's script is full of `$`.
    writeFileSync(
      careless,
      page.replace('<noscript>', () => `<p>${attack}</p><noscript>`),
    );
    const opened = await openPage(browser, {}, careless);
    await openDemo(opened.page);
    expect(await opened.page.title()).toBe('Pairs, Steadypair');
    expect(
      opened.told.filter((line) => line.includes('Content Security Policy')).length,
    ).toBeGreaterThanOrEqual(2);
    await opened.page.context().close();
  });
  test('lets a script that was changed not run', async () => {
    const changed = join(folderWith({}), 'changed.html');
    const page = readFileSync(builtPage(), 'utf8');
    writeFileSync(
      changed,
      page.replace(/<script type="module"[^>]*>/, (tag) => `${tag}document.title="changed";`),
    );
    const context = await browser.newContext({ offline: true });
    const opened = await context.newPage();
    const refused = opened.waitForEvent('console');
    await opened.goto(`file://${changed}`);
    expect((await refused).text()).toContain('Content Security Policy');
    expect(await opened.title()).toBe('Steadypair');
    await context.close();
  });
});

test('hostile text of a log, a name of a file and a phrasebook stays text wherever it is shown', async () => {
  const line = (clock: string, words: string): string => `2026-03-14T${clock}Z,RO1,${words}\n`;
  const quoted = `"${attack.replaceAll('"', '""')}"`;
  const name = 'evil<img src=x onerror=alert(1)>.csv';
  const folder = folderWith({
    [name]: `time,unit,message\n${line('09:00:00', 'partner ready')}${line('09:10:00', quoted)}2026-03-14T09:12:00Z,RO1-B,firmware 6.4.1<script>alert(3)</script>\n${line('09:20:00', 'partner not ready')}2026-03-14T09:25:00Z,${quoted},module removed\n`,
    'none<b>.csv': attack,
    'phrasebook.yaml': `name: ${JSON.stringify(attack)}\n`,
  });
  const { page, told } = await openPage(browser);
  await choose(page, join(folder, name), join(folder, 'none<b>.csv'), join(folder, 'phrasebook.yaml'));
  await page.waitForSelector('table.pairs');
  await page.hover('table.pairs tbody tr');
  await goToSwap(page);
  await page.hover('table tbody tr');
  await page.waitForSelector('side-notes .around:has-text("onerror")');
  await goToView(page, 'sources');
  await page.locator('table.messages select[name=signal]').first().selectOption('note');
  await page.click('details.pattern summary');
  await page.click('summary:has-text("Show YAML")');
  await page.waitForSelector('pre:has-text("onerror")');
  expect(await page.locator('img, main script, main b:has(*)').count()).toBe(0);
  expect(await page.title()).toBe('Sources, Steadypair');
  expect(told).toEqual([]);
  await page.context().close();
});

describe('the keyboard alone', () => {
  test('opens the demo site, filters, chooses a record, reaches its evidence, moves the staff and teaches', async () => {
    const { page, told } = await openPage(browser);
    /** Presses Tab until what has the focus says these words; fails after a hundred. */
    const tabTo = async (words: string): Promise<void> => {
      for (let presses = 0; presses < 150; presses += 1) {
        await page.keyboard.press('Tab');
        const said: unknown = await page.evaluate(
          "document.activeElement.textContent.trim() + ' ' + document.activeElement.getAttribute('type')",
        );
        // All of the page's text is no control: the focus went round.
        if (String(said).length < 80 && String(said).includes(words)) {
          const outline: unknown = await page.evaluate(
            'getComputedStyle(document.activeElement).outlineStyle',
          );
          const around: unknown = await page.evaluate(
            'getComputedStyle(document.activeElement.parentElement).outlineStyle',
          );
          expect([words, outline === 'none' && around === 'none']).toEqual([words, false]);
          return;
        }
      }
      throw new Error(`The focus never came to ${words}.`);
    };
    await tabTo('Open the demo site');
    await page.keyboard.press('Enter');
    await page.waitForSelector('table.pairs');
    await tabTo('search');
    await page.keyboard.type('ro3');
    await expect.poll(() => page.locator('table.pairs tbody tr').count()).toBe(1);
    await tabTo('RO3');
    await page.waitForSelector('side-notes .cited:has-text("RO3")');
    // Its name would open its diagnosis, since it has no ready partner.
    await tabTo('record');
    await page.keyboard.press('Enter');
    await page.waitForSelector('swap-view .verdict:has-text("not verified")');
    await page.waitForSelector('staff-figure svg');
    await tabTo('Zoom in');
    const steps = await page.locator('table.steps tbody tr').count();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('table.steps tbody tr').count()).toBeLessThan(steps);
    await tabTo('Fit log');
    await page.keyboard.press('Enter');
    await tabTo('lines');
    await page.waitForSelector('side-notes .note');
    // Alt and the left arrow belong to the browser's own window, which is not there: its command is.
    await page.goBack();
    await page.waitForSelector('pairs-view');
    await tabTo('Add rules in Sources');
    await page.keyboard.press('Enter');
    await page.waitForSelector('#wordings:focus');
    await page.waitForSelector('table.messages');
    const isAtMessage = "document.activeElement.matches('table.messages select')";
    for (let presses = 0; presses < 60 && !(await page.evaluate(isAtMessage)); presses += 1)
      await page.keyboard.press('Tab');
    await page.keyboard.type('note');
    await page.waitForSelector('#effect:has-text("rows would be recognised")');
    expect(told).toEqual([]);
    await page.context().close();
  });
});
