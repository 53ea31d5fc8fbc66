import { lastSwapOf, neededView } from './page-state.ts';
import type { SiteModel } from './protocol.ts';

/**
 * Makes the names of pairs in the charts of `host` open what the pair needs, as its name in a table does: the table beside a chart
 * has them for the keyboard. Gives what ends it.
 */
export function linkNames(host: HTMLElement, site: () => SiteModel): () => void {
  const observer = new MutationObserver((changes) => {
    const isDrawn = changes.some(({ addedNodes }) => [...addedNodes].some(holdsPicture));
    if (isDrawn) markNames(host, site());
  });
  const onClick = ({ target }: Event): void => {
    const name = target instanceof Element ? target.closest('text.pair-name') : null;
    if (name === null) return;
    const pair = name.textContent ?? '';
    const detail = { ...lastSwapOf(site().pairs, pair), view: neededView(site(), pair) };
    host.dispatchEvent(new CustomEvent('choose', { bubbles: true, detail }));
  };
  observer.observe(host, { childList: true, subtree: true });
  host.addEventListener('click', onClick);
  return () => {
    observer.disconnect();
    host.removeEventListener('click', onClick);
  };
}

function holdsPicture(node: Node): boolean {
  return node instanceof Element && (node.matches('svg') || node.querySelector('svg') !== null);
}

function markNames(host: HTMLElement, { pairs }: SiteModel): void {
  const names = new Set(pairs.map((p) => p.health.pair));
  for (const text of host.querySelectorAll('.picture text'))
    if (names.has(text.textContent ?? '')) text.classList.add('pair-name');
}
