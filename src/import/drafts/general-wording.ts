/** A piece of a wording: its own words, or something that changes from line to line. */
export interface WordingPart {
  readonly kind: 'words' | 'number' | 'id' | 'quoted';
  readonly text: string;
}

/** What is longer is no wording, and its rule fits how it begins. Chosen here. */
export const longestWording = 200;

/** Quoted names; ids and addresses of letters and digits (RFC 4122, RFC 4291, IEEE 802); numbers, clocks and versions. */
const changing = new RegExp(
  [
    '(?<quoted>"[^"\\n]{0,80}"|(?<![\\p{L}\\d])\'[^\'\\n]{1,80}\'(?!\\p{L}))',
    '(?<id>\\b[0-9a-fA-F]{8}(?:-[0-9a-fA-F]{4}){3}-[0-9a-fA-F]{12}\\b|\\b(?:[0-9a-fA-F]{2}[:-]){5}[0-9a-fA-F]{2}\\b|\\b[0-9]{1,3}(?:\\.[0-9]{1,3}){3}(?:[:/][0-9]+)?\\b|\\b(?:[0-9a-fA-F]{1,4}:){3,7}:?[0-9a-fA-F]{1,4}\\b|\\b0x[0-9a-fA-F]+\\b|\\b(?=[a-f]*[0-9])(?=[0-9]*[a-f])[0-9a-f]{8,}\\b)',
    '(?<number>[0-9]+(?:[.,:][0-9]+)*)',
  ].join('|'),
  'gu',
);

const patternOf: Readonly<Record<Exclude<WordingPart['kind'], 'words'>, string>> = {
  number: '\\d[\\d.,:]*',
  id: '[0-9a-fA-Fx.:/-]+',
  quoted: '["\'][^"\']*["\']',
};

/** A wording as its words and what changes between them; what is past its longest is left out. */
export function partsOf(wording: string): readonly WordingPart[] {
  const text = wording.slice(0, longestWording);
  const parts: WordingPart[] = [];
  let end = 0;
  for (const found of text.matchAll(changing)) {
    if (found.index > end) parts.push({ kind: 'words', text: text.slice(end, found.index) });
    const { quoted, id } = found.groups ?? {};
    parts.push({
      kind: quoted !== undefined ? 'quoted' : id !== undefined ? 'id' : 'number',
      text: found[0],
    });
    end = found.index + found[0].length;
  }
  if (end < text.length) parts.push({ kind: 'words', text: text.slice(end) });
  return parts;
}

/** What two lines of one wording have in common. */
export function generalKey(parts: readonly WordingPart[]): string {
  return parts
    .map(({ kind, text }) => (kind === 'words' ? text.replace(/\s+/g, ' ') : `\u0000${kind}`))
    .join('');
}

/**
 * A pattern that fits a whole wording, in linear time: what changes is made general, or kept to the letter where it
 * `isLiteral`. `value` is what the built-in words took for the value: it becomes a named group, as a version or a serial
 * number does. A wording that is cut may go on, and so may one that `goesOn` in the lines that follow it.
 */
export function wordingPattern(
  wording: string,
  how: { readonly isLiteral: boolean; readonly goesOn: boolean; readonly value: string | null },
): string {
  const { isLiteral, goesOn, value } = how;
  const text = wording.slice(0, longestWording);
  const end = wording.length > longestWording ? '' : goesOn ? openEnd : '$';
  const at = value === null || value === '' ? -1 : text.lastIndexOf(value);
  const side = (part: string): string => piecesOf(part, isLiteral).join('');
  if (value !== null && at >= 0)
    return `^${side(text.slice(0, at))}(?<value>\\S+)${side(text.slice(at + value.length))}${end}`;
  const identity = identityIn.exec(text);
  if (identity === null) return `^${side(text)}${end}`;
  const from = identity.index + (identity[1] ?? '').length;
  const rest = text.slice(from).replace(/^[^\s,;()]+/, '');
  return `^${side(text.slice(0, from))}(?<value>[^\\s,;()]+)${side(rest)}${end}`;
}

/** How the pattern of a wording ends that may go on. */
export const openEnd = '(?: .*)?$';

/** A version, a release or a serial number is the value of what stands before it. */
const identityIn =
  /((?:firmware|version|release|revision|model|serial(?: number| no)?)[\s:=]{1,3})(?=[^\s,;()]*\d)/i;

function piecesOf(text: string, isLiteral: boolean): readonly string[] {
  return partsOf(text).map((part) =>
    part.kind === 'words' || isLiteral ? escapedText(part.text) : patternOf[part.kind],
  );
}

/** Text that stands for itself in a pattern; a run of blanks fits any other. */
export function escapedText(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/\s{2,}|[\t\r\n]/g, '\\s+');
}
