import type { TimeReader } from '../clock/time-reader.ts';
import { withoutSeverity } from '../phrasebook/severity-words.ts';
import { jsonFields } from './json-fields.ts';
import type { FieldReader, LineParts } from './line-fields.ts';
import { readRfc3164, readRfc5424 } from './syslog.ts';

/** What a rule for the file says of its lines. */
export interface LineRules {
  readonly fields: FieldReader;
  /** Whether a text is a unit where a unit may stand; `null` where one must. */
  readonly isUnit: ((text: string) => boolean) | null;
}

/** One way of writing a line; `null` for a line that is not written so. */
export interface LineFormat {
  readonly id: string;
  readonly title: string;
  /** Its stamp may stand anywhere in a line. */
  readonly hasFields?: true;
  /** Whether a line that it takes speaks for it; where it is not given, every one does. */
  speaks?(parts: LineParts): boolean;
  take(line: string, times: TimeReader, rules: LineRules): LineParts | null;
}

const nothing: ReadonlyMap<string, string> = new Map();

const rfc5424: LineFormat = {
  id: 'rfc5424',
  title: 'RFC 5424',
  take(line) {
    const parts = readRfc5424(line);
    if (parts === null) return null;
    return { stamp: parts.stamp ?? '', unit: parts.host ?? '', message: parts.message, fields: nothing };
  },
};

const rfc3164: LineFormat = {
  id: 'rfc3164',
  title: 'RFC 3164',
  take(line) {
    const parts = readRfc3164(line);
    if (parts === null) return null;
    return { stamp: parts.stamp ?? '', unit: parts.host ?? '', message: parts.message, fields: nothing };
  },
};

const jsonLines: LineFormat = {
  id: 'json',
  title: 'JSON lines',
  hasFields: true,
  take(line, _times, rules) {
    if (!line.startsWith('{')) return null;
    const value = parseJson(line);
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return null;
    return rules.fields.read(jsonFields(value), undefined);
  },
};

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}

const keyValue: LineFormat = {
  id: 'key-value',
  title: 'key=value',
  hasFields: true,
  take(line, times, rules) {
    const leading = times.read(line);
    const from = typeof leading === 'number' ? times.end() : 0;
    const fields = readPairs(line, from);
    if (fields === null) return null;
    return rules.fields.read(fields, typeof leading === 'number' ? leading : undefined);
  },
};

/** `key=value key="a value"` from a place on; `null` if anything else stands there. */
function readPairs(line: string, from: number): ReadonlyMap<string, string> | null {
  const fields = new Map<string, string>();
  const pair = /\s*([A-Za-z_][\w.-]*)=("(?:[^"\\]|\\.)*"|\S*)/y;
  pair.lastIndex = from;
  let end = from;
  for (let found = pair.exec(line); found !== null; found = pair.exec(line)) {
    const [, key = '', value = ''] = found;
    fields.set(key, value.startsWith('"') ? value.slice(1, -1).replace(/\\(.)/g, '$1') : value);
    end = pair.lastIndex;
  }
  return fields.size === 0 || line.slice(end).trim() !== '' ? null : fields;
}

/** A timestamp, a unit (in brackets, or the first word) and a message. */
export const leadingStamp: LineFormat = {
  id: 'leading-stamp',
  title: 'a leading timestamp, a unit and a message',
  // "09:14 pulled the standby" begins with a word, not with a unit: a unit has a figure, a mark or more than one capital.
  speaks: ({ unit }) => /[\d_:/.-]|^\p{Lu}$|.\p{Lu}/u.test(unit),
  take(line, times, { isUnit }) {
    // A severity may stand before the stamp or behind it.
    const stamped = withoutSeverity(line);
    const at = times.read(stamped);
    if (typeof at !== 'number') return null;
    const rest = withoutSeverity(stamped.slice(times.end()).replace(/^[\s,;:|]+/, ''));
    const parts = /^(?:\[([^\]]+)\]|(\S+?)[:,;]?)(?:\s+|$)/.exec(rest.slice(0, 200));
    const unit = parts?.[1] ?? parts?.[2];
    // Where the file says its unit, what follows the stamp is the message, unless it is a unit all the same.
    if (isUnit !== null && (unit === undefined || !isUnit(unit)))
      return { stamp: at, unit: '', message: rest, fields: nothing };
    if (parts === null || unit === undefined) return null;
    return { stamp: at, unit, message: rest.slice(parts[0].length), fields: nothing };
  },
};

/** All formats, the most particular first. */
export const lineFormats: readonly LineFormat[] = [rfc5424, rfc3164, jsonLines, keyValue, leadingStamp];
