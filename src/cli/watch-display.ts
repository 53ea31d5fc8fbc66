import type { Staff, SwapNow } from '../vocabulary.ts';

/** What a watch shows: pairs in work, or why there is nothing to show. */
export interface WatchView {
  /** The one that has the panel first; empty where no pair is in work. */
  readonly now: readonly SwapNow[];
  /** Pairs in work that were not asked for. */
  readonly beside: readonly SwapNow[];
  /** The last hour of the first of them. */
  readonly staff: Staff | null;
  /** What is waited for where no pair is in work, a sentence. */
  readonly waitsFor: string;
  /** When the newest row of each pair arrived, by this computer's clock. */
  readonly arrivedAt: ReadonlyMap<string, number>;
  /** IANA name of the zone the instants are shown in. */
  readonly zone: string;
}

/** How a watch shows what it sees. Instants are those of this computer's clock. */
export interface WatchDisplay {
  /** Shows what was read. */
  show(view: WatchView, thisMoment: number): void;
  /** Lets the clock go on; nothing was read. */
  tick(thisMoment: number): void;
  /** Tells a line on stderr. */
  tell(line: string): void;
  /** Leaves the terminal as it was. Can be called twice. */
  end(): void;
}
