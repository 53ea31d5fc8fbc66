import { mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { fileWith, steadypair } from '../../support/run-command.ts';

const clean = 'samples/marrow-bay/clean-swap';
const bad = 'samples/marrow-bay/bad-swap';

describe('verify', () => {
  test('ends with 0 for the clean swap, with 1 for the bad one, with 1 for both', async () => {
    const phrases = ['--phrasebook', `${clean}/phrasebook.yaml`];
    expect((await steadypair('verify', clean, ...phrases)).status).toBe(0);
    expect((await steadypair('verify', bad, ...phrases)).status).toBe(1);
    const both = await steadypair('verify', clean, bad, ...phrases, '--json');
    expect(both.status).toBe(1);
    expect(JSON.parse(both.out)).toMatchObject({
      schema: 'steadypair/verify/2',
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
    expect(out).toContain('No swap found');
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

describe('diagnose', () => {
  const trouble = 'samples/marrow-bay/wont-sync';
  const phrases = ['--phrasebook', `${trouble}/phrasebook.yaml`];
  test('ends with 1 where a cause is found or a finding is a warning, 3 where neither is known, 0 for a healthy pair, 2 for an unknown one', async () => {
    const parts = ['poll.csv', 'journal.csv'].map((name) => `${trouble}/pretreat-${name}`);
    expect((await steadypair('diagnose', trouble, ...phrases)).status).toBe(1);
    // No cause is found in these two, but the loss without planned work is a warning.
    const without = await steadypair('diagnose', ...parts, ...phrases);
    expect(without.status).toBe(1);
    expect(without.out).toContain('1  Too little data to name a cause');
    const silent = fileWith('2026-03-14 10:00:00Z RO1-A role active\n2026-03-14 10:30:00Z RO1-A light off\n');
    expect((await steadypair('diagnose', silent)).status).toBe(3);
    const healthy = await steadypair('diagnose', clean, ...phrases, '--pair', 'RO1');
    expect(healthy.status).toBe(0);
    expect(healthy.out).toContain('No trouble found with RO1 in the rows recognised at the end of its log.');
    const unknown = await steadypair('diagnose', trouble, ...phrases, '--pair', 'RO9');
    expect(unknown.status).toBe(2);
    expect(unknown.err).toContain('Choose one of PRETREAT');
  });
  test('prints the document of design.md, section 8, and writes it with the reports', async () => {
    const out = mkdtempSync(join(tmpdir(), 'diagnose-'));
    const { out: printed } = await steadypair('diagnose', trouble, ...phrases, '--json', '--out', out);
    expect(JSON.parse(printed)).toMatchObject({
      schema: 'steadypair/diagnose/1',
      pair: 'PRETREAT',
      stage: 'synchronising',
      causes: [{ id: 'link-down', rank: 1, next: expect.stringContaining('cable') }],
    });
    expect(readFileSync(join(out, 'diagnose.json'), 'utf8')).toBe(printed);
    expect(readdirSync(out)).toHaveLength(3);
  });
  test('every line of its text fits 100 columns, and its help has two examples', async () => {
    const { out } = await steadypair('diagnose', trouble, ...phrases);
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
    const help = await steadypair('diagnose', '--help');
    expect(help.out.match(/^ {2}steadypair diagnose /gm)).toHaveLength(2);
  });
});

describe('timeline', () => {
  test('prints events as CSV and as JSON lines, one event a line', async () => {
    const log = `${clean}/ro1-events.log`;
    const csv = await steadypair('timeline', log, '--format', 'csv');
    const jsonl = await steadypair('timeline', log, '--format', 'jsonl');
    expect(csv.out.split('\r\n')[0]).toBe('time,earliest,pair,half,signal,value,before,concluded,sources');
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
    expect(out).toContain('Delimiter: semicolon.');
    expect(out).toContain(
      'not recognised: "comment by Operator 3: <script>alert(1)</script>", once, first in line 24',
    );
  });
});
