import type { Bench } from './bench-case.ts';
import { fleetBench } from './fleet.ts';
import { gzipBench } from './gzip.ts';
import { journalBench } from './journals.ts';
import { pageBench } from './page.ts';
import { pollBench } from './polls.ts';
import { startBench } from './start.ts';

/** Everything that `npm run bench` measures, in the order of its table. */
export const benches: readonly Bench[] = [
  pollBench,
  journalBench,
  gzipBench,
  fleetBench,
  pageBench,
  startBench,
];
