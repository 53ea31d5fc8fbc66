import type { Swap } from '../../../src/vocabulary.ts';
import type { Dressed } from '../stories/dressing.ts';
import type { ToldSwap } from '../stories/swap-story.ts';
import { boundsOf } from './bounds.ts';
import { judgeSwap } from './judge-swap.ts';
import { replacementsTold } from './what-is-told.ts';

/** Names with the seeds at which each was found. */
export type Seeds = Map<string, number[]>;

/** What came of many swaps. */
export interface Tally {
  /** Of each dressing, and of each band of poll spacings: verdicts, by whether the swap was good. */
  readonly verdicts: Map<string, Map<string, number>>;
  /** Misses by kind, then by what they are about: `light-steady (sparse-journal)`. */
  readonly misses: Map<string, Seeds>;
  /** True instants and durations by kind, then `inside`, `outside (poll)`, `hidden (poll)`, `not reported (poll)`. */
  readonly bounds: Map<string, Seeds>;
}

export function emptyTally(): Tally {
  return { verdicts: new Map(), misses: new Map(), bounds: new Map() };
}

/** Adds one swap. */
export function count(tally: Tally, told: ToldSwap, dressed: Dressed, swaps: readonly Swap[]): void {
  const verdict = swaps.length === 1 ? (swaps[0]?.verdict ?? '') : 'none or several';
  for (const group of [dressed.id, ...bandOf(dressed)])
    addVerdict(tally, group, `${kindOf(told)} ${verdict}`);
  for (const { kind, about } of judgeSwap(told, dressed, swaps))
    addSeed(tally.misses, kind, `${about} (${dressed.id})`, told.seed);
  const [swap] = swaps;
  const isTold = replacementsTold(told.truth, dressed.sources) === 'all';
  if (swap === undefined || swaps.length > 1 || !isTold) return;
  for (const { kind, found } of boundsOf(told, dressed, swap))
    addSeed(tally.bounds, kind, found === 'inside' ? found : `${found} (${dressed.id})`, told.seed);
}

/** Good: every check truly holds; broken: one does not; open: the rules leave one undecided. */
function kindOf({ truth }: ToldSwap): 'good' | 'broken' | 'open' {
  if (truth.checks.some((c) => c.holds === false)) return 'broken';
  return truth.checks.every((c) => c.holds === true) ? 'good' : 'open';
}

const bands = [5, 10, 20, 40, 80, 160] as const;

/** The band of the finest poll, where nothing but polls tells the states. */
function bandOf({ sources }: Dressed): readonly string[] {
  if (sources.some((s) => s.kind === 'journal')) return [];
  const finest = Math.min(...sources.filter((s) => s.kind === 'poll').map((s) => s.spacingSeconds));
  const band = bands.find((most) => finest <= most);
  return band === undefined ? [] : [`polled within ${band} s`];
}

function addVerdict({ verdicts }: Tally, group: string, verdict: string): void {
  const counts = verdicts.get(group) ?? new Map<string, number>();
  verdicts.set(group, counts.set(verdict, (counts.get(verdict) ?? 0) + 1));
}

function addSeed(of: Map<string, Seeds>, kind: string, about: string, seed: number): void {
  const seeds = of.get(kind) ?? new Map<string, number[]>();
  of.set(kind, seeds.set(about, [...(seeds.get(about) ?? []), seed]));
}
