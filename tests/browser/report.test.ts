import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import axe from 'axe-core';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { launchChromium } from '../support/open-page.ts';
import { steadypair } from '../support/run-command.ts';
import { verifySample } from '../support/verify-sample.ts';

const shots = join('out', 'screenshots');
let browser: Browser;
let reports: Readonly<Record<string, string>>;

beforeAll(async () => {
  mkdirSync(shots, { recursive: true });
  const folder = mkdtempSync(join(tmpdir(), 'reports-'));
  for (const name of ['clean-swap', 'bad-swap'] as const) await verifySample(name, folder);
  await steadypair('fleet', join('samples', 'marrow-bay-fleet'), '--out', folder);
  reports = {
    clean: join(folder, 'RO1-swap-2026-03-14.html'),
    bad: join(folder, 'RO3-swap-2026-03-17.html'),
    fleet: join(folder, 'fleet.html'),
  };
  browser = await launchChromium();
});
afterAll(() => browser?.close());

/** Each report: its pictures, the most pages it may take, and what it must say on paper. */
const kinds = [
  {
    name: 'clean',
    pictures: 2,
    most: 4,
    headings: ['Before and after', 'Steps', 'Checks', 'Evidence', 'Sign-off'],
  },
  {
    name: 'bad',
    pictures: 2,
    most: 4,
    headings: ['Before and after', 'Steps', 'Checks', 'Evidence', 'Sign-off'],
  },
  {
    name: 'fleet',
    pictures: 14,
    most: 8,
    headings: [
      'Which pairs lose their partner',
      'Sync times by firmware',
      'Which pairs are ready for a swap',
      'Findings',
    ],
  },
] as const;

describe.each(kinds)('the report $name', ({ name, pictures, most, headings }) => {
  test.each(['light', 'dark'] as const)(
    'opens without a network, says nothing on the console, and passes axe, %s',
    async (colorScheme) => {
      const context = await browser.newContext({
        colorScheme,
        offline: true,
        viewport: { width: 1366, height: 768 },
        bypassCSP: true,
      });
      const page = await context.newPage();
      const told: string[] = [];
      page.on('console', (message) => told.push(message.text()));
      page.on('pageerror', (error) => told.push(error.message));
      page.on('request', (request) => {
        if (!request.url().startsWith('file:')) told.push(request.url());
      });
      await page.goto(`file://${resolve(reports[name] ?? '')}`);
      expect(await page.locator('svg').count()).toBe(pictures);
      expect(await page.evaluate('document.documentElement.scrollWidth <= innerWidth')).toBe(true);
      await page.screenshot({ path: join(shots, `report-${name}-${colorScheme}.png`), fullPage: true });
      await page.addScriptTag({
        content: axe.source,
      });
      const found: unknown = await page.evaluate(
        "axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] }).then((r) => r.violations.map((v) => v.id + ': ' + v.nodes.map((n) => n.target).join(' ')))",
      );
      expect(found).toEqual([]);
      expect(told).toEqual([]);
      await context.close();
    },
  );

  test.each(['A4', 'Letter'])('prints a few pages of text on %s', async (format) => {
    const page = await browser.newPage();
    await page.goto(`file://${resolve(reports[name] ?? '')}`);
    const file = join(mkdtempSync(join(tmpdir(), 'print-')), 'report.pdf');
    writeFileSync(file, await page.pdf({ format, preferCSSPageSize: false }));
    const pages = Number(/Pages:\s+(\d+)/.exec(execFileSync('pdfinfo', [file], { encoding: 'utf8' }))?.[1]);
    expect(pages).toBeGreaterThanOrEqual(2);
    expect(pages).toBeLessThanOrEqual(most);
    const text = execFileSync('pdftotext', [file, '-'], { encoding: 'utf8' });
    for (const heading of [...headings, 'Cautions']) expect(text).toContain(heading);
    if (name === 'clean')
      expect(text.replace(/\s+/g, ' ')).toContain(
        'comment by Operator 3: <script>alert(1)</script>'.slice(0, 22),
      );
    await page.close();
  });
});
