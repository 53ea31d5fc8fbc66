import { expect, test } from 'vitest';
import { fleetPlans, tellFleet } from '../../samples/fleet.ts';
import { journalOf } from '../../samples/fleet-files.ts';
import { fleet } from '../../src/pipeline.ts';
import { analyseTexts } from '../support/read-text.ts';

const question = { by: 'firmware', swaps: 10 } as const;

/** The journals of all pairs as one station exports them, in the order of time: read three times as fast as eight files. */
function oneJournal(journals: readonly string[]): string {
  const [head = ''] = journals[0]?.split('\n') ?? [];
  const rows = journals.flatMap((text) => text.trimEnd().split('\n').slice(1));
  const timed = rows.map((row) => ({ row, time: Date.parse(row.slice(0, row.indexOf(','))) }));
  return [head, ...timed.sort((a, b) => a.time - b.time).map(({ row }) => row), ''].join('\n');
}

test('of 100 seeded fleets without a bad pair a pair is said to stand out in no more than promised', async () => {
  const plans = fleetPlans.map((plan) => ({ ...plan, lossesPerYear: 3, growth: 1 }));
  let [falsely, closer] = [0, 0];
  for (let seed = 1; seed <= 100; seed += 1) {
    const journal = oneJournal(tellFleet(plans, seed).map(journalOf));
    const found = fleet(await analyseTexts({ 'all.csv': journal }), question);
    expect(found.pairs).toHaveLength(plans.length);
    if (found.pairs.some((p) => p.standsOut)) falsely += 1;
    if (found.pairs.some((p) => p.trend.comesCloser)) closer += 1;
  }
  console.log(
    `100 fleets without a bad pair: ${falsely} with a pair that stands out, ${closer} with a trend`,
  );
  // At most 5 in 100; 14 of 100 would come by chance once in 2,000 (binomial, 0.05).
  expect(falsely).toBeLessThan(14);
  expect(closer).toBeLessThan(14);
}, 120_000);
