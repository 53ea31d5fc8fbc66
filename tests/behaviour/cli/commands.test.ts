import { chmodSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { run } from '../../../src/cli/main.ts';

const clean = 'samples/marrow-bay/clean-swap';
const bad = 'samples/marrow-bay/bad-swap';

async function steadypair(...args: readonly string[]): Promise<{ status: number; out: string; err: string }> {
  let [out, err] = ['', ''];
  const status = await run(args, {
    stdout: {
      write: (text) => {
        out += text;
      },
      isTerminal: false,
    },
    stderr: {
      write: (text) => {
        err += text;
      },
      isTerminal: false,
    },
  });
  return { status, out, err };
}

function fileWith(content: string | Uint8Array, name = 'x.csv'): string {
  const path = join(mkdtempSync(join(tmpdir(), 'steadypair-')), name);
  writeFileSync(path, content);
  return path;
}

describe('verify', () => {
  test('ends with 0 for the clean swap, with 1 for the bad one, with 1 for both', async () => {
    const phrases = ['--phrasebook', `${clean}/phrasebook.yaml`];
    expect((await steadypair('verify', clean, ...phrases)).status).toBe(0);
    expect((await steadypair('verify', bad, ...phrases)).status).toBe(1);
    const both = await steadypair('verify', clean, bad, ...phrases, '--json');
    expect(both.status).toBe(1);
    expect(JSON.parse(both.out)).toMatchObject({
      schema: 'steadypair/verify/1',
      swaps: [
        { pair: 'RO1', verdict: 'verified' },
        { pair: 'RO3', verdict: 'not-verified' },
      ],
    });
  });

  test('ends with 3 where there is no swap', async () => {
    const file = fileWith('time,unit,parameter,value\n2026-03-14 10:00:00Z,RO1,partner-ready,yes\n');
    const { status, out } = await steadypair('verify', file);
    expect(status).toBe(3);
    expect(out).toContain('No swap was found');
  });

  test('writes the same bytes twice', async () => {
    const [a, b] = [mkdtempSync(join(tmpdir(), 'a-')), mkdtempSync(join(tmpdir(), 'b-'))];
    for (const out of [a, b])
      await steadypair('verify', bad, '--phrasebook', `${bad}/phrasebook.yaml`, '--out', out);
    const names = readdirSync(a);
    expect(names.sort()).toEqual(['RO3-swap-2026-03-17.html', 'RO3-swap-2026-03-17.md', 'verify.json']);
    for (const name of names)
      expect(readFileSync(join(b, name), 'utf8')).toBe(readFileSync(join(a, name), 'utf8'));
  });

  test('every line of its text fits 100 columns', async () => {
    const { out } = await steadypair('verify', bad, '--phrasebook', `${bad}/phrasebook.yaml`);
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  });
});

describe('timeline', () => {
  test('prints events as CSV and as JSON lines, one event a line', async () => {
    const log = `${clean}/ro1-events.log`;
    const csv = await steadypair('timeline', log, '--format', 'csv');
    const jsonl = await steadypair('timeline', log, '--format', 'jsonl');
    expect(csv.out.split('\r\n')[0]).toBe('time,earliest,pair,half,signal,value,before,sources');
    expect(csv.out.trimEnd().split('\r\n').length - 1).toBe(jsonl.out.trimEnd().split('\n').length);
    expect(JSON.parse(jsonl.out.split('\n')[0] ?? '')).toMatchObject({
      time: '2026-03-14T08:52:00.000Z',
      pair: 'RO1',
    });
  });
});

describe('inspect', () => {
  test('says how a file was understood, and lists unknown wording with its first line', async () => {
    const { status, out } = await steadypair(
      'inspect',
      `${clean}/ro1-journal.csv`,
      '--phrasebook',
      `${clean}/phrasebook.yaml`,
    );
    expect(status).toBe(0);
    expect(out).toContain('Columns are parted by semicolon.');
    expect(out).toContain(
      'not understood: "comment by Operator 3: <script>alert(1)</script>", once, first in line 24',
    );
  });
});

describe('one clear line for', () => {
  const good = 'time,unit,parameter,value\n2026-03-14 10:00:00Z,RO1,partner-ready,yes\n';
  const cases: readonly (readonly [string, string | Uint8Array, RegExp])[] = [
    ['an empty file', '', /x\.csv: the file is empty\. Export it again\./],
    ['a header only', 'time,unit,parameter,value\n', /the file has a header but no rows\./],
    [
      'a binary file',
      new Uint8Array([0x7f, 0x45, 0x4c, 0x46, 0, 1, 2, 3, 0, 0, 5, 0, 0, 6]),
      /this is no text but a binary file\./,
    ],
    [
      'an unknown layout',
      'once upon a time\nthere was a pump\n',
      /the layout is not known: readings: no column for time/,
    ],
    [
      'a time column that can not be read',
      'time,unit,parameter,value\nnoon,RO1,light,off\nmidnight,RO1,light,off\nlater,RO1,light,off\n',
      /x\.csv:2: no row could be read: .*"noon" is not a date\./,
    ],
    [
      'an order of day and month that nothing settles',
      'time,unit,parameter,value\n03/04/2026 10:00,RO1-A,light,off\n',
      /x\.csv:2: "03\/04\/2026" is 3 Apr 2026 if the day comes first, 4 Mar 2026 if the month does.*--order/,
    ],
  ];
  test.each(cases)('%s', async (_name, content, expected) => {
    const { status, out, err } = await steadypair('verify', fileWith(content));
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(expected);
    expect(err).not.toMatch(/\bat .*:\d+:\d+/);
  });

  test('a file that is not there, a folder without logs, a pair that is not there, a wrong option', async () => {
    const empty = mkdtempSync(join(tmpdir(), 'empty-'));
    mkdirSync(join(empty, 'sub'));
    const { status, err } = await steadypair('verify', 'nowhere.csv');
    expect([status, err]).toEqual([
      2,
      'nowhere.csv: there is no such file or folder. Check the name.\nNothing could be read.\n',
    ]);
    expect((await steadypair('verify', empty)).err).toContain('the folder holds no logs.');
    expect(await steadypair('verify', fileWith(good), '--pair', 'RO9')).toMatchObject({
      status: 2,
      err: '--pair RO9: no file speaks of that pair. Choose one of RO1.\n',
    });
    expect((await steadypair('verify', '--bogus')).status).toBe(2);
    expect((await steadypair('verify', fileWith(good), '--zone', 'Mars/Olympus')).err).toContain(
      '"Mars/Olympus" is not a time zone.',
    );
  });

  test('no permission (as far as this user can be refused)', async () => {
    const path = fileWith(good);
    chmodSync(path, 0o000);
    const { status, err } = await steadypair('verify', path);
    // Root may read everything: then the file is simply read.
    if (process.getuid?.() === 0) expect(status).toBe(3);
    else expect(err).toContain('it may not be read: no permission.');
  });

  test.each([
    ['a wrong key', 'unitz: []\n', /phrases\.yaml: unitz is not a key here\./],
    [
      'a wrong signal',
      'parameters: { X: { signal: colour } }\n',
      /parameters\.X\.signal is "colour", which is no signal\./,
    ],
    [
      'a wrong value',
      'parameters: { X: { signal: light, values: { a: purple } } }\n',
      /parameters\.X\.values has "purple", which is no value of light\./,
    ],
    [
      'a pattern without its group',
      'messages: [{ when: "light", signal: light }]\n',
      /messages\[0\] says no value for light\./,
    ],
    [
      'a pattern that can not run in linear time',
      'messages: [{ when: "(?=a)b", signal: restart }]\n',
      /messages\[0\]\.when is not a pattern/,
    ],
    ['broken YAML', 'units: [\n', /phrases\.yaml:\d+: .*Correct the YAML\./],
  ])('a phrasebook with %s', async (_name, yaml, expected) => {
    const { status, err } = await steadypair(
      'verify',
      fileWith(good),
      '--phrasebook',
      fileWith(yaml, 'phrases.yaml'),
    );
    expect(status).toBe(2);
    expect(err).toMatch(expected);
  });

  test('a log that ends in mid-row: the rest is used and the loss is told', async () => {
    const cut = fileWith(`${good}2026-03-14 10:00:1`);
    const { status, out } = await steadypair('inspect', cut);
    expect(status).toBe(0);
    expect(out).toContain('The file ends in the middle of line 3: that row is lost.');
  });

  test('one bad file among good ones: it is told, the others are used', async () => {
    const { status, out, err } = await steadypair('inspect', fileWith(good), fileWith(''), 'nowhere.csv');
    expect(err).toContain('nowhere.csv: there is no such file or folder.');
    expect(status).toBe(0);
    expect(err).toContain('the file is empty.');
    expect(out).toContain('It was left out.');
  });
});
