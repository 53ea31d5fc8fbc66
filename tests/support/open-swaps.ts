import { defaultRules } from '../../src/timeline/rules.ts';
import { findSwaps } from '../../src/verify/find-swaps.ts';
import { defaultVerifyLimits } from '../../src/verify/limits.ts';
import type { Job, OpenSwap } from '../../src/vocabulary.ts';
import { factsOfPair, type Told } from './pair-facts.ts';

export type Plan = NonNullable<Job['plan']>[string];

/** What the last swap of the first pair waits for where its log ends; `null` where it is over. */
export async function openOf(told: Told, plan: Plan = {}): Promise<OpenSwap | null> {
  const facts = await factsOfPair(told);
  const job = { plan: { [facts.timeline.pair]: plan } };
  const open = { from: null, to: null };
  const last = findSwaps(facts, open, job, defaultVerifyLimits, defaultRules).at(-1);
  if (last === undefined) throw new Error('There is no swap.');
  return last.open;
}

/** How the swap stood before the work: half A active, half B its ready partner, both of one model and firmware. */
export const before: readonly string[] = [
  '08:40:00 RO1 A role active',
  '08:40:00 RO1 B role standby',
  '08:40:00 RO1   partner ready',
  '08:40:00 RO1 A firmware 6.4.1',
  '08:40:00 RO1 A model Tern-4',
  '08:40:00 RO1 B firmware 6.4.1',
  '08:40:00 RO1 B model Tern-4',
  '08:40:00 RO1 B serial T4-1',
];

/** The work on half B, one line or two for each step. */
export const work = {
  out: ['09:00:00 RO1 B module removed', '09:00:00 RO1   partner not ready'],
  in: ['09:02:00 RO1 B module inserted', '09:02:00 RO1 B light flashing'],
  identified: ['09:02:30 RO1 B serial T4-2', '09:02:30 RO1 B model Tern-4'],
  oldFirmware: ['09:02:40 RO1 B firmware 6.2.0'],
  reflash: ['09:03:00 RO1 B reflash start', '09:05:00 RO1 B reflash end', '09:05:10 RO1 B firmware 6.4.1'],
  ready: ['09:07:00 RO1   partner ready'],
  steady: ['09:09:00 RO1 B light steady'],
} as const;

/** The log goes on to here, saying nothing of the work. */
export function until(clock: string): string {
  return `${clock} RO1 A link a up`;
}
