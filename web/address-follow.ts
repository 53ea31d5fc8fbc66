import type { Interval } from '../src/vocabulary.ts';
import { type Address, readAddress } from './address.ts';
import {
  addressNow,
  type Followed,
  type Kept,
  keep,
  keepSoon,
  keptOf,
  keyOf,
  type Way,
} from './address-history.ts';
import { place, rowOf } from './address-place.ts';
import { type Chosen, firstView, fitAddress, neededView, worstFor } from './page-state.ts';
import { sayAsked, titleOf } from './page-title.ts';
import type { SiteModel } from './protocol.ts';
import { bringToSight } from './scroll-place.ts';
import { views } from './views.ts';

/** The page's way through its views: the address says where it is, the history where it was. */
export interface Follower {
  /** What of the address could not be shown, in words; empty if all could. Where nothing is read: what it asks for. */
  said(): string;
  /** The files were read, or read again: shows what the address asks for. */
  opened(): void;
  /** The files were read again while the view stays: of a view that shows its worst pair it is the worst that is so now. */
  renewed(): void;
  /** Opens a view, at a section of it where one is named. */
  open(view: string, section?: string): void;
}

/** What a person chose, and the view that is to show it. */
interface Choice extends Chosen {
  readonly view?: string;
}

/** Makes the page follow its address and history; `onLeave` is told when another view or pair takes the place of what was shown. */
export function followAddress(host: Followed, onLeave: () => void): Follower {
  const way: Way = {
    host,
    onLeave,
    picked: null,
    said: '',
    followed: '',
    scrollingTo: null,
    timer: undefined,
  };
  history.scrollRestoration = 'manual';
  for (const kind of ['popstate', 'hashchange']) window.addEventListener(kind, () => follow(way));
  window.addEventListener('scroll', () => keepSoon(way), { passive: true });
  host.addEventListener('click', (event) => onClick(way, event));
  host.addEventListener('choose', (event) => event instanceof CustomEvent && choose(way, event.detail));
  host.addEventListener('span', (event) => event instanceof CustomEvent && setSpan(way, event.detail));
  host.addEventListener('inputs', (event) => event instanceof CustomEvent && setInputs(way, event.detail));
  return {
    said: () => (host.state === null ? sayAsked(readAddress(location.hash), views) : way.said),
    opened: () => opened(way),
    renewed: () => renewed(way),
    open: (view, section) => visit(way, { ...nowhere, view }, { section }),
  };
}

const nowhere: Omit<Address, 'view'> = { pair: null, swap: null, span: null, inputs: {}, problems: [] };

function opened(way: Way): void {
  const { state } = way.host;
  if (state === null) return;
  const asked = readAddress(location.hash);
  if ((asked.view === '' && asked.pair === null) || state.site.pairs.length === 0) {
    visit(way, { ...nowhere, view: firstView(state) }, {});
    return;
  }
  const kept = keptOf(history.state) ?? { scroll: 0, isPicked: true };
  show(way, asked, kept);
  place(way, kept);
  keep(way);
}

function renewed({ host, picked }: Way): void {
  const { state, view } = host;
  if (state === null || picked !== null) return;
  const chosen = worstFor(state.site, view);
  const isSame = chosen.pair === state.chosen.pair && chosen.swap === state.chosen.swap;
  if (!isSame) host.state = { ...state, chosen };
}

/** The person went back or forward, or the address was changed by hand. */
function follow(way: Way): void {
  if (keyOf() === way.followed) return;
  const kept = keptOf(history.state);
  const asked = readAddress(location.hash);
  show(way, asked, kept);
  place(way, kept, kept === null ? rowOf({ ...asked, view: way.host.view }) : undefined);
  keep(way);
}

function onClick(way: Way, event: MouseEvent): void {
  const isPlain = event.button === 0 && !event.ctrlKey && !event.metaKey && !event.shiftKey && !event.altKey;
  const link = event.target instanceof Element ? event.target.closest('a[href^="#"]') : null;
  if (link === null || !isPlain || event.defaultPrevented) return;
  event.preventDefault();
  const hash = link.getAttribute('href') ?? '';
  const section = document.getElementById(hash.slice(1));
  if (section === null) visit(way, readAddress(hash), { isLink: true });
  else bringToSight(section, 'start');
}

function choose(way: Way, { pair, swap, view = 'swap' }: Choice): void {
  visit(way, { ...nowhere, view, pair, swap }, {});
}

function setSpan(way: Way, span: Interval | null): void {
  const { state } = way.host;
  if (state === null) return;
  way.host.state = { ...state, span };
  keepSoon(way);
}

/** A value of `null` takes an input away. */
function setInputs(way: Way, change: Readonly<Record<string, string | null>>): void {
  const { state } = way.host;
  if (state === null) return;
  const next = { ...state.inputs, ...change };
  const inputs = Object.fromEntries(
    Object.entries(next).flatMap(([name, value]) => (value === null ? [] : [[name, value] as const])),
  );
  way.host.state = { ...state, inputs };
  keepSoon(way);
}

/** Another view is a step of the history, and so is a link; what a person chooses within a view is not. */
function visit(
  way: Way,
  asked: Address,
  { section, isLink = false }: { readonly section?: string | undefined; readonly isLink?: boolean },
): void {
  keep(way);
  const [before, { view }] = [addressNow(way), way.host];
  show(way, asked, null);
  const isStep = way.host.view !== view || (isLink && addressNow(way) !== before);
  if (isStep) history.pushState({ scroll: 0, isPicked: way.picked !== null }, '', addressNow(way));
  way.scrollingTo = null;
  if (isStep || section !== undefined) place(way, null, section ?? rowOf({ ...asked, view: way.host.view }));
  keep(way, isStep ? 0 : window.scrollY);
}

/** An address that names a pair and no view asks for what that pair needs. */
function needed(asked: Address, site: SiteModel): string {
  return asked.view === '' && asked.pair !== null ? neededView(site, asked.pair) : asked.view;
}

/** Shows what an address asks for: all of it where the history kept it, else what it does not say stays. */
function show(way: Way, asked: Address, kept: Kept | null): void {
  const { host } = way;
  const { state } = host;
  if (state === null) {
    host.view = '';
    host.requestUpdate();
    return;
  }
  const wish = needed(asked, state.site);
  const isKnown = wish === '' || views.some(({ id }) => id === wish);
  const view = isKnown ? wish : host.view || firstView(state);
  const fitted = fitAddress(asked, state.site);
  if (kept !== null || asked.pair !== null) way.picked = kept?.isPicked === false ? null : fitted.picked;
  const wanted = way.picked ?? worstFor(state.site, view);
  const isSame = wanted.pair === state.chosen.pair && wanted.swap === state.chosen.swap;
  const chosen = isSame ? state.chosen : wanted;
  const own = wanted.pair === asked.pair ? fitted.span : null;
  const span = own ?? (kept === null && isSame ? state.span : null);
  const inputs = kept === null ? { ...state.inputs, ...asked.inputs } : asked.inputs;
  if (view !== host.view || !isSame) way.onLeave();
  host.state = { ...state, chosen, span, inputs };
  host.view = view;
  way.said = sayUnfit([...(isKnown ? [] : [`no view is named “${asked.view}”`]), ...fitted.said]);
  document.title = titleOf(view, host.state, views);
}

function sayUnfit(said: readonly string[]): string {
  return said.length === 0 ? '' : `Not all of the address can be shown: ${said.join('; ')}.`;
}
