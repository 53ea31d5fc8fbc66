import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { farStamps } from '../../../src/analyze/far-stamps.ts';
import { fileFigures } from '../../../src/analyze/file-figures.ts';
import { readTexts } from '../../support/read-text.ts';
import { fileWith, steadypair } from '../../support/run-command.ts';

const fault = join('tests', 'fixtures', 'faults', '08-year-9999', 'ts-wide.csv');
const line = (date: string, message = 'partner ready'): string => `${date}T10:00:00Z RO1 ${message}\n`;
const usual = line('2026-03-01') + line('2026-03-02', 'partner not ready') + line('2026-03-03');

async function found(text: string, more: Readonly<Record<string, string>> = {}): Promise<readonly string[]> {
  const { files } = await readTexts({ 'a.log': text, ...more });
  return farStamps(fileFigures(files)).map(
    (f) => `${f.severity} ${f.evidence.map((e) => e.line)} ${f.statement}`,
  );
}

describe('stamps far from all others', () => {
  test.each(['0001-01-01', '1970-01-01', '9999-12-31'])('as %s are told of', async (date) => {
    expect(await found(line(date, 'module restart') + usual)).toEqual([
      `warning 1 One timestamp is more than 10 years from all others (2026-03-01 to 2026-03-03): ${date} in line 1 of a.log. They were used as printed: correct the rows, or do not rely on times across them.`,
    ]);
    // In a file of their own, too, and not by their place in it; one of a year that cannot be is refused as a whole.
    if (date.startsWith('9999')) return;
    expect(await found(usual, { 'b.log': line(date) })).toEqual([
      expect.stringContaining(`all others (2026-03-01 to 2026-03-03): ${date} in line 1 of b.log.`),
    ]);
  });

  test('of a year that cannot be refuse a file that has no others', async () => {
    const { failures } = await readTexts({ 'b.log': line('9999-12-31') });
    expect(failures.map((f) => f.message)).toEqual([
      expect.stringContaining('all its timestamps are in the year 9999'),
    ]);
  });

  test('are all told of where neither side is most', async () => {
    const { files } = await readTexts({ 'a.csv': readFileSync(fault, 'utf8') });
    expect(
      farStamps(fileFigures(files)).map((f) => [f.figures.count, f.evidence.map((e) => e.line)]),
    ).toEqual([[2, [2, 3]]]);
  });

  test('are none within ten years, and none in one log of a day', async () => {
    expect(await found(line('2017-03-01') + usual)).toEqual([]);
    expect(await found(usual)).toEqual([]);
  });

  test('are told of where only the last reading of a poll has one', async () => {
    const poll = ['2026-03-01', '2026-03-02', '9999-01-01'].map((d) => `${d}T10:00:00Z,RO1,light,steady\n`);
    expect(await found('', { 'p.csv': `time,unit,parameter,value\n${poll.join('')}` })).toEqual([
      expect.stringContaining('9999-01-01 in line 4 of p.csv'),
    ]);
  });
});

describe('a log from the year 1 to 9999', () => {
  test('keeps its years, and its fleet review ends', async () => {
    const out = mkdtempSync(join(tmpdir(), 'years-'));
    const usualPair = fileWith(usual.replaceAll('RO1', 'RO2'), 'usual.log');
    const { status } = await steadypair('fleet', fault, usualPair, '--out', out);
    expect(status).toBe(1);
    // Of 119,988 months those in which something was logged; the other pair has its one.
    expect(readFileSync(join(out, 'fleet-months.csv'), 'utf8').split('\r\n').slice(1, -1)).toEqual([
      expect.stringMatching(/^RO1,0001-01,/),
      expect.stringMatching(/^RO1,9999-12,/),
      expect.stringMatching(/^RO2,2026-03,/),
    ]);
    const { out: events } = await steadypair('timeline', fault);
    expect(events.match(/^\d{4}-\d\d-\d\dT/gm)).toEqual(['0001-01-01T', '9999-12-31T']);
  }, 20_000);

  test.each([
    ['01/02/0099 10:00:00', 'day-first', '0099-02-01'],
    ['0004-02-29 10:00:00', 'day-first', '0004-02-29'],
    ['01/02/99 10:00:00', 'day-first', '2099-02-01'],
  ] as const)('%s is what it says', async (stamp, order, date) => {
    const { files } = await readTexts(
      { 'a.csv': `time,unit,parameter,value\n${stamp},RO1,light,off\n` },
      { order, zone: 'UTC' },
    );
    const time = files[0]?.changes.time[0] ?? Number.NaN;
    expect(new Date(time).toISOString().slice(0, 10)).toBe(date);
  });

  test('is read by a stated pattern, too', async () => {
    const { files } = await readTexts(
      { 'a.csv': 'time,unit,parameter,value\n29.02.0004 10:00,RO1,light,off\n' },
      { phrasebook: 'time: { format: "dd.MM.yyyy HH:mm", zone: UTC }\n' },
    );
    expect(files[0]?.input.from).toBe(Date.parse('0004-02-29T10:00:00Z'));
  });
});
