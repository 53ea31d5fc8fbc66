import { readStructuredData } from './structured-data.ts';

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
 * Takes an RFC 5424 line apart; `null` if it is none, or if its structured data is not allowed. `-` stands for nothing. Source:
 * RFC 5424 (2009), section 6.
 */
export function readRfc5424(line: string): SyslogLine | null {
  const header = readHeader(line);
  const found = header === null ? null : readStructuredData(line, header.end);
  if (header === null || found === null || 'wrong' in found) return null;
  const data = line.slice(header.end, found.end);
  const [stamp = null, host = null, application = null, process = null, messageId = null] = header.fields;
  // Field by field: an object that begins as a copy of another takes ten times as long to fill.
  const { priority, facility, severity } = header.priority;
  return {
    priority,
    facility,
    severity,
    stamp,
    host,
    application,
    process,
    messageId,
    structuredData: data === '-' ? null : data,
    message: line.slice(found.end + 1).replace(/^\uFEFF/, ''),
  };
}

/** What of the structured data of an RFC 5424 line is not allowed; `null` where nothing is, or the line is none. */
export function wrongStructuredData(line: string): string | null {
  const header = readHeader(line);
  const found = header === null ? null : readStructuredData(line, header.end);
  return found !== null && 'wrong' in found ? found.wrong : null;
}

/** The priority and the five fields before the structured data, and where that begins. */
function readHeader(line: string): {
  readonly priority: Priority['parts'];
  readonly fields: readonly (string | null)[];
  readonly end: number;
} | null {
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
  return { priority: priority.parts, fields, end: at };
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
  const parts = priority?.parts;
  return {
    priority: parts?.priority ?? null,
    facility: parts?.facility ?? null,
    severity: parts?.severity ?? null,
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
