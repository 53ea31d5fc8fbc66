import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { platform } from '../../../src/cli/platform.ts';
import { InputError, importFiles, readPhrasebook } from '../../../src/pipeline.ts';
import { fileWith, steadypair } from '../../support/run-command.ts';

const command = resolve('dist', 'steadypair.mjs');
const fleet = resolve('samples', 'marrow-bay-fleet');
const emptyFolder = (): string => mkdtempSync(join(tmpdir(), 'faults-'));

describe('writing a report', () => {
  test('that the disk has no room for leaves the old one whole, and says so in one line', () => {
    const out = emptyFolder();
    for (const name of ['fleet.html', 'fleet.json']) writeFileSync(join(out, name), 'the old one');
    // No file may be larger than 8 blocks: as a full disk would, the system stops the write in its middle.
    const limited = `ulimit -f 8; exec "$0" "$@"`;
    const run = spawnSync('bash', ['-c', limited, process.execPath, command, 'fleet', fleet, '--out', out], {
      encoding: 'utf8',
    });
    expect(run.status).toBe(2);
    expect(run.stderr.trimEnd().split('\n')).toEqual([
      `${join(out, 'fleet.html')}: it would be larger than the file system allows. Choose another place.`,
    ]);
    expect(readFileSync(join(out, 'fleet.html'), 'utf8')).toBe('the old one');
    expect(readdirSync(out).sort()).toEqual(['fleet.html', 'fleet.json']);
  });

  test('where a folder is in its place, or a file in place of its folder, is one line', async () => {
    const out = emptyFolder();
    mkdirSync(join(out, 'fleet.html'));
    const taken = await steadypair('fleet', fleet, '--out', out);
    expect([taken.status, taken.err]).toEqual([
      2,
      `${join(out, 'fleet.html')}: it is a folder. Name a file.\n`,
    ]);
    expect(readdirSync(out)).toEqual(['fleet.html']);
    const file = fileWith('x', 'x.txt');
    const under = await steadypair('fleet', fleet, '--out', join(file, 'reports'));
    expect([under.status, under.err]).toEqual([
      2,
      `${join(file, 'reports', 'fleet.html')}: part of its path is not a folder. Check the name.\n`,
    ]);
  });

  test('and killed at any moment leaves each file whole: the old one or the new', async () => {
    const out = emptyFolder();
    const write = (): ChildProcess =>
      spawn(process.execPath, [command, 'fleet', fleet, '--out', out], { stdio: 'ignore' });
    await ended(write());
    const whole = new Map(readdirSync(out).map((name) => [name, readFileSync(join(out, name), 'utf8')]));
    expect(whole.size).toBe(10);
    for (let wait = 150; wait <= 1200; wait += 75) {
      const running = write();
      const end = ended(running);
      await new Promise((done) => setTimeout(done, wait));
      running.kill('SIGKILL');
      await end;
      for (const [name, text] of whole)
        expect([name, readFileSync(join(out, name), 'utf8') === text]).toEqual([name, true]);
    }
  }, 60_000);
});

function ended(running: ChildProcess): Promise<void> {
  return new Promise((done) => running.once('close', () => done()));
}

describe('an input that changes while it is read', () => {
  const row = (minute: number): string =>
    `2026-03-14T09:${String(minute).padStart(2, '0')}:00Z,RO1,partner-ready,${minute % 2 === 0 ? 'yes' : 'no'}\n`;
  const header = 'time,unit,parameter,value\n';
  const options = {
    phrasebook: readPhrasebook('x', null),
    zone: null,
    order: null,
    year: null,
    sha256: platform.sha256,
  };
  const source = (
    name: string,
    pieces: () => AsyncIterable<Uint8Array>,
  ): Parameters<typeof importFiles>[0][number] => ({
    name,
    bytes: 100,
    open: pieces,
  });
  const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

  test('as it vanishes, is a line; the others are read', async () => {
    const good = source('good.csv', async function* () {
      yield bytes(header + row(0));
    });
    const gone = source('gone.csv', async function* () {
      yield bytes(header + row(0));
      throw new InputError('gone.csv', 'there is no such file or folder.', 'Check the name.');
    });
    const { files, failures } = await importFiles([gone, good], options);
    expect(files.map((f) => f.input.file)).toEqual(['good.csv']);
    expect(failures.map((f) => f.message)).toEqual([
      'gone.csv: there is no such file or folder. Check the name.',
    ]);
  });

  test('as it grows or shrinks, is what was read of it', async () => {
    let opened = 0;
    const growing = source('growing.csv', async function* () {
      opened += 1;
      yield bytes(header + row(0));
      for (let minute = 1; minute <= opened; minute += 1) yield bytes(row(minute));
    });
    const { files } = await importFiles([growing], options);
    const [file] = files;
    expect(file?.input.rows.read).toBe(file?.changes.length);
    const rows = Array.from({ length: file?.input.rows.read ?? 0 }, (_, minute) => row(minute));
    expect(file?.input.bytes).toBe(bytes(header + rows.join('')).length);
  });

  test('cut short on the disk, says that its last row is lost', async () => {
    const path = fileWith(header + row(0) + row(1), 'short.csv');
    truncateSync(path, bytes(header + row(0)).length + 25);
    const { status, out } = await steadypair('inspect', path);
    expect(status).toBe(0);
    expect(out).toContain('The file ends in the middle of line 3');
  });
});

