import { spawn, spawnSync } from 'node:child_process';
import {
  existsSync,
  linkSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { hostname, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { digestOf } from '../../../src/cli/platform.ts';
import { writeReports } from '../../../src/cli/write-files.ts';
import { steadypair } from '../../support/run-command.ts';

const command = resolve('dist', 'steadypair.mjs');
const folder = (): string => mkdtempSync(join(tmpdir(), 'written-'));
/** The clock of the nth second of a day. */
const clock = (second: number): string => new Date(second * 1000).toISOString().slice(11, 19);
const log = '2026-03-14T10:00:00Z RO1-A partner ready\n';

function logIn(here: string, name = 'x.log'): string {
  writeFileSync(join(here, name), log);
  return join(here, name);
}

const refusal = (path: string): string =>
  `${path}: it is one of the files to read. Write to another place.\n`;

test('a folder that can be neither found nor made is one line', async () => {
  const out = '/proc/nowhere/reports';
  const { status, err } = await steadypair('timeline', logIn(folder()), '--out', `${out}/t.csv`);
  expect([status, err]).toEqual([2, `${out}/t.csv: there is no such file or folder. Check the name.\n`]);
});

describe('no command writes over a file it reads', () => {
  test('by its name, another spelling of it, a link or a hard link', async () => {
    const here = folder();
    const path = logIn(here);
    linkSync(path, join(here, 'hard.log'));
    symlinkSync('x.log', join(here, 'soft.log'));
    for (const out of [path, `${here}/./x.log`, join(here, 'hard.log'), join(here, 'soft.log')])
      for (const format of ['csv', 'jsonl', 'parquet']) {
        const run = await steadypair('timeline', path, '--format', format, '--out', out);
        expect([run.status, run.err, readFileSync(path, 'utf8')]).toEqual([2, refusal(out), log]);
      }
    // The log is named by its link, and the link by the output.
    const link = await steadypair('timeline', join(here, 'soft.log'), '--out', path);
    expect([link.status, readFileSync(path, 'utf8')]).toEqual([2, log]);
    expect(readdirSync(here).sort()).toEqual(['hard.log', 'soft.log', 'x.log']);
  });

  test('by a descriptor, or by where the shell sends its output', () => {
    const here = folder();
    const path = logIn(here);
    const bash = (script: string): ReturnType<typeof spawnSync> =>
      spawnSync('bash', ['-c', script, process.execPath, command, path], { encoding: 'utf8' });
    expect(bash('"$0" "$1" timeline "$2" --out /dev/fd/3 3<>"$2"').status).toBe(2);
    expect(bash('"$0" "$1" timeline /dev/fd/3 --out "$2" 3<"$2"').status).toBe(2);
    expect(bash('"$0" "$1" timeline "$2" >>"$2"').stderr).toBe(
      'the output: it would overwrite one of the files to read. Redirect it to another file.\n',
    );
    expect(readFileSync(path, 'utf8')).toBe(log);
  });

  test('a report, the phrasebook or the job', async () => {
    const here = folder();
    for (const [name, args] of [
      ['fleet.html', ['fleet', '--out', here]],
      ['verify.json', ['verify', '--out', here]],
      ['diagnose.json', ['diagnose', '--out', here]],
    ] as const) {
      const path = logIn(here, name);
      const run = await steadypair(...args, path);
      expect([run.status, run.err, readFileSync(path, 'utf8')]).toEqual([2, refusal(path), log]);
    }
    const path = logIn(here);
    const yaml = join(here, 'site.yaml');
    writeFileSync(yaml, 'site: Marrow Bay\n');
    const phrasebook = join(here, 'names.yaml');
    writeFileSync(phrasebook, 'name: Marrow Bay\n');
    expect(await steadypair('timeline', path, '--phrasebook', phrasebook, '--out', phrasebook)).toMatchObject(
      { status: 2, err: refusal(phrasebook) },
    );
    const out = folder();
    symlinkSync(yaml, join(out, 'verify.json'));
    expect(await steadypair('verify', path, '--job', yaml, '--out', out)).toMatchObject({ status: 2 });
    // Nothing at all is written where one report could not be.
    expect(readdirSync(out)).toEqual(['verify.json']);
    expect(readFileSync(yaml, 'utf8')).toBe('site: Marrow Bay\n');
    const draft = await steadypair('inspect', path, '--draft-phrasebook', join(out, 'verify.json'));
    expect(draft.err).toContain(
      'a file of that name already exists. Choose another name, or move that file.',
    );
  });
});

describe('reports of several runs in one folder', () => {
  const faults = resolve('tests', 'fixtures', 'faults', '07-case-collision');
  const logs = ['case1.csv', 'case2.csv'].map((name) => join(faults, name));
  const verify = (out: string, ...args: readonly string[]): ReturnType<typeof steadypair> =>
    steadypair('verify', ...logs, '--phrasebook', join(faults, 'any.yaml'), '--out', out, ...args);

  test('have names that no disk takes for each other', async () => {
    const out = folder();
    await verify(out);
    const names = readdirSync(out);
    expect(names).toHaveLength(5);
    expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(5);
  });

  test('are not written over one of another pair whose name differs in case', async () => {
    const out = folder();
    await verify(out, '--pair', 'ro1');
    const { status, err } = await verify(out, '--pair', 'RO1');
    const [, other] = [...err.matchAll(/there is (\S+) in that folder/g)].flat();
    expect([status, other?.startsWith('ro1-swap-')]).toEqual([2, true]);
    expect(readdirSync(out).some((name) => name.startsWith('RO1-swap'))).toBe(false);
  });

  test('at the same time are all whole', async () => {
    const out = folder();
    const runs = [1, 2, 3, 4].map(() => steadypair('fleet', resolve('samples', 'marrow-bay'), '--out', out));
    const alone = folder();
    await Promise.all([...runs, steadypair('fleet', resolve('samples', 'marrow-bay'), '--out', alone)]);
    expect(readdirSync(out)).toEqual(readdirSync(alone));
    for (const name of readdirSync(alone))
      expect(readFileSync(join(out, name), 'utf8')).toBe(readFileSync(join(alone, name), 'utf8'));
  });
});

describe('parts of files', () => {
  const host = digestOf(new TextEncoder().encode(hostname())).slice(0, 8);
  const part = (computer: string, pid: number): string => `.steadypair-${computer}-${pid}-0123456789ab.part`;

  test('that a killed run left are removed, those of a run that goes on are not', async () => {
    const here = folder();
    const ended = spawnSync('true').pid;
    for (const name of [part(host, ended), part(host, process.pid), part('00000000', 1)])
      writeFileSync(join(here, name), 'x');
    const old = join(here, part('11111111', 1));
    writeFileSync(old, 'x');
    utimesSync(old, 0, 0);
    await steadypair('timeline', logIn(folder()), '--out', join(here, 'events.csv'));
    expect(readdirSync(here).sort()).toEqual(
      [part('00000000', 1), part(host, process.pid), 'events.csv'].sort(),
    );
  });

  test('that a failed run began are removed, and a link in place of the old name is not followed', async () => {
    const here = folder();
    const path = logIn(folder());
    const victim = logIn(folder(), 'victim');
    symlinkSync(victim, join(here, 'events.csv.part'));
    symlinkSync(victim, join(here, 'events.csv'));
    expect((await steadypair('timeline', path, '--out', join(here, 'events.csv'))).status).toBe(0);
    expect(readFileSync(victim, 'utf8')).toBe(log);
    expect(readFileSync(join(here, 'events.csv'), 'utf8')).toContain('partner-ready');
    const limited = spawnSync(
      'bash',
      [
        '-c',
        'ulimit -f 0; exec "$0" "$@"',
        process.execPath,
        command,
        'timeline',
        path,
        '--out',
        join(here, 'y'),
      ],
      { encoding: 'utf8' },
    );
    expect([limited.status, readdirSync(here).sort()]).toEqual([2, ['events.csv', 'events.csv.part']]);
  });

  test('are removed by a run that is told to end while it writes', async () => {
    const here = folder();
    const rows = Array.from({ length: 60_000 }, (_, row) =>
      log.replace('10:00:00', clock(row)).replace('ready', row % 2 ? 'ready' : 'not ready'),
    );
    const path = join(folder(), 'long.log');
    writeFileSync(path, rows.join(''));
    const out = join(here, 'events.jsonl');
    const args = [command, 'timeline', path, '--format', 'jsonl', '--out', out];
    const running = spawn(process.execPath, args, { stdio: 'ignore' });
    const ended = new Promise((done) => running.once('close', (_status, signal) => done(signal)));
    while (readdirSync(here).length === 0) await new Promise((done) => setImmediate(done));
    expect(readdirSync(here)).toEqual([expect.stringMatching(/^\.steadypair-.*\.part$/)]);
    running.kill('SIGTERM');
    expect(await ended).toBe('SIGTERM');
    expect(readdirSync(here)).toEqual([]);
  }, 60_000);

  test('are not put beside a device: it is written to', async () => {
    const run = await steadypair('timeline', logIn(folder()), '--out', '/dev/null');
    expect([run.status, run.err, existsSync('/dev/null')]).toEqual([0, '', true]);
    expect(readdirSync('/dev').filter((name) => name.endsWith('.part'))).toEqual([]);
  });
});

test('where one report cannot be written, all stay as they were', async () => {
  const here = folder();
  writeFileSync(join(here, 'a.md'), 'old');
  writeFileSync(join(here, 'file'), 'old');
  const reports = [
    { name: 'a.md', text: 'new' },
    { name: 'file/b.md', text: 'new' },
  ];
  await expect(writeReports(here, reports, new Set())).rejects.toThrow('part of its path is not a folder.');
  expect(readFileSync(join(here, 'a.md'), 'utf8')).toBe('old');
  expect(readdirSync(here).sort()).toEqual(['a.md', 'file']);
});
