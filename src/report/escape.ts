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

/** One CSV cell (RFC 4180) that no spreadsheet takes for a formula: a quote is put before `= + - @`, tab and line ends. */
export function csvCell(value: string | number | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return String(value);
  const safe = /^[=+\-@\t\r\n]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Text for a terminal: no control sequence reaches it, whatever the log holds. */
export function terminal(text: string): string {
  return visible(text);
}

/** Characters that are not seen or that turn the direction of the text, as their code in angle brackets. */
function visible(text: string): string {
  let shown = '';
  for (const character of text) {
    const code = character.codePointAt(0) ?? 0;
    shown += isHidden(code) ? `‹${code.toString(16).toUpperCase().padStart(4, '0')}›` : character;
  }
  return shown;
}

/**
 * C0 and C1 controls but the tab; the marks, embeddings and isolates of the Unicode bidirectional algorithm; and characters
 * without a width, which make two different names look alike.
 */
function isHidden(code: number): boolean {
  const isControl = (code < 32 && code !== 9) || (code >= 127 && code < 160);
  const turns =
    code === 0x061c ||
    code === 0x200e ||
    code === 0x200f ||
    code === 0x2028 ||
    code === 0x2029 ||
    (code >= 0x202a && code <= 0x202e) ||
    (code >= 0x2066 && code <= 0x2069);
  const hasNoWidth =
    code === 0x00ad ||
    code === 0x180e ||
    (code >= 0x200b && code <= 0x200d) ||
    (code >= 0x2060 && code <= 0x2064) ||
    code === 0xfeff;
  return isControl || turns || hasNoWidth;
}
