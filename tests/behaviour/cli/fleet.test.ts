import { mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { fileWith, steadypair } from '../../support/run-command.ts';

const demo = 'samples/marrow-bay-fleet';
const truth: {
  readonly badPairs: readonly string[];
  readonly growingPairs: readonly string[];
  readonly slowerFirmware: string;
} = JSON.parse(readFileSync('samples/truth/fleet.json', 'utf8'));

describe('fleet', () => {
  test('names the injected pairs and firmware in its first five lines', async () => {
    const { status, out, err } = await steadypair('fleet', demo);
    expect([status, err]).toEqual([1, '']);
    const first = out.split('\n').slice(0, 5).join('\n');
    for (const pair of truth.badPairs) expect(first).toContain(pair);
    expect(first).toContain(`Losses come ever closer at ${truth.growingPairs.join(' and ')}.`);
    expect(first.replaceAll('\n', ' ')).toContain(
      `After a restart ${truth.slowerFirmware} takes longer to become ready`,
    );
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  });

  test('prints one JSON document, and writes its tables where it is told', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'fleet-'));
    const { out } = await steadypair(
      'fleet',
      demo,
      '--group',
      'model',
      '--swaps',
      '40',
      '--json',
      '--out',
      folder,
    );
    const document = JSON.parse(out);
    expect(document.schema).toBe('steadypair/fleet/1');
    expect(document.pairs).toHaveLength(8);
    expect(document.forecast.swaps).toBe(40);
    expect(document.forecast.low).toBeLessThanOrEqual(document.forecast.hours);
    expect(readdirSync(folder).sort()).toEqual([
      'fleet-attempts.csv',
      'fleet-census.csv',
      'fleet-forecast.csv',
      'fleet-groups.csv',
      'fleet-months.csv',
      'fleet-pairs.csv',
      'fleet.html',
      'fleet.json',
      'fleet.md',
    ]);
    const rows = readFileSync(join(folder, 'fleet-pairs.csv'), 'utf8').trimEnd().split('\r\n');
    expect(rows).toHaveLength(9);
    expect(out).not.toMatch(/NaN|Infinity/);
  });

  test('of a pair seen for an hour gives figures or says that there are not enough data', async () => {
    const log = fileWith(
      '2026-03-14T09:00:00Z RO1-A role active\n2026-03-14T10:00:00Z RO1 partner ready\n',
      'x.log',
    );
    const { status, out } = await steadypair('fleet', log);
    expect(status).toBe(0);
    expect(out).not.toMatch(/NaN|undefined|null/);
    const said = out.replaceAll('\n', ' ');
    expect(said).toContain(
      'RO1 is the only pair, with no loss of its partner: there is no other to compare it with.',
    );
    expect(said).toContain('Sync times by firmware cannot be compared: the logs show no bring-up.');
    expect(said).toContain('How long the next swaps take is not known');
  });

  test('makes no formula of a name from a log', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'fleet-'));
    const log = fileWith('time,pair,half,parameter,value\n2026-03-14T09:00:00Z,RO1,=1+1,firmware,=2+2\n');
    await steadypair('fleet', log, '--out', folder);
    for (const name of readdirSync(folder).filter((n) => n.endsWith('.csv')))
      expect(readFileSync(join(folder, name), 'utf8')).not.toMatch(/(^|,|")[=+@-]\D/m);
  });
});
