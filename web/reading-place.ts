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

/** Scrolls to where a person was, with the focus where it was, once the page is drawn; else the focus is at its begin. */
export async function goBack(element: LitElement, { scroll, focused }: Place): Promise<void> {
  await element.updateComplete;
  if (focused instanceof HTMLElement && focused.isConnected && focused !== document.body)
    focused.focus({ preventScroll: true });
  else focusOn(element, 'main');
  // The views draw themselves after the page.
  await new Promise((resolve) => requestAnimationFrame(resolve));
  window.scrollTo(0, scroll);
}

/** Moves the focus, not the page. */
export function focusOn(element: LitElement, selector: string): void {
  const found = element.querySelector(selector);
  if (found instanceof HTMLElement) found.focus({ preventScroll: true });
}
