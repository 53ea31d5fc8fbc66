import type { LitElement } from 'lit';
import { addressOf } from './address.ts';
import { type Chosen, lastSwapOf, type PageState } from './page-state.ts';

/** The page: which view shows what. */
export interface Followed extends LitElement {
  state: PageState | null;
  view: string;
}

/** What the history keeps of a place beside its address. */
export interface Kept {
  readonly scroll: number;
  /** The pair was chosen by a person: it is not just the worst one. */
  readonly isPicked: boolean;
}

/** Where the page is on its way through views and history. */
export interface Way {
  readonly host: Followed;
  readonly onLeave: () => void;
  /** What a person chose; `null`: each view shows its worst pair. */
  picked: Chosen | null;
  said: string;
  /** Address and history as they were followed or written last: the browser may tell of one step twice. */
  followed: string;
  scrollingTo: number | null;
  timer: ReturnType<typeof setTimeout> | undefined;
}

/** Browsers refuse a page that rewrites its address for every key and every turn of the wheel. */
const restMs = 200;

/** The address of what the page shows. */
export function addressNow({ host, picked }: Way): string {
  const { state, view } = host;
  if (state === null) return location.hash;
  if (view === '') return '#';
  const { pair, swap } = state.chosen;
  const isOfPair = pair !== '' && (picked !== null || view === 'swap' || view === 'diagnosis');
  // The last swap of a pair goes without saying, but in its record.
  const last = lastSwapOf(state.site.pairs, pair).swap;
  const isSwap = isOfPair && (swap !== last || (view === 'swap' && hasSwap(state)));
  const { span, inputs } = state;
  return addressOf({
    view,
    pair: isOfPair ? pair : null,
    swap: isSwap ? swap : null,
    span: isOfPair ? span : null,
    inputs,
  });
}

function hasSwap({ site, chosen }: PageState): boolean {
  const model = site.pairs.find((p) => p.health.pair === chosen.pair);
  return (model?.verification.swaps.length ?? 0) > 0;
}

/** Keeps the place when nothing has moved for a moment. */
export function keepSoon(way: Way): void {
  clearTimeout(way.timer);
  way.timer = setTimeout(() => keep(way), restMs);
}

/** Writes the place of the page into its address and history; while a view is not drawn its place is the last that was. */
export function keep(way: Way, top: number | null = null): void {
  clearTimeout(way.timer);
  const { host } = way;
  if (host.state !== null) {
    const isDrawn = host.view === '' || host.querySelector(`${host.view}-view`) !== null;
    const last = keptOf(history.state)?.scroll ?? 0;
    const scroll = top ?? way.scrollingTo ?? (isDrawn ? Math.round(window.scrollY) : last);
    history.replaceState({ scroll, isPicked: way.picked !== null }, '', addressNow(way));
  }
  way.followed = keyOf();
}

/** Address and history as they are: what was followed already is not followed again. */
export function keyOf(): string {
  return `${location.hash}\n${JSON.stringify(history.state)}`;
}

/** What the history kept of this place; `null` where a person came to it by an address. */
export function keptOf(state: unknown): Kept | null {
  if (typeof state !== 'object' || state === null) return null;
  const { scroll, isPicked } = { scroll: null, isPicked: null, ...state };
  return typeof scroll === 'number' && typeof isPicked === 'boolean' ? { scroll, isPicked } : null;
}
