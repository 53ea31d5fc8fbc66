/** Gauges whose numbers move, are written otherwise or are none: both lanes must come to the same bins, counts and notices. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { seeded } from '../../samples/random.ts';
import { compare } from '../support/compare-lanes.ts';
import { calmGauges, type GaugePoll, gaugePoll, gaugeTable, writings } from '../support/gauge-polls.ts';
import { clock, stamps } from '../support/odd-polls.ts';
import { readText } from '../support/read-text.ts';

const utc = stamps.utc ?? clock;
const seldom = 0.004;
const disturbances: Readonly<Record<string, Partial<GaugePoll>>> = {
  nothing: {},
  'gauges that move in every row': { moves: 1 },
  'gauges that never move': { moves: 0 },
  'states that change': { changes: seldom },
  'cells that hold no number': { odd: seldom },
  'rows that are missing': { missing: seldom },
  'rows that stand twice': { twice: seldom },
  'rows that change places': { swapped: seldom },
  'rows with quotes': { quoted: seldom },
  'polls that come late or after a gap': { late: 0.05, gap: 0.02 },
  'stamps that go back': { back: 0.03 },
  'all of it': {
    changes: 0.01,
    odd: 0.01,
    missing: 0.005,
    twice: 0.005,
    swapped: 0.005,
    late: 0.05,
    gap: 0.01,
    back: 0.01,
  },
};

describe('the fast lane comes to what the general one comes to, with gauges that move', () => {
  for (const [name, disturbed] of Object.entries(disturbances))
    test(`and ${name}`, async () => {
      const random = seeded(41);
      for (const written of Object.values(writings))
        await compare(
          gaugePoll(utc, { ...calmGauges, writings: written, ...disturbed }, random),
          65_536,
          9973,
        );
      const table = { ...calmGauges, units: 2, writings: writings.lengths, ...disturbed };
      await compare(gaugeTable(utc, table, random), 65_536, 4099);
    }, 120_000);

  test('and in long polls of many units', async () => {
    const random = seeded(43);
    const long = { ...calmGauges, delimiter: ',', writings: writings.lengths, units: 30 };
    for (const moves of [0.002, 0.02])
      await compare(gaugePoll(utc, { ...long, moves, changes: 0.0005 }, random), 20_011, 4_000_000);
  }, 120_000);

  test('and every seam that a few polls have', async () => {
    const random = seeded(42);
    const poll = { ...calmGauges, writings: writings.lengths, moves: 0.2, units: 2, cycles: 8 };
    const text = gaugePoll(utc, poll, random);
    await compare(text, ...Array.from({ length: 400 }, (_, index) => index + 1));
  }, 60_000);

  test('and whatever happens, in chunks of any size', async () => {
    const chance = fc.constantFrom(0, 0, 0.002, 0.02, 0.2);
    const poll = fc.record({
      cycles: fc.integer({ min: 20, max: 400 }),
      units: fc.integer({ min: 1, max: 8 }),
      spacing: fc.constantFrom(1, 10, 45, 299, 300, 301),
      delimiter: fc.constantFrom(',', ';', '\t'),
      moves: fc.constantFrom(0, 0.01, 0.1, 1),
      writings: fc.constantFrom(...Object.values(writings)),
      changes: chance,
      odd: chance,
      missing: chance,
      twice: chance,
      swapped: chance,
      quoted: fc.constantFrom(0, 0, 0.002),
      late: chance,
      gap: chance,
      back: chance,
    });
    await fc.assert(
      fc.asyncProperty(poll, fc.nat(), fc.integer({ min: 1, max: 30_000 }), async (drawn, seed, chunk) => {
        await compare(gaugePoll(utc, drawn, seeded(seed)), chunk, 1_000_000);
        await compare(gaugeTable(utc, drawn, seeded(seed)), chunk, 1_000_000);
      }),
      { numRuns: Number(process.env.DRAWS ?? 15), seed: 20_261_129 },
    );
  }, 600_000);

  test('and the bins hold what is read', async () => {
    // Two numbers in each of two bins of five minutes, and the polls of a third: 30 polls of 10 s each.
    const rows = Array.from(
      { length: 61 },
      (_, i) => `${utc(i * 10)},RO1-A,load,${i % 30 < 20 ? 10 : 40}\n${utc(i * 10)},RO1-A,light,steady`,
    );
    const { gauges } = await readText('poll.csv', ['time,unit,parameter,value', ...rows, ''].join('\n'), {
      zone: 'UTC',
    });
    const begin = Date.parse(clock(0));
    expect(gauges.map(({ bins }) => bins)).toEqual([
      [
        { from: begin, count: 30, minimum: 10, mean: 20, maximum: 40 },
        { from: begin + 300_000, count: 30, minimum: 10, mean: 20, maximum: 40 },
        { from: begin + 600_000, count: 1, minimum: 10, mean: 10, maximum: 10 },
      ],
    ]);
  });
});
