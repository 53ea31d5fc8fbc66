/**
 * What the policy leaves to a script of the page's own, measured by putting one more into it with its hash: in the page and in a
 * worker made of a Blob, which inherits the policy (HTML Living Standard, "Initialize worker policy container", blob URLs;
 * CSP Level 3, section 4.1). Code of the browser's driver would be exempt.
 */
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { builtPage, folderWith, goToView, launchChromium, openPage } from '../support/open-page.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

/** Tries one thing after the other and says of each whether it was let. */
const attempts = `
  const attempts = {
    compile: () => { new Function('return 1')(); },
    request: async () => { await fetch('data:text/plain,x'); },
    otherScript: async () => { await import('data:text/javascript,export%20const%20a=1'); },
    otherWorker: () => new Promise((done, refuse) => {
      const worker = new Worker('data:text/javascript,postMessage(1)');
      worker.onmessage = done;
      worker.onerror = () => refuse(new Error('refused'));
    }),
  };
  const tryAll = async () => {
    const said = [];
    for (const [name, attempt] of Object.entries(attempts))
      said.push(name + ' ' + await Promise.resolve().then(attempt).then(() => 'let', () => 'refused'));
    return said.join(', ');
  };`;

const probe = `${attempts}
  const shown = (id, text) => { const p = document.createElement('p'); p.id = id; p.textContent = text; document.body.append(p); };
  const source = ${JSON.stringify(`${attempts} tryAll().then((said) => postMessage(said));`)};
  const worker = new Worker(URL.createObjectURL(new Blob([source], { type: 'text/javascript' })));
  worker.onmessage = ({ data }) => shown('probe-worker', data);
  tryAll().then((said) => shown('probe-page', said));`;

/** The built page with one thing changed, opened. */
async function openChanged(
  change: (page: string) => string,
): Promise<{ page: Page; told: readonly string[] }> {
  const file = join(folderWith({}), 'changed.html');
  writeFileSync(file, change(readFileSync(builtPage(), 'utf8')));
  return openPage(browser, {}, file);
}

/** With one more script, whose hash stands in the policy. */
function withOwnScript(page: string): string {
  const hash = createHash('sha256').update(probe).digest('base64');
  return page
    .replace("script-src '", () => `script-src 'sha256-${hash}' '`)
    .replace('<noscript>', () => `<script>${probe}</script><noscript>`);
}

describe('the policy, for a script of the page’s own', () => {
  test.each(['page', 'worker'])('lets it compile and do nothing else, in the %s', async (where) => {
    const { page } = await openChanged(withOwnScript);
    expect(await page.textContent(`#probe-${where}`)).toBe(
      'compile let, request refused, otherScript refused, otherWorker refused',
    );
    await page.context().close();
  });

  test.each(['page', 'worker'])(
    'and nothing but the policy keeps it from the rest, in the %s',
    async (where) => {
      const { page } = await openChanged((text) =>
        withOwnScript(text).replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/, ''),
      );
      expect(await page.textContent(`#probe-${where}`)).toBe(
        'compile let, request let, otherScript let, otherWorker let',
      );
      await page.context().close();
    },
  );

  test('without its exception keeps the tables of the fleet from being made: the worker inherits it', async () => {
    const { page } = await openChanged((text) => text.replace(" 'unsafe-eval'", ''));
    await page.click('#demo-fleet');
    await page.waitForSelector('table.pairs .strip');
    await goToView(page, 'fleet');
    await page.waitForSelector('[role=alert]:has-text("unsafe-eval")');
    expect(await page.locator('fleet-view .verdict').count()).toBe(0);
    await page.context().close();
  });

  test('loads no script and no picture that stands beside the page', async () => {
    const folder = folderWith({
      'other.js': 'document.title = "other"',
      'other.svg': '<svg xmlns="http://www.w3.org/2000/svg"/>',
    });
    const other = (name: string): string => pathToFileURL(join(folder, name)).href;
    const { page, told } = await openChanged((text) =>
      text.replace(
        '<noscript>',
        () =>
          `<script src="${other('other.js')}"></script><img src="${other('other.svg')}" alt=""><noscript>`,
      ),
    );
    const refused = told.filter((line) => line.includes('Content Security Policy'));
    expect(
      ['other.js', 'other.svg'].map((name) => refused.filter((line) => line.includes(name)).length),
    ).toEqual([1, 1]);
    expect(await page.title()).toBe('Steadypair');
    await page.context().close();
  });
});
