const entities: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** Text for HTML, in content or in a quoted attribute; control characters are made visible. */
export function html(text: string): string {
  return visible(text).replace(/[&<>"']/g, (character) => entities[character] ?? character);
}

/** Text for one cell or line of Markdown: no markup, no link, no HTML comes of it. */
export function markdown(text: string): string {
  return visible(text)
    .replace(/[\\`*_{}[\]()#+!|~]/g, '\\$&')
    .replace(/[&<>]/g, (character) => entities[character] ?? character)
    .replace(/^([-=]|\d+\.)/, '\\$1')
    .replace(/:\/\//g, ':&#47;&#47;');
}

/** One CSV cell (RFC 4180) that no spreadsheet takes for a formula: a quote is put before `= + - @`, tab and CR. */
export function csvCell(value: string | number | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return String(value);
  const safe = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Text for a terminal: no control sequence reaches it, whatever the log holds. */
export function terminal(text: string): string {
  return visible(text);
}

/** Control characters, and those that turn the direction of the text, as their code in angle brackets. */
function visible(text: string): string {
  return text.replace(/[\u0000-\u0008\u000A-\u001F\u007F-\u009F\u200E\u200F\u202A-\u202E\u2066-\u2069]/g, (character) =>
    `‹${character.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}›`,
  );
}
