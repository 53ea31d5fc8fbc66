import { spawnSync } from 'node:child_process';
import { linkSync, mkdirSync, mkdtempSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { gzipSync, strToU8, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { steadypair } from '../../support/run-command.ts';

const log = (pair: string): string => `2026-03-14T10:00:00Z ${pair}-A partner ready\n`;
const folder = (): string => mkdtempSync(join(tmpdir(), 'found-'));

function write(path: string, text: string): string {
  writeFileSync(path, text);
  return path;
}

async function inspect(...paths: readonly string[]): Promise<{ files: readonly string[]; err: string }> {
  const { out, err } = await steadypair('inspect', ...paths, '--json');
  const { inputs }: { readonly inputs: readonly { readonly file: string }[] } = JSON.parse(out);
  return { files: inputs.map((i) => i.file), err };
}

describe('links in a folder', () => {
  test('to logs and folders elsewhere are read, under the name of the link', async () => {
    const [here, there] = [folder(), folder()];
    mkdirSync(join(there, 'week'));
    write(join(there, 'week', 'b.log'), log('RO2'));
    symlinkSync(write(join(there, 'a.log'), log('RO1')), join(here, 'one.log'));
    symlinkSync(join(there, 'week'), join(here, 'sub'));
    expect(await inspect(here)).toEqual({
      files: [join(here, 'one.log'), join(here, 'sub', 'b.log')],
      err: `${here}: 2 links in it, the first ${join(here, 'one.log')}, were followed; each file is read once.\n`,
    });
  });

  test('to a log that lies there too, or given twice, are read once', async () => {
    const here = folder();
    const path = write(join(here, 'z.log'), log('RO1'));
    symlinkSync('z.log', join(here, 'a.log'));
    linkSync(path, join(here, 'zz.log'));
    const { files, err } = await inspect(here);
    expect([files.length, files.includes(join(here, 'a.log'))]).toEqual([1, false]);
    expect(err).toBe(
      `${here}: one link in it, ${join(here, 'a.log')}, was followed; each file is read once.\n`,
    );
    expect((await inspect(path, join(here, 'a.log'))).files).toEqual([path]);
  });

  test('in a circle end', async () => {
    const here = folder();
    mkdirSync(join(here, 'sub'));
    write(join(here, 'sub', 'a.log'), log('RO1'));
    symlinkSync('..', join(here, 'sub', 'up'));
    symlinkSync('sub', join(here, 'again'));
    symlinkSync('self', join(here, 'self'));
    const { files, err } = await inspect(here);
    expect(files).toEqual([join(here, 'sub', 'a.log')]);
    expect(err).toBe(
      `${join(here, 'self')}: it is a link to a file that does not exist. Repair or remove the link.\n`,
    );
  });

  test('to a folder around them are not followed, and one that leads nowhere is told', async () => {
    const around = folder();
    const here = join(around, 'logs');
    mkdirSync(here);
    write(join(around, 'other.log'), log('RO9'));
    write(join(here, 'a.log'), log('RO1'));
    symlinkSync('..', join(here, 'up'));
    symlinkSync('gone.log', join(here, 'b.log'));
    const { files, err } = await inspect(here);
    expect(files).toEqual([join(here, 'a.log')]);
    expect(err.trimEnd().split('\n')).toEqual([
      `${join(here, 'b.log')}: it is a link to a file that does not exist. Repair or remove the link.`,
      `${join(here, 'up')}: skipped: it links to a folder that contains it.`,
    ]);
  });
});

describe('a pattern with *', () => {
  test('tells of a link that leads nowhere and of a pipe that it fits', async () => {
    const here = folder();
    const path = write(join(here, 'a.log'), log('RO1'));
    symlinkSync('gone.log', join(here, 'b.log'));
    symlinkSync(path, join(here, 'c.log'));
    const pipe = join(here, 'p.log');
    expect(spawnSync('mkfifo', [pipe]).status).toBe(0);
    const { files, err } = await inspect(join(here, '*.log'));
    expect(files).toEqual([path]);
    expect(err.trimEnd().split('\n')).toEqual([
      `${join(here, 'b.log')}: it is a link to a file that does not exist. Repair or remove the link.`,
      `${pipe}: skipped: it is a pipe, socket or device, not a file.`,
    ]);
  });
});

describe('what is no file', () => {
  test.each(['cat', 'gzip -c'])('a pipe of the shell is a log, as any file: %s', (give) => {
    const path = write(join(folder(), 'a.log'), log('RO1'));
    const script = `"$0" "$1" inspect <(${give} "$2") --json`;
    const run = spawnSync('bash', ['-c', script, process.execPath, resolve('dist', 'steadypair.mjs'), path]);
    const { inputs } = JSON.parse(run.stdout.toString());
    expect([run.status, run.stderr.toString(), inputs[0].rows.used]).toEqual([0, '', 1]);
  });

  test('a pipe without a writer and a device are one line each; in a folder they are skipped', async () => {
    const here = folder();
    const pipe = join(here, 'p.log');
    expect(spawnSync('mkfifo', [pipe]).status).toBe(0);
    const { status, err } = await steadypair('timeline', pipe, '/dev/null');
    expect([status, err]).toEqual([
      2,
      [
        `${pipe}: it is a named pipe. Save its output to a file and name that file.`,
        '/dev/null: it is a device, not a file. Name a file.',
        'None of the 2 files could be read.',
        '',
      ].join('\n'),
    ]);
    const path = write(join(here, 'a.log'), log('RO1'));
    expect(await inspect(here)).toEqual({
      files: [path],
      err: `${pipe}: skipped: it is a pipe, socket or device, not a file.\n`,
    });
    const phrasebook = await steadypair('inspect', path, '--phrasebook', pipe);
    expect([phrasebook.status, phrasebook.err]).toEqual([
      2,
      `${pipe}: it is a named pipe. Save its output to a file and name that file.\n`,
    ]);
  });

  test('a pipe of the shell is a phrasebook, as any file', () => {
    const path = write(join(folder(), 'a.log'), log('RO1'));
    const script = `"$0" "$1" inspect "$2" --phrasebook <(echo 'ignore: ["ready"]')`;
    const command = resolve('dist', 'steadypair.mjs');
    const run = spawnSync('bash', ['-c', script, process.execPath, command, path], { encoding: 'utf8' });
    expect([run.status, run.stderr]).toEqual([0, '']);
    expect(run.stdout).toContain('1 ignored');
  });
});

describe('what this program wrote', () => {
  const fleet = resolve('samples', 'marrow-bay-fleet');

  test('of every command is skipped with a line, in a folder, in an archive and by name', async () => {
    const here = folder();
    const path = write(join(here, 'ro1.log'), log('RO1').repeat(2));
    await steadypair('fleet', fleet, '--out', here);
    await steadypair('diagnose', path, '--out', here);
    await steadypair('verify', path, '--out', here);
    for (const format of ['csv', 'jsonl'])
      await steadypair('timeline', path, '--format', format, '--out', join(here, `events.${format}`));
    const json = await steadypair('inspect', path, '--json');
    write(join(here, 'inspect.json'), json.out);
    const { files, err } = await inspect(here);
    expect(files).toEqual([path]);
    // Seven tables and the documents of fleet, diagnose and inspect, and two timelines; verify.json is no log by its name.
    expect(err).toBe(
      `${join(here, 'diagnose.json')} and 11 more: skipped: they are output of this program, not logs.\n`,
    );
    const named = await steadypair('fleet', join(here, 'fleet-pairs.csv'));
    expect([named.status, named.err]).toEqual([
      2,
      `${join(here, 'fleet-pairs.csv')}: skipped: it is output of this program, not a log.\nNothing could be read.\n`,
    ]);
    const packed = join(folder(), 'all.zip');
    writeFileSync(
      packed,
      zipSync({ 'ro1.log': strToU8(log('RO1')), 'inspect.json.gz': gzipSync(strToU8(json.out)) }),
    );
    const inZip = await inspect(packed);
    expect(inZip.files).toEqual([`${packed}/ro1.log`]);
    expect(inZip.err).toContain('inspect.json.gz/inspect.json: skipped: it is output of this program');
  });

  test('may be written again, in the folder of the logs too', async () => {
    const here = folder();
    write(join(here, 'ro1.log'), log('RO1'));
    for (const command of ['fleet', 'fleet', 'diagnose', 'diagnose', 'verify', 'verify']) {
      const { status, err } = await steadypair(command, here, '--out', here);
      expect([command, status === 2, err.includes('files to read')]).toEqual([command, false, false]);
    }
    const events = join(here, 'events.csv');
    for (const run of [1, 2])
      expect([run, (await steadypair('timeline', here, '--out', events)).status]).toEqual([run, 0]);
  });

  test('is not read where the shell sends it into the folder of the logs', () => {
    const here = folder();
    write(join(here, 'ro1.log'), log('RO1'));
    const script = `"$0" "$1" timeline "$2" --json >"$2/events.json"`;
    const run = spawnSync('bash', ['-c', script, process.execPath, resolve('dist', 'steadypair.mjs'), here], {
      encoding: 'utf8',
    });
    expect([run.status, run.stderr]).toEqual([
      0,
      `${join(here, 'events.json')}: skipped: the output is written there.\n`,
    ]);
  });

  test('does not change the verdict', async () => {
    const here = folder();
    const logs = resolve('samples', 'marrow-bay');
    const before = await steadypair('verify', logs, '--json');
    await steadypair('fleet', logs, '--out', here);
    const after = await steadypair('verify', logs, here, '--json');
    expect(after.err).toContain('skipped');
    expect([after.status, after.out]).toEqual([before.status, before.out]);
  });
});
