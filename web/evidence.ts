import { html, type LitElement, nothing, type TemplateResult } from 'lit';
import type { Cited, Pressed } from './cite.ts';
import { LinesButton } from './components/lines-button.ts';
import './components/section-index.ts';
import { SideNotes } from './components/side-notes.ts';
import { putUnder } from './put-under.ts';

/** Evidence of a page: it follows pointer and focus until a press pins it. */
export interface Evidence {
  /** What was cited is gone: another view, pair or reading stands in its place. */
  clear(): void;
  /** The margin; nothing where the window is too narrow for one. */
  margin(): TemplateResult | typeof nothing;
}

/** As in the style sheet: what is narrower has no margin. */
const narrow = '(max-width: 70rem)';

interface State {
  cited: Cited | null;
  /** The element that was pressed, and where it stands among the others. */
  pinned: { readonly by: Element; readonly place: string } | null;
  /** Opened under what was pressed, where there is no margin. */
  opened: { readonly notes: SideNotes; readonly remove: () => void } | null;
}

/** Listens to what the elements of `host` cite and pin; `read` reads lines back from their files. */
export function evidenceOf(host: LitElement, read: SideNotes['read']): Evidence {
  const state: State = { cited: null, pinned: null, opened: null };
  const window = matchMedia(narrow);
  const release = (): void => {
    if (state.pinned?.by instanceof LinesButton) state.pinned.by.isPinned = false;
    state.opened?.remove();
    Object.assign(state, { pinned: null, opened: null });
    host.requestUpdate();
  };
  const clear = (): void => {
    release();
    state.cited = null;
  };
  const pin = (by: Element, cited: Cited, focused: string | null): void => {
    release();
    const place = placeOf(host, by);
    Object.assign(state, { cited, pinned: { by, place } });
    if (by instanceof LinesButton) by.isPinned = true;
    if (window.matches) state.opened = openUnder(by, { cited, place, read });
    const notes = state.opened?.notes ?? host;
    if (focused !== null) void notes.updateComplete.then(() => focusIn(host, focused));
  };
  const follow = (cited: Cited | null): void => {
    if (cited === null) clear();
    else if (state.pinned === null) state.cited = cited;
    host.requestUpdate();
  };
  host.addEventListener('cite', (event) => event instanceof CustomEvent && follow(event.detail));
  host.addEventListener('pin', (event) => {
    if (!(event instanceof CustomEvent) || !(event.target instanceof Element)) return;
    const pressed: Pressed = event.detail;
    pin(event.target, pressed, pressed.isByKey ? '.copy' : null);
  });
  host.addEventListener('step', (event) => {
    const by = event instanceof CustomEvent ? Number(event.detail) : 0;
    const next = neighbour(host, state.pinned?.by, by);
    if (next === null) return;
    pin(next, { title: next.of, lines: next.lines }, by > 0 ? '.next' : '.previous');
    next.scrollIntoView({ block: 'nearest' });
  });
  const close = (): void => letGo(state, release);
  host.addEventListener('unpin', close);
  // What is only looked at goes too: the margin shows the sections again.
  onEscape(() => (state.pinned === null ? follow(null) : close()));
  window.addEventListener('change', clear);
  return {
    clear,
    margin: () => (window.matches ? nothing : marginOf(state, read)),
  };
}

function onEscape(act: () => void): void {
  document.addEventListener('keydown', ({ key }) => key === 'Escape' && act());
}

function marginOf({ cited, pinned }: State, read: SideNotes['read']): TemplateResult {
  const place = pinned?.place ?? null;
  return html`<aside aria-label="Evidence"><section-index .isFolded=${cited !== null}></section-index><side-notes .cited=${cited} .place=${place} .read=${read}></side-notes></aside>`;
}

/** The focus goes back to what was pressed, if it stood in the notes. */
function letGo({ pinned }: State, release: () => void): void {
  if (pinned === null) return;
  const isInside = document.activeElement?.closest('side-notes') !== null;
  release();
  if (isInside && pinned.by instanceof LinesButton) pinned.by.querySelector('button')?.focus();
}

function openUnder(
  by: Element,
  given: Pick<SideNotes, 'cited' | 'place' | 'read'>,
): NonNullable<State['opened']> {
  const notes = Object.assign(new SideNotes(), given);
  return { notes, remove: putUnder(by, notes) };
}

function focusIn(host: LitElement, selector: string): void {
  const found = host.querySelector(`side-notes ${selector}`);
  if (found instanceof HTMLElement) found.focus({ preventScroll: true });
}

/** All buttons to lines that can be seen, from the top down. */
function buttonsIn(host: LitElement): readonly LinesButton[] {
  const all = [...host.querySelectorAll('main lines-button')];
  return all.filter((found) => found instanceof LinesButton).filter((found) => found.checkVisibility());
}

function placeOf(host: LitElement, by: Element): string {
  const all: readonly Element[] = buttonsIn(host);
  const at = all.indexOf(by);
  return at < 0 ? 'On the staff' : `${at + 1} of ${all.length}`;
}

/** The next of the buttons after the pressed one, or the one before; past the end it begins again. */
function neighbour(host: LitElement, by: Element | undefined, step: number): LinesButton | null {
  if (by === undefined) return null;
  const all = buttonsIn(host);
  const after = all.findIndex(
    (button) => (by.compareDocumentPosition(button) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0,
  );
  const own = by instanceof LinesButton ? all.indexOf(by) : -1;
  const next = after < 0 ? all.length : after;
  const at = step > 0 ? next : (own < 0 ? next : own) - 1;
  return all.at(at % all.length) ?? null;
}
