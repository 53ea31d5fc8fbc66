import { bringToSight } from './scroll-place.ts';
import { staffKeys } from './staff-keys.ts';
import { views } from './views.ts';

/** Keys and what they do, for the help. */
export interface KeyGroup {
  readonly title: string;
  readonly keys: readonly (readonly [keys: string, does: string])[];
}

/** All keys of the page, by where they work. */
export const keyGroups: readonly KeyGroup[] = [
  {
    title: 'Anywhere but in a field',
    keys: [
      ...views.map(({ title }, index) => [String(index + 1), title] as const),
      ['e', 'next log lines; Enter keeps them in the margin, Enter again copies them'],
      ['r', 'fields of the record: work order and names'],
      ['s', 'Save, Print and Copy'],
      ['/', 'filter of the list'],
      ['?', 'this help'],
      ['Escape', 'closes this help, or the lines in the margin'],
    ],
  },
  {
    title: 'On the staff, when it has the focus',
    keys: staffKeys.map(({ keys, meaning }) => [keys, meaning] as const),
  },
];

/** What the page does when a key is pressed. */
export interface KeyWork {
  open(view: string): void;
  help(): void;
  /** False once a person has switched the keys off. */
  isOn(): boolean;
}

/** Works the keys of the whole page. What has the focus comes first: what it uses, and every key in a field, is its own. */
export function workKeys(host: HTMLElement, work: KeyWork): void {
  document.addEventListener('keydown', (event) => {
    const hasModifier = event.ctrlKey || event.metaKey || event.altKey;
    if (event.defaultPrevented || hasModifier || isField(event.target) || !work.isOn()) return;
    if (document.querySelector('dialog[open]') !== null) return;
    if (press(host, event.key, work)) event.preventDefault();
  });
}

/** What saves what a view shows, the whole report first. */
const saving = 'main save-bar button';

/** Works one key; gives whether it is one of the page's. */
function press(host: HTMLElement, key: string, work: KeyWork): boolean {
  const view = /^[1-9]$/.test(key) ? views[Number(key) - 1] : undefined;
  if (view !== undefined) work.open(view.id);
  else if (key === '?') work.help();
  else if (key === 'e') focusOn(nextLines(host));
  else if (key === 'r') focusOn(host.querySelector('main report-form input'));
  else if (key === 's') focusOn(host.querySelector(saving));
  else if (key === '/') focusOn(host.querySelector('main input[type="search"]'));
  else return false;
  return true;
}

function isField(target: EventTarget | null): boolean {
  return target instanceof Element && target.matches('input, select, textarea, [contenteditable]');
}

function focusOn(found: Element | null): void {
  if (found !== null) bringToSight(found, 'nearest');
}

/** The button to the log lines that comes next after the focus; past the last one it begins again. */
function nextLines(host: HTMLElement): Element | null {
  const all = [...host.querySelectorAll('main lines-button button')].filter((b) => b.checkVisibility());
  const focus = document.activeElement;
  // From the margin it goes on after what is kept there.
  const kept = focus?.closest('side-notes') == null ? null : host.querySelector('main [aria-pressed="true"]');
  const from = kept ?? focus;
  const isAfter = (button: Element): boolean =>
    from !== null &&
    from !== button &&
    (from.compareDocumentPosition(button) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0;
  return all.find(isAfter) ?? all[0] ?? null;
}
