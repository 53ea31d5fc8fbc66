import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { fleetFrom, fleetPlans, fleetTo, tellFleet } from '../../../samples/fleet.ts';
import { type FleetFile, fleetFiles, fleetSeed, journalOf } from '../../../samples/fleet-files.ts';
import { type Analysed, analyse } from '../../../src/pipeline.ts';
import { plain } from '../../support/plain.ts';
import { readTexts } from '../../support/read-text.ts';

const folder = join('samples', 'marrow-bay-fleet');
const truth: {
  readonly medianSyncSeconds: Readonly<Record<string, number>>;
  readonly badPairs: readonly string[];
  readonly growingPairs: readonly string[];
  readonly slowerFirmware: string;
  readonly pairs: readonly {
    readonly pair: string;
    readonly swappedAt: string | null;
    readonly losses: readonly string[];
  }[];
} = JSON.parse(readFileSync(join('samples', 'truth', 'fleet.json'), 'utf8'));

describe('the committed fleet', () => {
  let made: readonly FleetFile[] = [];
  let analysed: Analysed;
  beforeAll(async () => {
    made = await fleetFiles();
    const names = truth.pairs.map(({ pair }) => `${pair.toLowerCase()}.parquet`);
    analysed = analyse(
      await readTexts(Object.fromEntries(names.map((name) => [name, readFileSync(join(folder, name))]))),
    );
  });

  test('is what the generator writes, and takes less than 3 MB', () => {
    for (const { path, content } of made)
      expect(Buffer.compare(readFileSync(join('samples', path)), content), path).toBe(0);
    expect(made).toHaveLength(9);
    expect(made.reduce((sum, { content }) => sum + content.length, 0)).toBeLessThan(3_000_000);
  });
  test('shows every injected loss at its instant, and no other', () => {
    const counted = analysed.facts.map(({ timeline, losses }) => [
      timeline.pair,
      losses.filter((l) => l.kind === 'counted').map((l) => new Date(l.event.time).toISOString()),
    ]);
    expect(Object.fromEntries(counted)).toEqual(
      Object.fromEntries(truth.pairs.map(({ pair, losses }) => [pair, losses])),
    );
    expect(analysed.timelines.map((t) => [t.site, t.to])).toEqual(
      truth.pairs.map(() => ['Marrow Bay', fleetTo]),
    );
  });
  test('shows the injected sync times by firmware after a restart', () => {
    for (const [firmware, median] of Object.entries(truth.medianSyncSeconds)) {
      const logs = analysed.facts
        .flatMap((f) => f.bringUps)
        .filter((b) => b.cause === 'restart' && b.firmware === firmware && b.outcome === 'settled')
        .flatMap((b) => (b.sync.seconds === null ? [] : [Math.log(b.sync.seconds / median)]))
        .sort((a, b) => a - b);
      expect(logs.length).toBeGreaterThan(15);
      // The median of n normal values has a standard deviation of 1.2533 times that of their mean; four of these.
      const middle = logs[Math.floor(logs.length / 2)];
      expect(Math.abs(middle ?? Number.NaN)).toBeLessThan((4 * 1.2533 * 0.12) / Math.sqrt(logs.length));
    }
  });
  test('says the same as the journals it was made from', async () => {
    const told = tellFleet(fleetPlans, fleetSeed);
    const journals = told.map((t) => [`${t.plan.pair.toLowerCase()}-journal.csv`, journalOf(t)]);
    const raw = analyse(await readTexts(Object.fromEntries(journals), { phrasebook: 'name: Marrow Bay' }));
    expect(plain(analysed.facts)).toEqual(plain(raw.facts));
    expect(analysed.findings).toEqual(raw.findings);
  });
  test('every pair that was swapped was swapped in both halves, no other, and nothing is wrong at the end', () => {
    const out = (signal: string): readonly (readonly [string, number])[] =>
      analysed.timelines.map((t) => [t.pair, t.events.filter((e) => e.signal === signal).length]);
    const swapped = truth.pairs.map(({ pair, swappedAt }) => [pair, swappedAt === null ? 0 : 2]);
    expect(Object.fromEntries(out('removed'))).toEqual(Object.fromEntries(swapped));
    expect(Object.fromEntries(out('inserted'))).toEqual(Object.fromEntries(swapped));
    expect(analysed.findings.filter((f) => f.severity === 'critical')).toEqual([]);
  });
});

describe('the generator of fleets', () => {
  test('gives the same for the same seed, another for another', () => {
    expect(tellFleet(fleetPlans, 5)).toEqual(tellFleet(fleetPlans, 5));
    expect(tellFleet(fleetPlans, 5)).not.toEqual(tellFleet(fleetPlans, 6));
  });
  test('draws losses at the stated rate, and the growing ones late', () => {
    const fleets = Array.from({ length: 100 }, (_, seed) => tellFleet(fleetPlans, seed + 1));
    const middle = (fleetFrom + fleetTo) / 2;
    for (const [place, { lossesPerYear, growth }] of fleetPlans.entries()) {
      const losses = fleets.flatMap((fleet) => fleet[place]?.losses ?? []);
      // 730 days; a Poisson number has its mean as variance. Some losses near the end fall to the last day, which is free.
      const expected = (100 * lossesPerYear * 730) / 365.25;
      expect(Math.abs(losses.length - expected)).toBeLessThan(4 * Math.sqrt(expected) + expected * 0.005);
      // Of a power law, the share (1/2)^growth falls into the first half.
      const share = 0.5 ** growth;
      const early = losses.filter((time) => time < middle).length;
      const spread = Math.sqrt(losses.length * share * (1 - share));
      expect(Math.abs(early - losses.length * share)).toBeLessThan(4 * spread + losses.length * 0.01);
    }
  });
});
