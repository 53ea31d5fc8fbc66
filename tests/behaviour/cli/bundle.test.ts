import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { newFolder, story } from '../../support/demo-story.ts';
import { steadypair } from '../../support/run-command.ts';
import { membersOf, textIn, zipWith } from '../../support/zip-members.ts';

/** The words of a JSON document with the names of its files without their folders, and without the archives they came in. */
function withoutPlaces(json: string, ...folders: readonly string[]): string {
  const bare = folders.reduce((text, folder) => text.replaceAll(`${folder}/`, ''), json);
  return bare.replace(/\n {3}"container": \{\n.*\n.*\n {3}\},/g, '');
}

describe('a bundle', () => {
  test.each([
    ['verify', 'clean-swap', 0],
    ['verify', 'bad-swap', 1],
    ['diagnose', 'wont-sync', 1],
  ] as const)('%s of %s leads to the same document when it is read back', async (command, name, status) => {
    const { folder, args } = story(name);
    const zip = join(newFolder(), 'case.zip');
    const made = await steadypair(command, ...args, '--json', '--bundle', zip);
    const again = await steadypair(command, zip, '--json');
    expect([made.status, made.err, again.status, again.err]).toEqual([status, '', status, '']);
    expect(withoutPlaces(again.out, `${zip}/logs`)).toBe(withoutPlaces(made.out, folder));
    expect(again.out).not.toContain('"container"');
  });

  test('holds what its manifest lists, opens elsewhere, and is the same twice', async () => {
    const { folder, args } = story('bad-swap');
    const [one, two] = [join(newFolder(), 'one.zip'), join(newFolder(), 'two.zip')];
    for (const zip of [one, two]) await steadypair('verify', ...args, '--bundle', zip);
    const bytes = readFileSync(one);
    expect(bytes.equals(readFileSync(two))).toBe(true);
    const members = await membersOf(bytes);
    const manifest = JSON.parse(textIn(members, 'manifest.json'));
    expect(manifest.schema).toBe('steadypair/bundle/1');
    const listed = manifest.members.map((m: { name: string }) => m.name);
    expect([...listed, 'manifest.json'].sort()).toEqual([...members.keys()].sort());
    for (const { name, bytes: size, sha256 } of manifest.members) {
      const found = members.get(name) ?? new Uint8Array(0);
      expect([name, found.length, createHash('sha256').update(found).digest('hex')]).toEqual([
        name,
        size,
        sha256,
      ]);
    }
    for (const name of readdirSync(folder).filter((n) => n.startsWith('ro3')))
      expect(readFileSync(join(folder, name)).equals(members.get(`logs/${name}`) ?? new Uint8Array(0))).toBe(
        true,
      );
    expect(textIn(members, 'phrasebook.yaml')).toBe(readFileSync(join(folder, 'phrasebook.yaml'), 'utf8'));
    expect(textIn(members, 'README.txt')).toContain('check at the cabinet which half is standby');
    expect(textIn(members, 'reports/RO3-swap-2026-03-17.md')).toContain('logs/ro3-events.log');
  });

  test('applies settings, pair and time of its run, unless others are said', async () => {
    const { folder, args } = story('clean-swap');
    const zip = join(newFolder(), 'case.zip');
    const said = [
      '--pair',
      'RO1',
      '--from',
      '2026-03-14T00:00:00Z',
      '--hold',
      '45',
      '--zone',
      'Europe/Lisbon',
    ];
    const made = await steadypair(
      'verify',
      ...args,
      ...said,
      '--align-clocks',
      '--reference',
      join(folder, 'ro1-journal.csv'),
      '--json',
      '--bundle',
      zip,
    );
    const again = await steadypair('verify', zip, '--json');
    expect(withoutPlaces(again.out, `${zip}/logs`)).toBe(withoutPlaces(made.out, folder));
    expect(JSON.parse(textIn(await membersOf(readFileSync(zip)), 'settings.json'))).toMatchObject({
      pair: 'RO1',
      from: '2026-03-14T00:00:00.000Z',
      hold: 45,
      align: true,
      reference: 'logs/ro1-journal.csv',
    });
    const other = await steadypair('verify', zip, '--to', '2026-03-01T00:00:00Z', '--json');
    expect([other.status, JSON.parse(other.out).swaps]).toEqual([3, []]);
    const job = join(newFolder(), 'job.yaml');
    writeFileSync(job, 'plan: { RO1: { A: { firmware: 9.9.9 } } }\n');
    const planned = await steadypair('verify', zip, '--job', job, '--json');
    expect([planned.status, planned.out]).toEqual([1, expect.stringContaining('9.9.9')]);
  });

  test('given to any command its logs are read with its phrasebook', async () => {
    const zip = join(newFolder(), 'case.zip');
    const { args } = story('bad-swap');
    await steadypair('verify', ...args, '--bundle', zip);
    for (const command of ['fleet', 'timeline', 'inspect', 'diagnose']) {
      const { out, err, status } = await steadypair(command, zip, '--json');
      expect([command, err, status === 2]).toEqual([command, '', false]);
      expect(out).toContain(`${zip}/logs/ro3-poll.csv`);
      expect(out).not.toContain('verify.json');
    }
  });

  test('takes members of archives, UTF-16 and two files of one name from two folders as they are', async () => {
    const folder = newFolder();
    const source = story('bad-swap').folder;
    for (const name of ['a', 'b']) mkdirSync(join(folder, name));
    const events = readFileSync(join(source, 'ro3-events.log'), 'utf8');
    const wide = Buffer.from(`\uFEFF${events.replaceAll('\n', '\r\n')}`, 'utf16le');
    writeFileSync(join(folder, 'a', 'events.log'), wide);
    writeFileSync(join(folder, 'b', 'events.log'), events.split('\n').slice(0, 9).join('\n'));
    writeFileSync(join(folder, 'poll.csv.gz'), gzipSync(readFileSync(join(source, 'ro3-poll.csv'))));
    writeFileSync(
      join(folder, 'rest.zip'),
      await zipWith([['deep/ro3-notes.txt', readFileSync(join(source, 'ro3-notes.txt'))]]),
    );
    writeFileSync(join(folder, 'broken.log'), Uint8Array.from([1, 2, 3, 0, 4, 5, 6, 0, 7]));
    const book = readFileSync(join(source, 'phrasebook.yaml'), 'utf8').replace('*-poll.csv', 'poll.csv');
    const yaml = join(newFolder(), 'site.yaml');
    writeFileSync(yaml, book);
    const zip = join(newFolder(), 'case.zip');
    const made = await steadypair('verify', folder, '--phrasebook', yaml, '--json', '--bundle', zip);
    const members = await membersOf(readFileSync(zip));
    const logs = [...members.keys()].filter((name) => name.startsWith('logs/')).sort();
    expect(logs).toEqual([
      'logs/a/events.log',
      'logs/b/events.log',
      'logs/broken.log',
      'logs/poll.csv',
      'logs/ro3-notes.txt',
    ]);
    expect(wide.equals(members.get('logs/a/events.log') ?? new Uint8Array(0))).toBe(true);
    const again = await steadypair('verify', zip, '--json');
    expect(again.status).toBe(made.status);
    expect(again.err).toContain('broken.log');
    expect(withoutPlaces(again.out, `${zip}/logs`)).toBe(
      withoutPlaces(made.out, `${folder}/poll.csv.gz`, `${folder}/rest.zip/deep`, folder),
    );
  });

  test('what was cut off is so again', async () => {
    const folder = newFolder();
    const source = readFileSync(join(story('bad-swap').folder, 'ro3-poll.csv'));
    const packed = gzipSync(source);
    writeFileSync(join(folder, 'poll.csv.gz'), packed.subarray(0, packed.length - 200));
    const zip = join(newFolder(), 'case.zip');
    const book = ['--phrasebook', join(story('bad-swap').folder, 'phrasebook.yaml')];
    const made = await steadypair('verify', folder, ...book, '--json', '--bundle', zip);
    const again = await steadypair('verify', zip, '--json');
    expect(made.out).toContain('damaged-tail');
    expect(withoutPlaces(again.out, `${zip}/logs`)).toBe(
      withoutPlaces(made.out, `${folder}/poll.csv.gz`, folder),
    );
  });

  test('among its own logs it is output of this program, and is written again', async () => {
    const folder = newFolder();
    cpSync(story('bad-swap').folder, folder, { recursive: true });
    const zip = join(folder, 'case.zip');
    const args = ['verify', folder, '--phrasebook', join(folder, 'phrasebook.yaml'), '--bundle', zip];
    const first = await steadypair(...args);
    const bytes = readFileSync(zip);
    const second = await steadypair(...args);
    expect([first.err, second.err]).toEqual([
      '',
      `${zip}: skipped: it is output of this program, not a log.\n`,
    ]);
    expect(readFileSync(zip).equals(bytes)).toBe(true);
  });

  test('is never written over what is read, and a place that cannot be written is one line', async () => {
    const { folder, args } = story('bad-swap');
    const copy = newFolder();
    cpSync(folder, copy, { recursive: true });
    const log = join(copy, 'ro3-poll.csv');
    const over = await steadypair('verify', copy, '--bundle', log);
    expect([over.status, over.err]).toEqual([
      2,
      `${log}: it is one of the files to read. Write to another place.\n`,
    ]);
    const nowhere = await steadypair('verify', ...args, '--bundle', join(log, 'case.zip'));
    expect([nowhere.status, nowhere.err.split('\n').length]).toEqual([2, 2]);
    const unmade = await steadypair('verify', ...args, '--mask');
    expect([unmade.status, unmade.err]).toEqual([
      2,
      '--mask: there is no bundle to mask. Name one with --bundle FILE.zip.\n',
    ]);
  });
});
