/** How long what is drawn later is waited for. */
const patienceMs = 10_000;

/** Events by which a person takes the page in hand: what is waited for then is no longer wanted. */
const taken = ['wheel', 'keydown', 'pointerdown', 'touchstart'] as const;

/** Waits, redraw after redraw, until `attempt` succeeds, a person acts or time is up. Gives whether it succeeded. */
export async function onceDrawn(attempt: () => boolean): Promise<boolean> {
  const end = performance.now() + patienceMs;
  let isTaken = false;
  const take = (): void => {
    isTaken = true;
  };
  for (const kind of taken) addEventListener(kind, take, { passive: true });
  let isDone = attempt();
  while (!isDone && !isTaken && performance.now() < end) {
    await new Promise((resolve) => setTimeout(resolve, 50));
    isDone = !isTaken && attempt();
  }
  for (const kind of taken) removeEventListener(kind, take);
  return isDone;
}

/** The page has come to rest if it has kept its height for so long. */
const stillMs = 500;

/** Scrolls to where a person was, and stays there until all that is drawn later has taken its room. */
export function scrollBackTo(top: number): Promise<boolean> {
  let [height, since] = [0, performance.now()];
  return onceDrawn(() => {
    window.scrollTo(0, top);
    const { scrollHeight } = document.documentElement;
    const isDrawing = document.querySelector('main .picture:empty') !== null;
    if (scrollHeight !== height || isDrawing) [height, since] = [scrollHeight, performance.now()];
    return performance.now() - since > stillMs && Math.abs(window.scrollY - top) < 2;
  });
}

/** Brings an element into sight and moves the focus to it, or to the first thing in it that takes the focus. */
export function bringToSight(found: Element, block: ScrollLogicalPosition): void {
  found.scrollIntoView({ block });
  const own = found.matches('[tabindex], a[href], button, input, select');
  const inner = own ? found : found.querySelector('a[href], button, input, select');
  if (inner instanceof HTMLElement) inner.focus({ preventScroll: true });
}
