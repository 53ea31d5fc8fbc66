import type { SiteModel } from './protocol.ts';
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
  readonly chosen: Chosen;
  /** How many lessons can be undone. */
  readonly undo: number;
  /** The last step with files that can be undone, such as `Removed ro1.csv`. */
  readonly fileStep: string | null;
}

/** Where nothing was read the reasons are what there is to see. */
export function firstView({ pairs }: SiteModel): string {
  return pairs.length === 0 ? 'sources' : 'pairs';
}

/** What was chosen before, if it is still there; else the first swap; else the first pair. */
export function firstChosen({ pairs }: SiteModel, before: Chosen | null): Chosen {
  const same = pairs.some(
    ({ health, verification: { swaps } }) =>
      health.pair === before?.pair &&
      (swaps[before.swap] !== undefined || (swaps.length === 0 && before.swap === 0)),
  );
  if (same && before !== null) return before;
  const pair = pairs.find((p) => p.verification.swaps.length > 0) ?? pairs[0];
  return { pair: pair?.health.pair ?? '', swap: 0 };
}
