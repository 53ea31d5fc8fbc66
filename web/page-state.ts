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
}
