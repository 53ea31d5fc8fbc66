import { terminal } from '../src/report/escape.ts';
import { sayInstant } from '../src/report/words.ts';
import type { Address } from './address.ts';
import type { PageState } from './page-state.ts';
import type { View } from './view.ts';

type Named = readonly Pick<View, 'id' | 'title'>[];

/** The title of the tab: what the view shows, and of which pair. */
export function titleOf(view: string, state: PageState | null, views: Named): string {
  const what = state === null ? '' : shownIn(view, state, views);
  return what === '' ? 'Steadypair' : `${what}, Steadypair`;
}

function shownIn(view: string, { site, chosen }: PageState, views: Named): string {
  const pair = terminal(chosen.pair);
  const swap = site.pairs.find((p) => p.health.pair === chosen.pair)?.verification.swaps[chosen.swap];
  if (pair !== '' && view === 'swap')
    return swap === undefined ? `${pair}, no swap` : `${pair} swap of ${dayOf(swap.from, site.zone)}`;
  if (pair !== '' && view === 'diagnosis') return `${pair} diagnosis`;
  return views.find(({ id }) => id === view)?.title ?? '';
}

/** The day of an instant in a zone: `14 Mar 2026`. */
function dayOf(time: number, zone: string): string {
  return sayInstant(time, zone).split(' ').slice(0, 3).join(' ');
}

/** What an address asks for, where nothing is read yet; empty where it asks for nothing. */
export function sayAsked({ view, pair, swap, span }: Address, views: Named): string {
  const title = views.find(({ id }) => id === view)?.title;
  if (title === undefined) return '';
  const of = pair === null ? '' : `, pair ${terminal(pair)}`;
  const nth = swap === null || view !== 'swap' ? '' : `, swap ${swap + 1}`;
  const time = span === null ? '' : `, ${sayInstant(span.from, 'UTC')} to ${sayInstant(span.to, 'UTC')} UTC`;
  return `This address shows ${title}${of}${nth}${time}. The browser cannot open the files again: drop the same files to see it.`;
}
