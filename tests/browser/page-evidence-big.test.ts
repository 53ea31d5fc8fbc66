import { appendFileSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeBig } from '../../samples/big.ts';
import { choose, folderWith, goToView, launchChromium, openPage, viewsOf } from '../support/open-page.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser?.close());

const atOnce = 8;
/** How long an answer may take on a busy machine. */
const soon = { timeout: 20_000 };
/** Seconds: the browser compares the time of a file to its fractions. */
const writtenAt = 1_770_000_000;
const pollsFrom = Date.UTC(2026, 1, 1);

/** Polls, after all the others, of a pair whose standby is replaced; a parameter that no rule knows stands among them. */
function replacement(): string {
  const rows: string[] = [];
  for (let second = 0; second < 7200; second += 10) {
    const stamp = new Date(pollsFrom + second * 1000).toISOString();
    const isOut = second >= 1800 && second < 2100;
    const isReady = second < 1800 || second >= 2400;
    const serial = second < 1800 ? 'S-1002' : isOut ? '' : 'S-1003';
    rows.push(
      `${stamp},RO9-A,role,active`,
      `${stamp},RO9-A,serial,S-1001`,
      `${stamp},RO9-B,role,${isOut ? 'none' : 'standby'}`,
      `${stamp},RO9-B,serial,${serial}`,
      `${stamp},RO9,partner-ready,${isReady ? 'yes' : 'no'}`,
      `${stamp},RO9-B,light,${isReady ? 'steady' : 'off'}`,
      `${stamp},RO9-A,spin,1`,
    );
  }
  return `${rows.join('\n')}\n`;
}

interface Note {
  readonly file: string;
  readonly said: string;
  readonly cited: number;
  readonly lines: readonly (readonly [number, string])[];
}

interface Shown {
  readonly title: string;
  readonly notes: readonly Note[];
}

/** What the margin shows. */
async function shown(page: Page): Promise<Shown> {
  return page.evaluate(`(() => {
    const text = (of, selector) => of.querySelector(selector)?.textContent.trim() ?? '';
    const notes = [...document.querySelectorAll('side-notes .note')].map((note) => ({
      file: text(note, 'figcaption'),
      said: text(note, '.inconclusive'),
      cited: note.querySelectorAll('.cited-line').length,
      lines: [...note.querySelectorAll('li')].map((li) => [li.value, li.querySelector('code').textContent]),
    }));
    return { title: text(document, 'side-notes .cited'), notes };
  })()`);
}

/** Waits until the margin shows what is wanted, every note of it with the lines around; points again where the page moved under the pointer. */
async function settled(
  page: Page,
  title: string,
  point: () => Promise<void> = async () => {},
): Promise<readonly Note[]> {
  await expect
    .poll(async () => {
      const { title: now, notes } = await shown(page);
      if (now !== title) await point();
      return now === title && notes.every(({ lines, cited }) => lines.length > cited);
    }, soon)
    .toBe(true);
  return (await shown(page)).notes;
}

/** The lines shown that are not those of the file. */
function wrong(notes: readonly Note[], lines: readonly string[]): readonly (readonly [number, string])[] {
  return notes.flatMap((note) => note.lines.filter(([number, text]) => lines[number - 1] !== text));
}

const rowsWithLines = ':is(tr, li):has(> * lines-button, > lines-button)';

