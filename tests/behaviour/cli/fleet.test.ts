import { mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { daysFrom, firmwareFrom, lineOn, lossLog } from '../../support/loss-logs.ts';
import { fileWith, steadypair } from '../../support/run-command.ts';

const demo = 'samples/marrow-bay-fleet';
const truth: {
  readonly badPairs: readonly string[];
  readonly growingPairs: readonly string[];
  readonly slowerFirmware: string;
} = JSON.parse(readFileSync('samples/truth/fleet.json', 'utf8'));

describe('fleet', () => {
  test('names the injected pairs in its first ten lines: why, since when and what to do, without a term of statistics', async () => {
    const { status, out, err } = await steadypair('fleet', demo);
    expect([status, err]).toEqual([1, '']);
    const ten = out.split('\n').slice(0, 10);
    const first = ten.join(' ');
    expect(first).toContain(`2 of 8 pairs lose their partner more often than the rest: RO2 (23 losses`);
    for (const pair of truth.badPairs) {
      expect(first).toContain(`${pair}: `);
      expect(first).toContain(`steadypair diagnose FILES --pair ${pair}`);
    }
    // OUTFALL, whose losses were made to come at a growing rate from Nov 2024 on; RO2 at one rate all the while.
    expect(truth.growingPairs).toEqual(['OUTFALL']);
    expect(first).toMatch(/OUTFALL: .* More and more often, most of all since about \w{3} 202[56]: /);
    expect(first).toMatch(/RO2: .* Throughout its log, from Nov 2024\./);
    expect(first).not.toMatch(/log-rank|\bp [<=]|median|Laplace|Poisson|limits/);
    expect(out.replaceAll('\n', ' ')).toContain(
      `After a restart ${truth.slowerFirmware} takes longer to become ready`,
    );
    // What a growing pair did so far says nothing of its next year.
    expect(out.replaceAll('\n', ' ')).toContain(
      'at 7 pairs in the next year (95 % prediction); OUTFALL is left out because its rate changed.',
    );
    // Firmware was given no say in losses: what differs is one pair.
    expect(first).not.toMatch(/times as often with/);
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
      'fleet-losses.csv',
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
    // Nothing speaks against the pair, and too little is known of it.
    expect(status).toBe(3);
    expect(out).not.toMatch(/NaN|undefined|null/);
    const said = out.replaceAll('\n', ' ');
    expect(said).toContain(
      'The only pair was observed for less than 30 days, so it is not compared. Observed for less than 30 days, so not compared: RO1 no loss in 1 h 00 min.',
    );
    expect(said).toContain('Sync times by firmware cannot be compared: the logs show no bring-up.');
    expect(said).toContain('How long the next swaps take is not known');
  });

  test('ends with 1 where a pair stands out or is unfit, with 3 where fitness is not known, else with 0', async () => {
    const statusOf = async (...logs: readonly string[]): Promise<number> => {
      const files = logs.map((log, index) => fileWith(`${log}\n`, `${index}.log`));
      return (await steadypair('fleet', ...files)).status;
    };
    const known = (pair: string): readonly string[] => firmwareFrom(pair, 0, '6.4.1');
    const sound = (pair: string, ...losses: readonly number[]): string =>
      lossLog(pair, 400, losses, ...known(pair));
    const unknown = lossLog('RO8', 400, []);
    const unfit = lossLog('RO9', 400, [], ...known('RO9'), lineOn(399, 'RO9-B link a down'));
    // A loss is a finding of severity warning; by itself it is no reason.
    expect(await statusOf(sound('RO1', 100), sound('RO2'))).toBe(0);
    expect(await statusOf(sound('RO1', 100), unknown)).toBe(3);
    expect(await statusOf(sound('RO1'), unknown, unfit)).toBe(1);
    expect(await statusOf(sound('RO1', ...daysFrom(0, 390, 12)), sound('RO2'), unknown)).toBe(1);
  });

  test('makes no formula of a name from a log', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'fleet-'));
    const log = fileWith('time,pair,half,parameter,value\n2026-03-14T09:00:00Z,RO1,=1+1,firmware,=2+2\n');
    await steadypair('fleet', log, '--out', folder);
    for (const name of readdirSync(folder).filter((n) => n.endsWith('.csv')))
      expect(readFileSync(join(folder, name), 'utf8')).not.toMatch(/(^|,|")[=+@-]\D/m);
  });
});
