import { chmodSync, mkdirSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { fileWith, steadypair } from '../../support/run-command.ts';

describe('one clear line for', () => {
  const good = 'time,unit,parameter,value\n2026-03-14 10:00:00Z,RO1,partner-ready,yes\n';
  const cases: readonly (readonly [string, string | Uint8Array, RegExp])[] = [
    ['an empty file', '', /x\.csv: the file is empty\. Export it again\./],
    ['a header only', 'time,unit,parameter,value\n', /the file has a header but no rows\./],
    [
      'a binary file',
      new Uint8Array([0x7f, 0x45, 0x4c, 0x46, 0, 1, 2, 3, 0, 0, 5, 0, 0, 6]),
      /this is a binary file, not text\./,
    ],
    [
      'an unknown layout',
      'once upon a time\nthere was a pump\n',
      /the layout is not known: lines: no line begins with a timestamp and a unit.*--draft-phrasebook/,
    ],
    [
      'a time column that can not be read',
      'time,unit,parameter,value\nnoon,RO1,light,off\nmidnight,RO1,light,off\nlater,RO1,light,off\n',
      /x\.csv:2: no row could be used: .*"noon" is not a date\./,
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
    expect((await steadypair('verify', empty)).err).toContain('the folder contains no logs.');
    expect(await steadypair('verify', fileWith(good), '--pair', 'RO9')).toMatchObject({
      status: 2,
      err: 'pair RO9: no file names that pair. Choose one of RO1.\n',
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
    else expect(err).toContain('no permission to read it.');
  });

  test.each([
    ['a wrong key', 'unitz: []\n', /phrases\.yaml: unitz is not a key here\./],
    [
      'a wrong signal',
      'parameters: { X: { signal: colour } }\n',
      /parameters\.X\.signal is "colour", which is not a signal\./,
    ],
    [
      'a wrong value',
      'parameters: { X: { signal: light, values: { a: purple } } }\n',
      /parameters\.X\.values has "purple", which is not a value of light\./,
    ],
    [
      'a pattern without its group',
      'messages: [{ when: "light", signal: light }]\n',
      /messages\[0\] says no value for light\./,
    ],
    [
      'a pattern that can not run in linear time',
      'messages: [{ when: "(?=a)b", signal: restart }]\n',
      /messages\[0\]\.when is not a valid pattern/,
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

  test('a unit that no pattern knows is no pair', async () => {
    const { status, out } = await steadypair(
      'timeline',
      fileWith(`${good}2026-03-14 10:00:00Z,??,light,off\n`),
      '--json',
    );
    expect(status).toBe(0);
    expect(JSON.parse(out).events).toHaveLength(1);
  });

  test('one bad file among good ones: it is told, the others are used', async () => {
    const { status, out, err } = await steadypair('inspect', fileWith(good), fileWith(''), 'nowhere.csv');
    expect(err).toContain('nowhere.csv: there is no such file or folder.');
    expect(status).toBe(0);
    expect(err).toContain('the file is empty.');
    expect(out).toContain('It was left out.');
  });
});

test('a phrasebook nested without end is one line', async () => {
  const nested = fileWith(`units: ${'['.repeat(10_000)}`, 'x.yaml');
  const { status, err } = await steadypair('timeline', fileWith('x'), '--phrasebook', nested);
  expect([status, err]).toEqual([2, `${nested}:1: it is nested too deeply. Correct the YAML.\n`]);
});

test.each([
  ['a map', '? [a, b]\n  : 3'],
  ['an alias', 'x: &q a\n  *q : 3'],
  ['a key in a key, three hundred times', `${'? '.repeat(300)}a`],
])('a phrasebook with a key that is %s is one line, at once', async (_, map) => {
  const book = fileWith(`units:\n  ${map}\n`, 'x.yaml');
  const begin = performance.now();
  const { status, err } = await steadypair('timeline', fileWith('x'), '--phrasebook', book);
  expect(performance.now() - begin).toBeLessThan(5000);
  expect(status).toBe(2);
  expect(err).toMatch(
    /x\.yaml:[23]: A key is a list, a map or an alias, where a word belongs\. Correct the YAML\.\n$/,
  );
  expect(err.trimEnd().split('\n')).toHaveLength(1);
});
