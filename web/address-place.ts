import type { Address } from './address.ts';
import type { Followed, Kept, Way } from './address-history.ts';
import { nextTask } from './next-task.ts';
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
    // To move the focus the browser must lay the page out: not in one go with the building of it.
    await nextTask();
    const main = host.querySelector('main');
    if (main instanceof HTMLElement) main.focus({ preventScroll: true });
    if (wanted !== undefined) await onceDrawn(showing(host, wanted));
    else if (kept !== null && kept.scroll > 0) await scrollBack(way, kept.scroll);
    else window.scrollTo(0, 0);
  });
}

/** Gives what brings the wanted into sight, once it is there; of a table that shows its first rows it asks for all, once. */
function showing(host: Followed, wanted: Wanted): () => boolean {
  let isAsked = false;
  return () => {
    const found = typeof wanted === 'string' ? document.getElementById(wanted) : rowIn(host, wanted.pair);
    if (found !== null) bringToSight(found, typeof wanted === 'string' ? 'start' : 'center');
    const more = host.querySelector('main :is(pairs-view, shown-table) button.whole');
    if (found === null && typeof wanted !== 'string' && !isAsked && more instanceof HTMLElement) {
      isAsked = true;
      more.click();
    }
    return found !== null;
  };
}

function rowIn(host: Followed, pair: string): Element | null {
  const rows = [...host.querySelectorAll('main tr[data-pair]')];
  return rows.find((row) => row.getAttribute('data-pair') === pair) ?? null;
}

async function scrollBack(way: Way, top: number): Promise<void> {
  way.scrollingTo = top;
  await scrollBackTo(top);
  if (way.scrollingTo === top) way.scrollingTo = null;
}
