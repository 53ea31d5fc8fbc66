const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text for HTML, in content or in a quoted attribute; control characters are made visible. */
export function html(text: string): string {
  return visible(text).replace(/[&<>"']/g, (character) => entities[character] ?? character);
}

/** Text for one cell or line of Markdown: no markup, no link (an address or a bare `www.` neither), no HTML comes of it. */
export function markdown(text: string): string {
  return visible(text)
    .replace(/[\\`*_{}[\]()#+!|~]/g, '\\$&')
    .replace(/[&<>]/g, (character) => entities[character] ?? character)
    .replace(/^([-=])/, '\\$1')
    .replace(/^(\d+)\.(?=\s|$)/, '$1\\.')
    .replace(/:\/\//g, ':&#47;&#47;')
    .replace(/(www)\./gi, '$1&#46;')
    .replaceAll('@', '&#64;');
}

/** One CSV cell (RFC 4180) that no spreadsheet takes for a formula: a quote is put before `= + - @`, tab and line ends. Characters that are not seen are shown. */
export function csvCell(value: string | number | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return String(value);
  const seen = value.replace(hidden, (character) =>
    /[\t\r\n]/.test(character) ? character : codeOf(character),
  );
  const safe = /^[=+\-@\t\r\n]/.test(seen) ? `'${seen}` : seen;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Text for a terminal: no control sequence reaches it, no matter what the log holds. */
export function terminal(text: string): string {
  return visible(text);
}

/** Characters that are not seen or that turn the direction of the text, as their code in angle brackets. */
function visible(text: string): string {
  return text.replace(hidden, (character) => (character === '\t' ? character : codeOf(character)));
}

function codeOf(character: string): string {
  return `‹${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}›`;
}

/** JSON text with the characters that are not seen written by their codes: it says the same, and shows them. */
export function jsonEscaped(json: string): string {
  return json.replace(hidden, (character) =>
    // Of the controls below the blank JSON itself leaves none in a text; what is left are its own line ends.
    character < ' ' ? character : [...unitsOf(character)].join(''),
  );
}

function* unitsOf(character: string): Generator<string> {
  for (let at = 0; at < character.length; at += 1)
    yield `\\u${character.charCodeAt(at).toString(16).padStart(4, '0')}`;
}

/**
 * Controls; format characters, which turn the direction of the text (Unicode bidirectional algorithm), have no width and make
 * two different names look alike, or are tags; and the separators of lines and paragraphs. Source: Unicode Standard, section
 * 4.5, General Category.
 */
const hidden = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu;
