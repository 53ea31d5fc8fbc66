import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';

/** Makes the picker of the page give a folder `logs` that the test writes with `write`. */
export async function giveFolder(page: Page): Promise<void> {
  await page.evaluate(() => {
    const logs = new Map<string, { text: string; at: number }>();
    const fileOf = (name: string) => ({
      kind: 'file',
      name,
      async getFile() {
        const found = logs.get(name);
        if (found === undefined) throw new DOMException('gone', 'NotFoundError');
        return new File([found.text], name, { lastModified: found.at });
      },
    });
    const folder = {
      kind: 'directory',
      name: 'logs',
      async *values() {
        for (const name of logs.keys()) yield fileOf(name);
      },
    };
    Object.assign(window, { logs, showDirectoryPicker: async () => folder });
  });
}

/** Writes files of the folder; `null` takes one away. What has its content already is left alone. */
export async function write(page: Page, files: Readonly<Record<string, string | null>>): Promise<void> {
  await page.evaluate((all) => {
    if (!('logs' in window) || !(window.logs instanceof Map)) throw new Error('There is no folder.');
    for (const [name, text] of Object.entries(all)) {
      if (text === null) window.logs.delete(name);
      else if (window.logs.get(name)?.text !== text) window.logs.set(name, { text, at: Date.now() });
    }
  }, files);
}

/** Follows that folder from the start, until its view is shown. */
export async function follow(page: Page): Promise<void> {
  await page.click('button.follow');
  await page.waitForSelector('now-view h1');
}

const story = join('samples', 'marrow-bay', 'clean-swap');

/** The logs of the demo site's clean swap as they were at a clock of that day, such as `09:22:00`. */
export function cleanSwapUntil(clock: string): Readonly<Record<string, string>> {
  const names = readdirSync(story).filter((name) => /\.(log|csv)$|^phrasebook/.test(name));
  return Object.fromEntries(
    names.map((name) => {
      const text = readFileSync(join(story, name), 'utf8');
      if (name.endsWith('.yaml')) return [name, text];
      const lines = text.split('\n').filter((line) => (/\d\d:\d\d:\d\d/.exec(line)?.[0] ?? '') <= clock);
      return [name, `${lines.join('\n').trimEnd()}\n`];
    }),
  );
}
