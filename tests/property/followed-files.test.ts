/** Logs that are written, rotated, cut, moved and replaced at random: each row of them counts once, and none is lost. */
import {
  appendFileSync,
  copyFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  renameSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { type Random, seeded } from '../../samples/random.ts';
import { type FollowedFolder, followFolder, logRow, newFolder } from '../support/followed-folder.ts';

const tried: Record<string, number> = {};
afterAll(() => {
  const told = Object.entries(tried).map(([name, count]) => `${count} ${name}`);
  console.log(`followed files: ${told.join(', ')}`);
});

/** A site as it truly is. */
interface Site {
  readonly random: Random;
  readonly folder: string;
  readonly share: string;
  readonly log: string;
  readonly followed: FollowedFolder;
  /** What must be read: all whole rows of what was not replaced. */
  readonly rows: Set<string>;
  /** The rows of the file that is written now. */
  own: string[];
  next: number;
  /** What is still to be written of the last row. */
  rest: string;
  count: number;
}

async function look(site: Site): Promise<void> {
  tried.looks = (tried.looks ?? 0) + 1;
  const { rows, failures } = await site.followed.look();
  expect(rows).toEqual([...site.rows].sort());
  // An empty log is none that can be read yet.
  expect(failures.filter(({ what }) => !/empty|contains no logs|no lines/.test(what))).toEqual([]);
}

function finishRow(site: Site, to = site.log): void {
  if (site.rest === '') return;
  appendFileSync(to, site.rest);
  site.rest = '';
  site.rows.add(site.own.at(-1) ?? '');
}

function append(site: Site, count: number): void {
  finishRow(site);
  for (let i = 0; i < count; i += 1) {
    const row = logRow(site.next);
    site.next += 1;
    site.own.push(row);
    site.rows.add(row);
    appendFileSync(site.log, `${row}\n`);
  }
}

/** All that may happen. */
const happenings: Readonly<Record<string, (site: Site) => Promise<void> | void>> = {
  appended: (site) => append(site, 1 + Math.floor(site.random() * 5)),
  'half rows'(site) {
    finishRow(site);
    const row = `${logRow(site.next)}\n`;
    const cut = 1 + Math.floor(site.random() * (row.length - 2));
    site.next += 1;
    site.own.push(row.trimEnd());
    appendFileSync(site.log, row.slice(0, cut));
    site.rest = row.slice(cut);
  },
  async renamed(site) {
    const to = `${site.log}.${site.count}`;
    renameSync(site.log, to);
    if (site.random() < 0.5) await look(site);
    // Whoever writes has it open still.
    finishRow(site, to);
    writeFileSync(site.log, '');
    site.own = [];
  },
  async 'copied and cut'(site) {
    finishRow(site);
    copyFileSync(site.log, `${site.log}.${site.count}`);
    truncateSync(site.log);
    site.own = [];
    await look(site);
  },
  async cut(site) {
    finishRow(site);
    await look(site);
    truncateSync(site.log);
    site.own = [];
    if (site.random() < 0.5) await look(site);
    append(site, 1 + Math.floor(site.random() * 5));
  },
  async 'away for a while'(site) {
    await look(site);
    renameSync(site.share, join(site.folder, 'away'));
    await look(site);
    renameSync(join(site.folder, 'away'), site.share);
  },
  async 'back with other inodes'(site) {
    await look(site);
    cpSync(site.share, join(site.folder, 'copy'), { recursive: true });
    rmSync(site.share, { recursive: true });
    if (site.random() < 0.5) await look(site);
    renameSync(join(site.folder, 'copy'), site.share);
  },
  async replaced(site) {
    finishRow(site);
    if (site.own.length < 5) append(site, 5);
    await look(site);
    const [first = '', second = ''] = site.own;
    const others = [first, second].map((row) =>
      row.replace('RO1-A', 'RO2-B').replace('6.4', `7.${site.count}`),
    );
    for (const row of site.own) site.rows.delete(row);
    for (const row of others) site.rows.add(row);
    const isMoved = site.random() < 0.5;
    writeFileSync(isMoved ? `${site.log}.part` : site.log, `${others.join('\n')}\n`);
    if (isMoved) renameSync(`${site.log}.part`, site.log);
    await look(site);
    site.own = others;
  },
  'new files'(site) {
    const row = logRow(site.next).replace('RO1-A', `RO${3 + (site.count % 5)}-A`);
    site.next += 1;
    site.rows.add(row);
    const below = join(site.share, `more-${site.count % 3}`);
    if (!existsSync(below)) mkdirSync(below);
    writeFileSync(join(below, `${site.count}.log`), `${row}\n`);
  },
};

describe('logs that are written, rotated, cut, moved and replaced', () => {
  test.each(Array.from({ length: 24 }, (_, index) => index + 1))(
    'count each row once (seed %i)',
    async (seed) => {
      const random = seeded(seed);
      const folder = newFolder();
      const share = join(folder, 'share');
      mkdirSync(share);
      const followed = followFolder([share]);
      const log = join(share, 'ro1.log');
      const site: Site = {
        random,
        folder,
        share,
        log,
        followed,
        rows: new Set(),
        own: [],
        next: 0,
        rest: '',
        count: 0,
      };
      append(site, seed % 3 === 0 ? 1500 : 3);
      await look(site);
      const names = Object.keys(happenings);
      for (let step = 0; step < 20; step += 1) {
        const name = names[Math.floor(random() * names.length)] ?? '';
        tried[name] = (tried[name] ?? 0) + 1;
        site.count += 1;
        await happenings[name]?.(site);
        if (random() < 0.6) await look(site);
      }
      finishRow(site);
      await look(site);
      const { rows } = await followed.look(true);
      expect(rows).toEqual([...site.rows].sort());
      await followed.files.close();
      rmSync(folder, { recursive: true });
    },
    60_000,
  );
});
