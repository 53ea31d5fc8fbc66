import type { Address } from './address.ts';
import type { Followed, Kept, Way } from './address-history.ts';
import { bringToSight, onceDrawn, scrollBackTo } from './scroll-place.ts';

/** What is brought into sight: a section by its id, or the row of a pair. */
export type Wanted = string | { readonly pair: string };

/** A link to the row of a pair shows it. */
export function rowOf({ view, pair }: Address): Wanted | undefined {
  return pair !== null && (view === 'fleet' || view === 'pairs') ? { pair } : undefined;
}

/** Takes the person to where they were, to what they asked for, or to the top of the view. */
export function place(way: Way, kept: Kept | null, wanted?: Wanted): void {
  const { host } = way;
  void host.updateComplete.then(async () => {
    const main = host.querySelector('main');
    if (main instanceof HTMLElement) main.focus({ preventScroll: true });
    if (wanted !== undefined) await onceDrawn(() => showIn(host, wanted));
    else if (kept !== null && kept.scroll > 0) await scrollBack(way, kept.scroll);
    else window.scrollTo(0, 0);
  });
}

function showIn(host: Followed, wanted: Wanted): boolean {
  const rows = [...host.querySelectorAll('main [data-pair]')];
  const isRow = (row: Element): boolean =>
    typeof wanted !== 'string' && row.getAttribute('data-pair') === wanted.pair;
  const found = typeof wanted === 'string' ? document.getElementById(wanted) : rows.find(isRow);
  if (found === null || found === undefined) return false;
  bringToSight(found, typeof wanted === 'string' ? 'start' : 'center');
  return true;
}

async function scrollBack(way: Way, top: number): Promise<void> {
  way.scrollingTo = top;
  await scrollBackTo(top);
  if (way.scrollingTo === top) way.scrollingTo = null;
}
