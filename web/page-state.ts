import type { AttentionKind, Interval } from '../src/vocabulary.ts';
import type { Address, Inputs } from './address.ts';
import type { FollowedFolder } from './following.ts';
import type { Arrivals } from './log-arrivals.ts';
import type { PairModel, SiteModel } from './protocol.ts';
import type { Session } from './session.ts';

/** A swap, by its pair and its place among the swaps of that pair. */
export interface Chosen {
  readonly pair: string;
  readonly swap: number;
}

/** What the views show. */
export interface PageState {
  readonly site: SiteModel;
  readonly session: Session;
  /** The one pair that all views show, once a person has chosen it; until then the worst that the open view can say something of. */
  readonly chosen: Chosen;
  /** What the staff of that pair shows; `null`: its home. */
  readonly span: Interval | null;
  readonly inputs: Inputs;
  /** The folder that is followed; `null`: none is. */
  readonly followed: FollowedFolder | null;
  /** When the newest row of each pair came. */
  readonly arrivals: Arrivals;
  /** How many lessons can be undone. */
  readonly undo: number;
  /** The last step with files that can be undone, such as `Removed ro1.csv`. */
  readonly fileStep: string | null;
}

/** What a folder is followed for comes first; where nothing was read the reasons are what there is to see. */
export function firstView({ site: { pairs }, followed }: Pick<PageState, 'site' | 'followed'>): string {
  if (followed !== null) return 'now';
  return pairs.length === 0 ? 'sources' : 'pairs';
}

/** What was chosen before, if it is still there; else the worst pair. */
export function firstChosen(site: SiteModel, before: Chosen | null): Chosen {
  return before !== null && isThere(site, before) ? before : worstFor(site, '');
}

function isThere({ pairs }: SiteModel, { pair, swap }: Chosen): boolean {
  return pairs.some(
    ({ health, verification: { swaps } }) => health.pair === pair && swap < Math.max(1, swaps.length),
  );
}

const troubles: readonly AttentionKind[] = ['not-ready', 'flapping', 'late-light', 'light-again', 'unknown'];

/**
 * The worst pair that a view can say something of, with its last swap: of Won't sync one in trouble, of the swap record one that
 * was swapped; where there is none, the worst of all. Of Swap now it is the one with the latest step, or the only one there is. Its name is empty where there is no pair.
 */
export function worstFor({ pairs, attention, now }: SiteModel, view: string): Chosen {
  const [only, ...others] = pairs;
  if (view === 'now')
    return lastSwapOf(pairs, now[0]?.pair ?? (others.length === 0 ? (only?.health.pair ?? '') : ''));
  const swaps = new Map(pairs.map((p) => [p.health.pair, p.verification.swaps.length]));
  const fits = attention.find(({ pair, reasons }) => {
    if (view === 'swap') return (swaps.get(pair) ?? 0) > 0;
    if (view === 'diagnosis') return reasons.some(({ kind }) => troubles.includes(kind));
    return true;
  });
  return lastSwapOf(pairs, (fits ?? attention[0])?.pair ?? '');
}

/** A pair with the last of its swaps. */
export function lastSwapOf(pairs: readonly PairModel[], pair: string): Chosen {
  const swaps = pairs.find((p) => p.health.pair === pair)?.verification.swaps ?? [];
  return { pair, swap: Math.max(0, swaps.length - 1) };
}

/**
 * The view that a pair needs: its diagnosis where it is in trouble or loses its partner more often than the rest, else its record;
 * that of a pair that was never swapped has its staff and what happened.
 */
export function neededView({ attention }: SiteModel, pair: string): 'diagnosis' | 'swap' {
  const reasons = attention.find((a) => a.pair === pair)?.reasons ?? [];
  const isIn = reasons.some(({ kind }) => troubles.includes(kind)) || reasons[0]?.kind === 'stands-out';
  return isIn ? 'diagnosis' : 'swap';
}

/** What of an address fits the files that were read, and in words what does not. */
export interface Fitted {
  readonly picked: Chosen | null;
  readonly span: Interval | null;
  readonly said: readonly string[];
}

/** Fits an address to what was read: a pair, a swap or a span that is not there is left out, and said. */
export function fitAddress({ pair, swap, span, problems }: Address, { pairs }: SiteModel): Fitted {
  const model = pairs.find((p) => p.health.pair === pair);
  if (model === undefined) {
    const said = pair === null ? [] : [`no file read names pair ${pair}`];
    return { picked: null, span: null, said: [...said, ...problems] };
  }
  const own = model.health.pair;
  const last = lastSwapOf(pairs, own);
  const isSwap = swap === null || swap <= last.swap;
  const { from, to } = model.health;
  const isSpan = span === null || (span.from < to && span.to > from);
  return {
    picked: swap === null || !isSwap ? last : { pair: own, swap },
    span: isSpan && isSwap ? span : null,
    said: [
      ...(isSwap ? [] : [`the logs show no swap ${(swap ?? 0) + 1} of ${own}`]),
      ...(isSpan ? [] : [`the log of ${own} does not reach its span of time`]),
      ...problems,
    ],
  };
}
