import type { Interval } from '../src/vocabulary.ts';

/** What a person typed or chose in the views, each under a name of its own: filters, orders, numbers. */
export type Inputs = Readonly<Record<string, string>>;

/** What an address asks for; `null` where it does not say. */
export interface Address {
  /** The id of a view; empty: the start. Not yet known to exist, as nothing in it is. */
  readonly view: string;
  readonly pair: string | null;
  /** The place of the swap among those of its pair; the address counts from 1. */
  readonly swap: number | null;
  readonly span: Interval | null;
  readonly inputs: Inputs;
  /** What could not be read in it, in words. */
  readonly problems: readonly string[];
}

const [mostCharacters, mostInputs, mostValue] = [8000, 40, 500];
const own: ReadonlySet<string> = new Set(['pair', 'swap', 'from', 'to']);
const instant = /^(?:\d{4}|[+-]\d{6})-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d{1,3})?Z$/;

/** Reads what stands after `#` in the address, with or without that sign. Any text is read; none throws. */
export function readAddress(hash: string): Address {
  const text = hash.replace(/^#/, '');
  if (text.length > mostCharacters) return { ...nowhere, problems: ['it is too long'] };
  const [view = '', ...rest] = text.split('?');
  const said = new URLSearchParams(rest.join('?'));
  const span = spanOf(said.get('from'), said.get('to'));
  const swap = said.get('swap');
  const inputs = inputsOf(said);
  return {
    view,
    pair: said.get('pair'),
    swap: swap !== null && /^[1-9]\d{0,5}$/.test(swap) ? Number(swap) - 1 : null,
    span: span === 'unreadable' ? null : span,
    inputs: inputs.known,
    problems: [
      ...(swap !== null && !/^[1-9]\d{0,5}$/.test(swap) ? ['its swap is not a number'] : []),
      ...(span === 'unreadable' ? ['its from and to are not a span of time'] : []),
      ...(inputs.left > 0 ? ['part of it was not recognised'] : []),
    ],
  };
}

const nowhere: Address = { view: '', pair: null, swap: null, span: null, inputs: {}, problems: [] };

function spanOf(from: string | null, to: string | null): Interval | null | 'unreadable' {
  if (from === null && to === null) return null;
  const [begin, end] = [from, to].map((t) => (instant.test(t ?? '') ? Date.parse(t ?? '') : Number.NaN));
  const isSpan = begin !== undefined && end !== undefined && begin < end;
  return isSpan ? { from: begin, to: end } : 'unreadable';
}

function inputsOf(said: URLSearchParams): { readonly known: Inputs; readonly left: number } {
  const others = [...said].filter(([name]) => !own.has(name));
  const known = others
    .filter(([name, value]) => /^[a-z][\w.-]{0,40}$/i.test(name) && value.length <= mostValue)
    .slice(0, mostInputs);
  // Made of entries, so that no name can reach what every object has.
  return { known: Object.fromEntries(known), left: others.length - known.length };
}

/** The address with its `#`, in ASCII; inputs by name, so that the same place has one address. */
export function addressOf({ view, pair, swap, span, inputs }: Omit<Address, 'problems'>): string {
  const said = new URLSearchParams();
  if (pair !== null) said.set('pair', pair);
  if (swap !== null) said.set('swap', String(swap + 1));
  if (span !== null) {
    said.set('from', new Date(span.from).toISOString());
    said.set('to', new Date(span.to).toISOString());
  }
  for (const name of Object.keys(inputs).sort()) said.set(name, inputs[name] ?? '');
  const text = said.toString();
  return text === '' ? `#${view}` : `#${view}?${text}`;
}