describe.each(['5', '50'])('evidence from a poll of %s MB', (megabytes) => {
  let file = '';
  let lines: readonly string[] = [];
  let page: Page;
  let told: readonly string[] = [];
  beforeAll(async () => {
    file = join(folderWith({}), 'big.csv');
    await writeBig(file, megabytes);
    appendFileSync(file, replacement());
    lines = readFileSync(file, 'utf8').split('\n');
    ({ page, told } = await openPage(browser));
    await choose(page, file);
    await page.waitForSelector('table.pairs .strip', { timeout: 50_000 });
  });
  afterAll(async () => {
    await page?.context().close();
    rmSync(dirname(file), { recursive: true });
  });

  test.each(['pairs', 'swap', 'diagnosis', 'fleet', 'sources'])(
    'shows the lines of the file in the view %s, eight at once and one after the other',
    async (view) => {
      expect(await viewsOf(page)).toContain(view);
      await goToView(page, view);
      if (view === 'swap') await page.selectOption('#swap', { label: 'RO9, 1 Feb 2026 00:14:50' });
      // The pair that was chosen before stays chosen; this one has rows with lines there.
      if (view === 'diagnosis') await page.selectOption('#diagnosed', 'RO1');
      await page.waitForSelector(`${view}-view ${rowsWithLines}`, { ...soon, state: 'attached' });
      await page.evaluate("document.querySelectorAll('main details').forEach((fold) => (fold.open = true))");
      const rows = page.locator(`${view}-view ${rowsWithLines}`);
      const count = Math.min(atOnce, await rows.count());
      expect(count).toBeGreaterThan(view === 'sources' ? 0 : 3);
      // Eight in one task, then eight as fast as a pointer goes.
      await page.evaluate(
        `[...document.querySelectorAll(${JSON.stringify(`${view}-view ${rowsWithLines}`)})].slice(0, ${count}).forEach((row) => row.dispatchEvent(new MouseEvent('mouseenter')))`,
      );
      for (let at = 0; at < count; at += 1) await rows.nth(at).hover();
      let seen = 0;
      for (let at = 0; at < count; at += 1) {
        const point = async (): Promise<void> => {
          await page.mouse.move(0, 0);
          await rows.nth(at).hover();
        };
        await point();
        const title = await rows
          .nth(at)
          .locator('lines-button')
          .first()
          .evaluate((button) => ('of' in button ? String(button.of) : ''));
        const notes = await settled(page, title, point);
        expect([view, at, wrong(notes, lines)]).toEqual([view, at, []]);
        expect(notes.map(({ said }) => said).join('')).toBe('');
        seen += notes.length;
      }
      expect(seen).toBeGreaterThanOrEqual(count);
      expect(told).toEqual([]);
    },
  );

  test('shows the lines of questions that all wait in one queue', async () => {
    // What eight hovers asked the reader at once in the past, without a rest between.
    const places = Array.from(
      { length: 24 },
      (_, at) => 1 + Math.floor(((lines.length - 10) * ((at * 7) % 24)) / 24),
    );
    const cited = places.map((line) => ({ file: 'big.csv', line, text: lines[line - 1] ?? '' }));
    const found: readonly { first: number; lines: readonly string[]; state: string }[][] =
      await page.evaluate(
        `Promise.all(${JSON.stringify(cited)}.map((at) => document.querySelector('steadypair-page').state.session.ask({ kind: 'lines', cited: [at], reach: 2 })))`,
      );
    for (const [at, line] of places.entries()) {
      const first = Math.max(1, line - 2);
      const expected = { first, last: line, lines: lines.slice(first - 1, line + 2), state: 'same' };
      expect(found[at]).toEqual([expected]);
    }
  });
});

describe('evidence from a file that is not as it was read', () => {
  const journal = `time,unit,message
2026-03-14T09:00:00Z,RO1,partner ready
2026-03-14T09:10:00Z,RO1,partner not ready
2026-03-14T09:10:05Z,RO1-B,restart
`;

  async function reread(name: string, change: (path: string) => void): Promise<readonly Note[]> {
    const path = join(folderWith({ [name]: journal }), name);
    utimesSync(path, writtenAt, writtenAt);
    const { page } = await openPage(browser);
    await choose(page, path);
    await page.waitForSelector('table.pairs .strip');
    change(path);
    await page.hover('table.pairs tbody tr');
    await page.waitForSelector('side-notes .note .inconclusive');
    const { notes } = await shown(page);
    await page.context().close();
    return notes;
  }

  test('shows what was read and says that the file says it no longer', async () => {
    const notes = await reread('swapped.csv', (path) => {
      // As many bytes, and the same time: only its lines tell that it changed.
      writeFileSync(path, journal.replace('RO1,partner not ready', 'RO2,partner not ready'));
      utimesSync(path, writtenAt, writtenAt);
    });
    expect(notes).toHaveLength(1);
    expect(notes[0]?.said).toBe('The file on disk no longer says this. The line is shown as it was read.');
    expect(notes[0]?.lines).toEqual([[3, '2026-03-14T09:10:00Z,RO1,partner not ready']]);
  });

  test('shows what was read and says that the file can no longer be read', async () => {
    const notes = await reread('deleted.csv', (path) => rmSync(path));
    expect(notes[0]?.said).toContain('The file can no longer be read');
    expect(notes[0]?.lines).toEqual([[3, '2026-03-14T09:10:00Z,RO1,partner not ready']]);
  });

  test('in an archive shows the lines of the member', async () => {
    const folder = folderWith({});
    writeFileSync(join(folder, 'a.csv.gz'), gzipSync(journal));
    const { page } = await openPage(browser);
    await choose(page, join(folder, 'a.csv.gz'));
    await page.waitForSelector('table.pairs .strip');
    await page.hover('table.pairs tbody tr');
    const notes = await settled(page, 'RO1: no ready partner since 14 Mar 2026 09:10:00');
    expect(notes[0]?.file).toBe('a.csv.gz/a.csv, line 3');
    expect(wrong(notes, journal.split('\n'))).toEqual([]);
    await page.context().close();
  });
});
