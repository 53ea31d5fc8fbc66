/** One syslog line, taken apart. */
export interface SyslogLine {
  readonly priority: number | null;
  readonly facility: number | null;
  readonly severity: number | null;
  /** The stamp as printed; `null` where the line has none. */
  readonly stamp: string | null;
  readonly host: string | null;
  readonly application: string | null;
  readonly process: string | null;
  readonly messageId: string | null;
  readonly structuredData: string | null;
  readonly message: string;
}

/**
 * Takes an RFC 5424 line apart; `null` if it is none. `-` stands for nothing. Source: RFC 5424 (2009), section 6.
 */
export function readRfc5424(line: string): SyslogLine | null {
  const priority = readPriority(line);
  if (priority === null || !line.startsWith('1 ', priority.end)) return null;
  const fields: (string | null)[] = [];
  let at = priority.end + 2;
  for (let index = 0; index < 5; index += 1) {
    const end = line.indexOf(' ', at);
    if (end < 0) return null;
    const field = line.slice(at, end);
    fields.push(field === '-' ? null : field);
    at = end + 1;
  }
  const dataEnd = structuredDataEnd(line, at);
  if (dataEnd === null) return null;
  const data = line.slice(at, dataEnd);
  const [stamp = null, host = null, application = null, process = null, messageId = null] = fields;
  const message = line.slice(dataEnd + 1).replace(/^\uFEFF/, '');
  return {
    ...priority.parts,
    stamp,
    host,
    application,
    process,
    messageId,
    structuredData: data === '-' ? null : data,
    message,
  };
}

/**
 * Takes an RFC 3164 line apart: `<PRI>Mmm dd hh:mm:ss HOST MESSAGE`; the priority may be missing. Devices also print the
 * year, or a day of one digit without its blank (common practice, no source). `null` if it is none. Source: RFC 3164
 * (2001), section 4.1.
 */
export function readRfc3164(line: string): SyslogLine | null {
  const priority = readPriority(line);
  const from = priority?.end ?? 0;
  const stamp = /^[A-Z][a-z]{2} {1,2}\d{1,2} (?:\d{4} )?\d{2}:\d{2}:\d{2} /.exec(
    line.slice(from, from + 22),
  )?.[0];
  if (stamp === undefined) return null;
  const rest = line.slice(from + stamp.length);
  const end = rest.indexOf(' ');
  if (end <= 0) return null;
  return {
    ...(priority?.parts ?? { priority: null, facility: null, severity: null }),
    stamp: stamp.trimEnd(),
    host: rest.slice(0, end).replace(/:$/, ''),
    application: null,
    process: null,
    messageId: null,
    structuredData: null,
    message: rest.slice(end + 1),
  };
}

interface Priority {
  readonly parts: { readonly priority: number; readonly facility: number; readonly severity: number };
  readonly end: number;
}

/** `<PRI>`: facility times 8 plus severity, 0 to 191. Source: RFC 5424, section 6.2.1. */
function readPriority(line: string): Priority | null {
  const found = /^<(0|[1-9]\d{0,2})>/.exec(line.slice(0, 5));
  const priority = Number(found?.[1]);
  if (found === null || priority > 191) return null;
  return {
    parts: { priority, facility: Math.floor(priority / 8), severity: priority % 8 },
    end: found[0].length,
  };
}

/** Where the structured data ends: after `-`, or after the last `]` that no quote and no `\` guards. */
function structuredDataEnd(line: string, from: number): number | null {
  if (line.charAt(from) === '-') return from + 1;
  let at = from;
  while (line.charAt(at) === '[') {
    let quoted = false;
    for (at += 1; at < line.length; at += 1) {
      const character = line.charAt(at);
      if (quoted && character === '\\') at += 1;
      else if (character === '"') quoted = !quoted;
      else if (character === ']' && !quoted) break;
    }
    if (at >= line.length) return null;
    at += 1;
  }
  return at === from ? null : at;
}
