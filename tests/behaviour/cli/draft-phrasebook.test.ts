import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readPhrasebook } from '../../../src/import/read-phrasebook.ts';
import { fillIn, oddLog } from '../../support/odd-log.ts';
import { fileWith, steadypair } from '../../support/run-command.ts';

const newPath = (): string => join(mkdtempSync(join(tmpdir(), 'draft-')), 'site.yaml');

async function draftOf(
  ...files: readonly string[]
): Promise<{ path: string; draft: string; err: string; out: string }> {
  const path = newPath();
  const { status, err, out } = await steadypair('inspect', ...files, '--draft-phrasebook', path);
  expect(status, err).toBe(0);
  return { path, draft: readFileSync(path, 'utf8'), err, out };
}

async function eventsOf(file: string, phrasebook: string): Promise<readonly string[]> {
  const { out, err } = await steadypair('timeline', file, '--phrasebook', phrasebook, '--format', 'csv');
  expect(err).toBe('');
  return out.trim().split(/\r?\n/).slice(1);
}

describe('a draft for a log that nothing is known of', () => {
  test('is valid as it is, and filled in for four wordings it gives the right timeline', async () => {
    const file = fileWith(oddLog(), 'gate.log');
    const { path, draft, err } = await draftOf(file);
    expect(err).toContain('gate.log: the layout is not known');
    const before = JSON.parse((await steadypair('inspect', file, '--phrasebook', path, '--json')).out);
    expect(before.inputs[0].rows).toMatchObject({ read: 1000, rejected: 0 });
    const filled = [
      ['I carry', 'role', 'active'],
      ['I shadow', 'role', 'standby'],
      ['fell out of step', 'partner-ready', 'no'],
      ['is in step', 'partner-ready', 'yes'],
    ].reduce((text, [wording = '', signal = '', value]) => fillIn(text, wording, signal, value), draft);
    writeFileSync(path, filled);
    // Line n stands at 06:00:00 and n seconds: line 400 at 06:06:40, 460 at 06:07:40, 700 at 06:11:40, 731 at 06:12:11, 901 at 06:15:01.
    const at = (clock: string): string => `2026-03-14T${clock}.000Z,2026-03-14T${clock}.000Z,gate-7`;
    expect(await eventsOf(file, path)).toEqual([
      `${at('06:00:03')},a,role,active,,,${file}:3`,
      `${at('06:00:04')},b,role,standby,,,${file}:4`,
      `${at('06:06:40')},,partner-ready,no,,,${file}:400`,
      `${at('06:07:40')},,partner-ready,yes,no,,${file}:460`,
      `${at('06:11:40')},,partner-ready,no,yes,,${file}:700`,
      `${at('06:12:11')},,partner-ready,yes,no,,${file}:731`,
      `${at('06:15:01')},b,role,active,standby,,${file}:901`,
      `${at('06:15:02')},a,role,standby,active,,${file}:902`,
    ]);
  });

  test('says what it guessed, from which stamp, and shows how the file begins', async () => {
    const { draft } = await draftOf(fileWith(oddLog(), 'gate.log'));
    expect(draft).toContain('format: "yyyyMMdd-HH:mm:ss"    # a guess from "20260314-06:00:01" in ');
    expect(draft).toContain(
      'its layout is not known; this is a guess. It begins\n  #   20260314-06:00:01 | I | gate-7-b | ',
    );
    expect(draft).toContain('  - { pattern: "^(?<pair>gate-7)-(?<half>a|b)$" }    # a guess: two units');
  });

  test('has the wordings of redundancy first, then the most frequent, their numbers and quoted names made general', async () => {
    const { draft } = await draftOf(
      fileWith(`${oddLog()}20260314-07:00:00 | I | gate-7-a | mirror lost 9 of 12 blocks\n`, 'gate.log'),
    );
    const when = [...draft.matchAll(/^# {2}- \{ when: "([^"\\]|\\.)*"/gm)].map(([line]) =>
      line.slice(14, -1),
    );
    expect(when[0]).toBe('^mirror lost \\\\d[\\\\d.,:]* of \\\\d[\\\\d.,:]* blocks$');
    expect(when).toContain('^operator [\\"\'][^\\"\']*[\\"\'] looked at page \\\\d[\\\\d.,:]*$');
    expect(when).toHaveLength(8);
  });

  test('is on where the built-in words are sure, and reads the same as they do', async () => {
    const journal = [
      'time,unit,message',
      '2026-03-14T09:00:00Z,RO1-B,partner not ready',
      '2026-03-14T09:01:00Z,RO1-B,firmware 6.4.1 loaded',
      '2026-03-14T09:02:00Z,RO1-B,link 1 noisy',
      '2026-03-14T09:03:00Z,RO1-B,partner ready = 1',
      '2026-03-14T09:04:00Z,RO1-B,partner ready = 0',
      '',
    ].join('\n');
    const file = fileWith(journal, 'journal.csv');
    const { path, draft } = await draftOf(file);
    expect(draft).toMatch(/^ {2}- \{ when: "\^partner not ready\$", signal: partner-ready, value: "no" \}/m);
    expect(draft).toMatch(/^ {2}- \{ when: "\^firmware \(\?<value>\\\\S\+\) loaded\$", signal: firmware \}/m);
    expect(draft).toMatch(/^ {2}- \{ when: "\^partner ready = 1\$", signal: partner-ready, value: "yes" \}/m);
    expect(draft).toMatch(/^ {2}- \{ when: "\^partner ready = 0\$", signal: partner-ready, value: "no" \}/m);
    const plain = await steadypair('timeline', file, '--format', 'csv');
    expect(await eventsOf(file, path)).toEqual(plain.out.trim().split(/\r?\n/).slice(1));
  });

  test('guesses a year and an order of day and month that nothing settles, and says so', async () => {
    const noYear = fileWith(
      'Mar 14 09:00:00 RO1-A partner ready\nMar 14 09:05:00 RO1-A partner not ready\n',
      'log-2025.txt',
    );
    const year = await draftOf(noYear);
    expect(year.draft).toContain(
      '  year: 2025    # a guess from the name of the file: timestamps such as "Mar 14 09:00:00" have none\n',
    );
    expect((await eventsOf(noYear, year.path))[0]).toContain('2025-03-14T09:00:00.000Z');
    // By month first the rows span two days, by day first a month.
    const open = fileWith(
      'time,unit,message\n03/04/2026 09:00,RO1,partner ready\n03/05/2026 09:00,RO1,partner not ready\n',
    );
    const order = await draftOf(open);
    expect(order.draft).toContain('  order: month-first    # a guess from "03/04/2026 09:00"');
    expect((await eventsOf(open, order.path))[1]).toContain('2026-03-05T09:00:00.000Z');
  });

  test('is written for the other files where one is refused, and a binary file is refused in one line', async () => {
    const binary = fileWith(
      new Uint8Array(2000).map((_, i) => (i * 7) % 31),
      'image.bin',
    );
    const { draft, err } = await draftOf(binary, fileWith(oddLog(), 'gate.log'));
    expect(draft).toContain('match: "gate.log"');
    expect(draft).not.toContain('image.bin');
    expect(err.split('\n').filter((line) => line.includes('image.bin'))).toEqual([
      `${binary}: this is a binary file, not text. Export it as CSV or text.`,
    ]);
    const alone = await steadypair('inspect', binary, '--draft-phrasebook', newPath());
    expect(alone.status).toBe(2);
  });

  test('is valid whatever the lines hold', async () => {
    const hostile = [
      '"',
      "'",
      '#',
      ': {',
      '\u0085',
      '\u2028',
      '\u0007',
      '- [',
      '$1',
      '\\',
      '=1+1',
      '*?',
      '(?<x>',
      '[',
      '"a',
      "'b'",
      '---',
      '\\Q',
    ];
    const lines = hostile.map((text, i) => `2026-03-14_09:00:${10 + i} <x${text}y> ${text}${text}\n`);
    const { draft } = await draftOf(fileWith(lines.join(''), 'we"ird #.log'));
    expect(() => readPhrasebook('draft', draft.replaceAll(/^ {4}(unit|record): .*\n/gm, ''))).not.toThrow();
  });
});

describe('inspect --find', () => {
  test('lists the wordings that hold all words in any order and case, with the rule for each', async () => {
    const file = fileWith(oddLog(), 'gate.log');
    const { out } = await steadypair('inspect', file, '--find', 'STEP twin');
    expect(out).toContain('"my twin fell out of step (cause 17)"\n  2 times, first in ');
    expect(out).toContain('line 400: 20260314-06:06:40 | W | gate-7-a');
    expect(out).toContain(
      '  Not recognised.\n    messages:\n      - { when: "^my twin fell out of step \\\\(cause \\\\d[\\\\d.,:]*\\\\)$", signal: ___',
    );
    expect(out).toMatch(/\n2 of \d+ wordings match\.\n$/);
  });

  test('says how a message, a parameter, a value and a unit are understood now, and by which rule', async () => {
    const poll =
      'time,unit,parameter,value\n2026-03-14T09:00:00Z,RO1-A,light,steady\n2026-03-14T09:00:00Z,RO1-A,Lamp,lit\n';
    const file = fileWith(poll);
    const book = fileWith('parameters: { Lamp: { signal: light, values: { lit: steady } } }\n', 'site.yaml');
    const found = async (words: string): Promise<unknown> =>
      JSON.parse((await steadypair('inspect', file, '--phrasebook', book, '--find', words, '--json')).out)
        .found;
    expect(await found('lamp lit')).toMatchObject([
      {
        kind: 'value',
        wording: 'Lamp = lit',
        count: 1,
        first: { file, line: 3, text: '2026-03-14T09:00:00Z,RO1-A,Lamp,lit' },
        understood: { by: 'parameters.Lamp', signal: 'light', value: 'steady' },
        rule: 'parameters:\n  "Lamp": { signal: light, values: { "lit": "steady" } }\n',
      },
    ]);
    expect(await found('light steady')).toMatchObject([
      { understood: { by: 'the built-in words', value: 'steady' } },
    ]);
    expect(await found('unit ro1')).toMatchObject([
      { kind: 'unit', understood: { by: 'the built-in words', value: 'half A of RO1' } },
    ]);
    expect(await found('nothing of that')).toEqual([]);
  });

  test('says in one line how many wordings were looked through where nothing holds the words', async () => {
    const file = fileWith('time,unit,message\n2026-03-14T09:00:00Z,RO1,partner ready\n');
    const { status, out } = await steadypair('inspect', file, '--find', 'unicorn');
    expect(status).toBe(0);
    // One unit and one message.
    expect(out).toBe('No match for "unicorn" in 2 wordings of one file.\n');
  });
});
