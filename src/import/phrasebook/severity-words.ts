/** How logs spell the severity of a line. Source: RFC 5424 (2009), table 2; the rest is common practice, no source. */
const words =
  'EMERG(?:ENCY)?|PANIC|ALERT|CRIT(?:ICAL)?|FATAL|SEVERE|ERR(?:OR)?|WARN(?:ING)?|NOTICE|INFO(?:RMATION(?:AL)?)?|DEBUG|TRACE|VERBOSE';

const severity = new RegExp(`^(?:${words})$`, 'i');
const leading = new RegExp(
  `^\\s*(?:[[(<]\\s*(?:${words})\\s*[\\])>]|(?:${words})(?=[\\s:,;|]))\\s*[:,;|]?\\s*`,
  'i',
);

/** Whether a word is one of severity: no pair has such a name. */
export function isSeverity(word: string): boolean {
  return severity.test(word);
}

/** A text without the word of severity that it begins with. */
export function withoutSeverity(text: string): string {
  return text.replace(leading, '');
}
