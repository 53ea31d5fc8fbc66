/** How logs spell the severity of a line. Source: RFC 5424 (2009), table 2; the rest is common practice, no source. */
const words =
  'EMERG(?:ENCY)?|PANIC|ALERT|CRIT(?:ICAL)?|FATAL|SEVERE|ERR(?:OR)?|WARN(?:ING)?|NOTICE|INFO(?:RMATION(?:AL)?)?|DEBUG|TRACE|VERBOSE|FINE(?:R|ST)?';
/** A letter stands for one of them only where brackets or a column make that clear. Common practice, no source. */
const letters = '[EWINDCFTV]';

const severity = new RegExp(`^(?:${words})$`, 'i');
const letter = new RegExp(`^${letters}$`);
const leading = new RegExp(
  `^\\s*(?:[[(<]\\s*(?:${words})\\s*[\\])>]|(?:${words})(?=[\\s:,;|]))\\s*[:,;|]?\\s*`,
  'i',
);
const leadingLetter = new RegExp(`^\\s*[[(<]\\s*${letters}\\s*[\\])>]\\s*[:,;|]?\\s*`);

/** Whether a word is one of severity: no pair has such a name. */
export function isSeverity(word: string): boolean {
  return severity.test(word);
}

/** Whether a text is a single letter such as logs put for a severity. */
export function isSeverityLetter(text: string): boolean {
  return letter.test(text);
}

/** A text without the word of severity that it begins with. Most lines begin with none: their first letter says so. */
export function withoutSeverity(text: string): string {
  const rest = mayBegin(text, initials) ? text.replace(leading, '') : text;
  return mayBegin(rest, brackets) ? rest.replace(leadingLetter, '') : rest;
}

const brackets = '[(<';
const initials = `${brackets}EPACFSWNIDTVepacfswnidtv`;

/** Whether the first mark of a text is one of those; true too where it may be a blank that is rare. */
function mayBegin(text: string, marks: string): boolean {
  let at = 0;
  while (text.charCodeAt(at) <= 32) at += 1;
  return text.charCodeAt(at) > 127 || marks.includes(text.charAt(at));
}
