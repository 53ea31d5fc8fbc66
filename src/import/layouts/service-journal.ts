import type { LineFormat } from './line-format.ts';
import { parseJson } from './parse-json.ts';

/**
 * Fields that say who wrote an entry and how it came, besides those that begin with `_`: none is a parameter of a pair. The
 * format's own list; its page is named in the test.
 */
const ofTransport =
  /^(?:_|SYSLOG_|CODE_|OBJECT_|COREDUMP_|JOB_|INVOCATION_ID$|USER_INVOCATION_ID$|USER_UNIT$|UNIT$)/;
const others: ReadonlySet<string> = new Set([
  'PRIORITY',
  'MESSAGE',
  'MESSAGE_ID',
  'ERRNO',
  'TID',
  'DOCUMENTATION',
  'SEAT_ID',
  'SESSION_ID',
  'USER_ID',
  'LEADER',
  'AVAILABLE',
  'N_RESTARTS',
]);
const time = '__REALTIME_TIMESTAMP';

/**
 * JSON lines as a service manager's journal exports them: microseconds since 1970 as a text, a host, a message, which is an
 * array of bytes where it is no plain text.
 */
export const serviceJournal: LineFormat = {
  id: 'service-journal',
  title: "JSON lines of a service manager's journal",
  hasFields: true,
  take(line, _times, { fields: reader, hasStampPattern }) {
    if (!line.startsWith('{') || !line.includes(time)) return null;
    const value = parseJson(line);
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return null;
    const found = new Map<string, unknown>(Object.entries(value));
    const micros = String(found.get(time) ?? '');
    if (!/^\d{14,17}$/.test(micros)) return null;
    const stamp = hasStampPattern ? micros : micros.slice(0, -3);
    const fields = new Map<string, string>();
    for (const [key, field] of found)
      if (!ofTransport.test(key) && !others.has(key)) fields.set(key, textOf(field) ?? '');
    const unit = textOf(found.get('_HOSTNAME')) ?? '';
    const plain = { stamp, unit, message: textOf(found.get('MESSAGE')), fields };
    if (!reader.isOwn) return plain;
    const all = new Map([...found].map(([key, field]) => [key, textOf(field) ?? '']));
    const own = reader.read(all.set(time, stamp), undefined);
    if (own === null) return plain;
    const address = own.unit === '' && own.pair === undefined ? { unit } : {};
    return { ...own, ...address, message: own.message ?? plain.message, fields };
  },
};

/** A field as text: bytes are UTF-8; of several values the first; `null` for one that was left out for its size. */
function textOf(field: unknown): string | null {
  if (field === null || field === undefined) return null;
  if (!Array.isArray(field)) return typeof field === 'object' ? null : String(field);
  const bytes = field.filter((byte): byte is number => isByte(byte));
  if (bytes.length === field.length) return new TextDecoder().decode(Uint8Array.from(bytes));
  return textOf(field[0]);
}

function isByte(value: unknown): boolean {
  return typeof value === 'number' && Number.isInteger(value) && value >= 0 && value <= 255;
}
