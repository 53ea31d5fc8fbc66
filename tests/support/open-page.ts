import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { findChromium } from './find-chromium.ts';

const built = resolve('dist', 'steadypair.html');

/** The page as `npm run build` wrote it. */
export function builtPage(): string {
  if (!existsSync(built)) throw new Error(`${built} is not there. Run npm run build.`);
  return built;
}

/**
 * Features of the browser that a test has no use for. The last list given counts: it holds those that Playwright switches off for a page
 * that opens from disk. The lists under the address bar are pages of their own: with each window they cost more than the page does.
 */
const unwanted = [
  'AimEnabled',
  'AvoidUnnecessaryBeforeUnloadCheckSync',
  'DestroyProfileOnBrowserClose',
  'MediaRouter',
  'NetworkTimeServiceQuerying',
  'OptimizationHints',
  'PaintHolding',
  'PreconnectToSearch',
  'WebUIOmniboxAimPopup',
  'WebUIOmniboxFullPopup',
  'WebUIOmniboxPopup',
];

/** Chromium without anything that would speak to a network by itself. */
export function launchChromium(): Promise<Browser> {
  return chromium.launch({
    executablePath: findChromium(),
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      `--disable-features=${unwanted.join(',')}`,
    ],
  });
}

/** A page opened from disk without a network, with all it said: console, errors, dialogs, requests. */
export interface OpenedPage {
  readonly page: Page;
  readonly told: readonly string[];
}

export async function openPage(
  browser: Browser,
  options: BrowserContextOptions = {},
  file: string = builtPage(),
): Promise<OpenedPage> {
  const context = await browser.newContext({
    offline: true,
    viewport: { width: 1366, height: 768 },
    acceptDownloads: true,
    ...options,
  });
  const page = await context.newPage();
  const told: string[] = [];
  page.on('console', (message) => told.push(`console: ${message.text()}`));
  page.on('pageerror', (error) => told.push(`error: ${error.message}`));
  page.on('dialog', (dialog) => {
    told.push(`dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  page.on('request', (request) => {
    const isOwn = request.url() === `file://${file}` || request.url().startsWith('blob:');
    if (!isOwn) told.push(`request: ${request.url()}`);
  });
  await page.goto(`file://${file}`);
  await page.waitForSelector('#demo');
  return { page, told };
}

/** Opens the demo site and waits for the list of pairs. */
export async function openDemo(page: Page): Promise<void> {
  await page.click('#demo');
  await page.waitForSelector('table.pairs .strip');
}

/** The ids of all views, in the order of the page's first row. */
export async function viewsOf(page: Page): Promise<readonly string[]> {
  const links = await page.locator('header nav a').all();
  return Promise.all(links.map(async (link) => (await link.getAttribute('href'))?.slice(1) ?? ''));
}

/** Goes to a view by its word in the first row. */
export async function goToView(page: Page, id: string): Promise<void> {
  await page.click(`header nav a[href="#${id}"]`);
  await page.waitForSelector(`${id}-view`);
}

/** Goes to the first swap record by name (in the demo the clean one, of RO1), and waits until its staff is drawn. */
export async function goToSwap(page: Page): Promise<void> {
  await goToView(page, 'swap');
  const records = await page.locator('#swap option').allTextContents();
  const index = records.findIndex((words) => !words.includes('no replacement'));
  if (index >= 0) await page.selectOption('#swap', { index });
  await page.waitForSelector('staff-figure chart-figure svg');
}

/** Goes to the record of the demo site's swap that is not verified. */
export async function goToBadSwap(page: Page): Promise<void> {
  await goToSwap(page);
  await page.selectOption('#swap', { index: 2 });
  await page.waitForSelector('.verdict:has-text("not verified")');
  await page.waitForSelector('staff-figure chart-figure svg');
}

/** A folder of its own with some files in it. */
export function folderWith(files: Readonly<Record<string, string>>): string {
  const folder = mkdtempSync(join(tmpdir(), 'steadypair-page-'));
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return folder;
}

/** Gives files to the page as a person who chooses them. */
export async function choose(page: Page, ...paths: readonly string[]): Promise<void> {
  await page.setInputFiles('start-view input[type=file]:not([webkitdirectory])', paths);
}

/** What the browser saves when a button is pressed. */
export async function download(page: Page, button: string): Promise<{ name: string; text: string }> {
  const [file] = await Promise.all([page.waitForEvent('download'), page.click(button)]);
  return { name: file.suggestedFilename(), text: readFileSync((await file.path()) ?? '', 'utf8') };
}

/** Watches the tasks of the page's main thread from now on; gives how long the longest of 50 ms or more took so far. */
export async function watchLongTasks(page: Page): Promise<() => Promise<number>> {
  await page.evaluate(
    `globalThis.tasks = []; new PerformanceObserver((list) => tasks.push(...list.getEntries().map((e) => e.duration))).observe({ type: 'longtask' });`,
  );
  return async () => Number(await page.evaluate('Math.max(0, ...tasks)'));
}
