import { pastBlanks } from './calendar-words.ts';
import { endsWord } from './digits.ts';

/** What a stamp says of its zone, behind its clock. */
export type ZoneSaid =
  | { readonly kind: 'offset'; readonly minutes: number; readonly end: number }
  | { readonly kind: 'name'; readonly name: string; readonly end: number }
  | { readonly kind: 'several' };

/**
 * Minutes ahead of UTC. Names that have one meaning: in the IANA data (2025c) every zone that uses one of them since the year
 * 2000 means the same by it. MEZ and MESZ, OEZ and OESZ: German names of CET, CEST, EET and EEST, from memory.
 */
const sure: ReadonlyMap<string, number> = new Map([
  ...(['UTC', 'UT', 'GMT', 'WET'] as const).map((name) => [name, 0] as const),
  ...(['WEST', 'CET', 'MEZ'] as const).map((name) => [name, 60] as const),
  ...(['CEST', 'MESZ', 'EET', 'OEZ', 'SAST'] as const).map((name) => [name, 120] as const),
  ...(['EEST', 'OESZ'] as const).map((name) => [name, 180] as const),
  ...(['AWST', 'JST'] as const).map((name) => [name, name === 'JST' ? 540 : 480] as const),
  ...(['ACST', 'AEST'] as const).map((name) => [name, name === 'AEST' ? 600 : 570] as const),
  ...(['ACDT', 'AEDT'] as const).map((name) => [name, name === 'AEDT' ? 660 : 630] as const),
  ...(['NZST', 'NZDT'] as const).map((name) => [name, name === 'NZST' ? 720 : 780] as const),
  ...(['AKST', 'AKDT'] as const).map((name) => [name, name === 'AKST' ? -540 : -480] as const),
]);

/** Names that mean several things, by the IANA data, or that other countries use otherwise (common practice, no source). */
const several: ReadonlySet<string> = new Set(
  'ADT AST BST CDT CST EDT EST GST IST KST MDT MSD MSK MST NDT NST PDT PST SST'.split(' '),
);

/** Those that are words as well. */
const words: ReadonlySet<string> = new Set(['WEST', 'WET']);

/** The English long names of Unicode CLDR 48. `Western European Time` alone may be either. */
const longNames = [
  ['greenwich mean time', 0],
  ['coordinated universal time', 0],
  ['western european standard time', 0],
  ['western european summer time', 60],
  ['central european standard time', 60],
  ['central european summer time', 120],
  ['eastern european standard time', 120],
  ['eastern european summer time', 180],
] as const;

const areas =
  /(?:Africa|America|Antarctica|Arctic|Asia|Atlantic|Australia|Etc|Europe|Indian|Pacific)(?:\/[A-Za-z][\w+-]*){1,2}/y;

/**
 * The zone that is named at a place: `WEST`, `UTC+1`, `Europe/Lisbon` (in brackets too, as RFC 9557 has it),
 * `Western European Summer Time`. `several` for an abbreviation that more than one zone uses; `null` where none is named.
 * `isZone` says whether a name is one of the IANA data.
 */
export function zoneSaid(text: string, at: number, isZone: (name: string) => boolean): ZoneSaid | null {
  const first = text.charCodeAt(at);
  if (first === 91 || first === 40) return bracketed(text, at, isZone);
  if (first < 65 || first > 90) return null;
  let end = at;
  while (isCapital(text.charCodeAt(end))) end += 1;
  if (end - at >= 2 && end - at <= 4) {
    const word = text.slice(at, end);
    if ((word === 'UTC' || word === 'GMT') && isSign(text.charCodeAt(end))) return shifted(text, end);
    if (!endsName(text, end)) return null;
    // "10:00:00 WEST partner lost" tells of a pair of that name.
    if (words.has(word) && isSmall(text.charCodeAt(pastBlanks(text, end)))) return null;
    const minutes = sure.get(word);
    if (minutes !== undefined) return { kind: 'offset', minutes, end };
    return several.has(word) ? { kind: 'several' } : null;
  }
  return ianaName(text, at, isZone) ?? longName(text, at);
}

function isCapital(code: number): boolean {
  return code >= 65 && code <= 90;
}

function isSmall(code: number): boolean {
  return code >= 97 && code <= 122;
}

function isSign(code: number): boolean {
  return code === 43 || code === 45;
}

/** `EST-A` and `MET/2` are units. */
function endsName(text: string, at: number): boolean {
  return at >= text.length || ' \t\u00a0\u202f,;|)]"\'}'.includes(text.charAt(at));
}

/** `UTC+1`, `GMT+01:00`, `GMT-0330`. */
function shifted(text: string, at: number): ZoneSaid | null {
  const offset = /([+-])(\d{1,2})(?::?(\d{2}))?/y;
  offset.lastIndex = at;
  const found = offset.exec(text);
  if (found === null) return null;
  const [whole, sign, hours, minutes = '0'] = found;
  const ahead = Number(hours) * 60 + Number(minutes);
  return { kind: 'offset', minutes: sign === '-' ? -ahead : ahead, end: at + whole.length };
}

function ianaName(text: string, at: number, isZone: (name: string) => boolean): ZoneSaid | null {
  areas.lastIndex = at;
  const name = areas.exec(text)?.[0];
  if (name === undefined || !isZone(name)) return null;
  return { kind: 'name', name, end: at + name.length };
}

function longName(text: string, at: number): ZoneSaid | null {
  if (!endsWord(text, at - 1)) return null;
  const said = text.slice(at, at + 32).toLowerCase();
  const found = longNames.find(([name]) => said.startsWith(name) && endsWord(said, name.length));
  return found === undefined ? null : { kind: 'offset', minutes: found[1], end: at + found[0].length };
}

/** `[Europe/Lisbon]` and `(WEST)`; other words in square brackets are units. */
function bracketed(text: string, at: number, isZone: (name: string) => boolean): ZoneSaid | null {
  const isSquare = text.charAt(at) === '[';
  const next = text.charCodeAt(at + 1);
  if (!isCapital(next)) return null;
  const inner = isSquare ? ianaName(text, at + 1, isZone) : zoneSaid(text, at + 1, isZone);
  if (inner === null || inner.kind === 'several') return inner;
  return text.charAt(inner.end) === (isSquare ? ']' : ')') ? { ...inner, end: inner.end + 1 } : null;
}
