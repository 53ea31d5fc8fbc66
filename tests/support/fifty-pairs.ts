import { type PairPlan, tellFleet } from '../../samples/fleet.ts';
import { journalOf } from '../../samples/fleet-files.ts';

/** Two of fifty pairs lose their partner six times as often as the others, one of them more and more often. */
const plans: readonly PairPlan[] = Array.from({ length: 50 }, (_, place) => ({
  pair: `RO${String(place + 1).padStart(2, '0')}`,
  lossesPerYear: place === 16 || place === 41 ? 12 : 2,
  growth: place === 41 ? 2.5 : 1,
  reflashedAt: place % 3 === 0 ? Date.UTC(2025, 7, 1 + (place % 28), 9) : null,
  swappedAt: place % 4 === 0 ? Date.UTC(2025, 10, 1 + (place % 28), 9) : null,
}));

/** Two years of fifty pairs, a journal for each under its name: the demo fleet's way of telling, with other plans. */
export function fiftyPairs(): Readonly<Record<string, string>> {
  return Object.fromEntries(
    tellFleet(plans, 7).map((told) => [`${told.plan.pair.toLowerCase()}-journal.csv`, journalOf(told)]),
  );
}
