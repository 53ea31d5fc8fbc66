import { alternate } from './alternate.ts';
import { type Bench, command } from './bench-case.ts';
import { storedFleet } from './growth.ts';

/** `fleet` over a pair's stored timeline of a year for each megabyte asked for. */
export const fleetBench: Bench = {
  id: 'fleet',
  measure: async (megabytes) => {
    const pairs = Math.max(100, Math.round(megabytes / 100) * 100);
    const { stored } = storedFleet(pairs, 1);
    // Findings are status 1.
    const [own] = alternate([{ command: [...command, 'fleet', ...stored, '--json'], statuses: [0, 1] }]);
    if (own === undefined) throw new Error('Nothing was measured.');
    const amount = { count: pairs, unit: 'pairs' } as const;
    const job = `fleet review, ${pairs} pairs over a year, from stored timelines`;
    return {
      rows: [{ job, program: 'steadypair fleet', ...own, amount, yardstick: null }],
      notes: [],
      agrees: null,
    };
  },
};
