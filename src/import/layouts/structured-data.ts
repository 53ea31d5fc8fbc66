/** Where structured data ends, and its parameters by name; or what of it RFC 5424 does not allow. */
export type StructuredData =
  | { readonly end: number; readonly params: ReadonlyMap<string, string> }
  | { readonly wrong: string };

/** Names are 1 to 32 printable ASCII characters without `=`, blank, `]` and `"`. Source: RFC 5424 (2009), section 6. */
const name = /[!#-<>-\\^-~]{1,32}/y;
/** Those without `@` are registered, and say how the message came, not what of. Source: RFC 5424 (2009), section 7. */
const registered: ReadonlySet<string> = new Set(['timeQuality', 'origin', 'meta']);
/** A value: `"`, `\` and `]` are guarded by a `\`. Devices leave the `]` unguarded (common practice, no source). */
const value = /"((?:[^"\\]|\\.)*)"/y;

const nothing: ReadonlyMap<string, string> = new Map();

/** Takes structured data apart, from where it begins: `-`, or elements in brackets. Source: RFC 5424 (2009), section 6.3. */
export function readStructuredData(line: string, from: number): StructuredData {
  if (line.charAt(from) === '-') return { end: from + 1, params: nothing };
  const params = new Map<string, string>();
  let at = from;
  while (line.charAt(at) === '[') {
    const id = take(name, line, at + 1);
    if (id === null) return wrong(line, at, 'has no SD-ID');
    at += 1 + id[0].length;
    while (line.charAt(at) === ' ') {
      const key = take(name, line, at + 1);
      const said = key === null ? null : take(value, line, at + 2 + key[0].length);
      if (key === null || said === null || line.charAt(at + 1 + key[0].length) !== '=')
        return wrong(line, at + 1, 'is no parameter of the form name="value"');
      if (!registered.has(id[0])) params.set(key[0], (said[1] ?? '').replace(/\\(["\\\]])/g, '$1'));
      at += 2 + key[0].length + said[0].length;
    }
    if (line.charAt(at) !== ']')
      return wrong(line, from, `ends no SD-ELEMENT: an SD-ID is "${id[0]}", and then comes no blank nor "]"`);
    at += 1;
  }
  if (at === from) return wrong(line, from, 'is neither "-" nor an SD-ELEMENT in brackets');
  return at < line.length && line.charAt(at) !== ' '
    ? wrong(line, at, 'follows the structured data without a blank')
    : { end: at, params };
}

function take(pattern: RegExp, line: string, from: number): RegExpExecArray | null {
  pattern.lastIndex = from;
  return pattern.exec(line);
}

const mostShown = 40;

function wrong(line: string, at: number, what: string): StructuredData {
  return { wrong: `Structured data: "${line.slice(at, at + mostShown)}" ${what} (RFC 5424, section 6.3).` };
}