describe('a file of more changes than there is memory for', () => {
  const poll = (pair: string, changes: number): string =>
    [
      'time,unit,parameter,value',
      ...Array.from(
        { length: changes },
        (_, row) =>
          `${new Date(Date.UTC(2026, 2, 14, 9) + row * 1000).toISOString()},${pair},partner-ready,${row % 2 === 0 ? 'yes' : 'no'}`,
      ),
      '',
    ].join('\n');

  test('is refused, and the others are read as long as there is room for them', async () => {
    const sources = Object.entries({ 'few.csv': 40, 'many.csv': 90, 'some.csv': 50, 'more.csv': 30 }).map(
      ([name, changes]) => ({
        name,
        bytes: null,
        async *open() {
          yield new TextEncoder().encode(poll('RO1', changes));
        },
      }),
    );
    const { files, failures } = await importFiles(sources, {
      phrasebook: readPhrasebook('x', null),
      zone: null,
      order: null,
      year: null,
      sha256: platform.sha256,
      // Each file has one unit, which counts as forty changes: 80 and 90 are kept of 180, and neither 130 nor 70 fits beside them.
      mostChanges: 180,
    });
    expect(files.map((f) => f.input.file)).toEqual(['few.csv', 'some.csv']);
    const fix =
      'Split it, read fewer files at once, or add what changes all the time to ignore in the phrasebook.';
    expect(failures.map((f) => f.message)).toEqual([
      `many.csv: it has too many changes or units beside the 170 of the others for the memory available: 180 changes at most, a unit counted as 40. ${fix}`,
      `more.csv: it has too many changes or units beside the 170 of the others for the memory available: 180 changes at most, a unit counted as 40. ${fix}`,
    ]);
  });

  test('is one line and an exit status, not the end of the engine', () => {
    const many = fileWith(poll('RO1', 60_000), 'many.csv');
    const good = fileWith(poll('RO2', 2), 'good.csv');
    // Heap for some 50,000 changes.
    const run = spawnSync(process.execPath, ['--max-old-space-size=50', command, 'timeline', many, good], {
      encoding: 'utf8',
    });
    expect(run.stderr.trimEnd().split('\n')).toEqual([
      expect.stringMatching(
        /many\.csv: it has too many changes or units beside the 42 of the others for the memory available: \d+ changes at most/,
      ),
    ]);
    expect([run.status, run.stdout.includes('RO2'), run.stdout.includes('RO1')]).toEqual([0, true, false]);
  }, 60_000);

  test('nor are more units than there is memory for', () => {
    const rows = Array.from(
      { length: 3000 },
      (_, pair) => `2026-03-14T09:00:00Z,RO${pair},partner-ready,yes`,
    );
    const many = fileWith(`time,unit,parameter,value\n${rows.join('\n')}\n`, 'many.csv');
    const run = spawnSync(process.execPath, ['--max-old-space-size=64', command, 'verify', many], {
      encoding: 'utf8',
    });
    expect(run.stderr.split('\n')[0]).toMatch(
      /many\.csv: it has too many changes or units for the memory available: \d+ changes at most, a unit counted as 40\. Split it/,
    );
    expect(run.status).toBe(2);
  }, 60_000);
});
