import { addressOf } from './address.ts';
import type { PageState } from './page-state.ts';

/** Keeps the rows and names of pairs in a view marked. */
export interface PairMarks {
  /** Marks the rows of the chosen pair. */
  mark(): void;
  end(): void;
}

/**
 * Marks the rows of the chosen pair in all tables of `host`, and makes the names of pairs in its charts links as those in the tables
 * are: a chart has its names from the table beside it, which has the links for the keyboard.
 */
export function followPairs(host: HTMLElement, state: () => PageState): PairMarks {
  const mark = (): void => markRows(host, state().chosen.pair);
  const observer = new MutationObserver(() => {
    mark();
    markNames(
      host,
      state().site.pairs.map((p) => p.health.pair),
    );
  });
  observer.observe(host, { childList: true, subtree: true, attributeFilter: ['data-pair'] });
  host.addEventListener('click', onName);
  return {
    mark,
    end: () => {
      observer.disconnect();
      host.removeEventListener('click', onName);
    },
  };
}

function markRows(host: HTMLElement, pair: string): void {
  for (const row of host.querySelectorAll('tr[data-pair]'))
    if (row.getAttribute('data-pair') === pair) row.setAttribute('aria-current', 'true');
    else row.removeAttribute('aria-current');
}

function markNames(host: HTMLElement, pairs: readonly string[]): void {
  const names = new Set(pairs);
  for (const text of host.querySelectorAll('.picture text'))
    if (names.has(text.textContent ?? '')) text.classList.add('pair-name');
}

function onName({ target }: Event): void {
  const name = target instanceof Element ? target.closest('text.pair-name') : null;
  if (name === null) return;
  const pair = name.textContent ?? '';
  location.hash = addressOf({ view: '', pair, swap: null, span: null, inputs: {} });
}
