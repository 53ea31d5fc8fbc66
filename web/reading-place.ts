import type { LitElement } from 'lit';

/** Where a person was before a reading took the place of what was shown. */
export interface Place {
  readonly scroll: number;
  readonly focused: Element | null;
}

/** Where a person is now. */
export function placeNow(): Place {
  return { scroll: window.scrollY, focused: document.activeElement };
}

/** How long what is drawn later is waited for. */
const patienceMs = 10_000;
/** By these a person takes the page in hand. */
const taken = ['wheel', 'keydown', 'pointerdown', 'touchstart'] as const;

/** Scrolls to where a person was, with the focus where it was, once the page is drawn; else the focus is at its begin. */
export async function goBack(element: LitElement, { scroll, focused }: Place): Promise<void> {
  await element.updateComplete;
  if (focused instanceof HTMLElement && focused.isConnected && focused !== document.body)
    focused.focus({ preventScroll: true });
  else focusOn(element, 'main');
  await stayAt(scroll);
}

/** Stays there while charts are drawn once more, unless a person moves on: the browser would follow what they push down. */
async function stayAt(scroll: number): Promise<void> {
  const end = performance.now() + patienceMs;
  let isTaken = false;
  const take = (): void => {
    isTaken = true;
  };
  for (const kind of taken) window.addEventListener(kind, take, { passive: true });
  document.documentElement.classList.add('stays');
  while (!isTaken && performance.now() < end) {
    if (Math.abs(window.scrollY - scroll) > 1) window.scrollTo(0, scroll);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  document.documentElement.classList.remove('stays');
  for (const kind of taken) window.removeEventListener(kind, take);
}

/** Moves the focus, not the page. */
export function focusOn(element: LitElement, selector: string): void {
  const found = element.querySelector(selector);
  if (found instanceof HTMLElement) found.focus({ preventScroll: true });
}
