import type { TimeReader } from '../clock/time-reader.ts';
import type { Pattern } from '../phrasebook/patterns.ts';
import { withoutSeverity } from '../phrasebook/severity-words.ts';
import { readRfc3164, readRfc5424 } from './syslog.ts';

/** A line taken apart: a message, or fields by name. `stamp` is a text, or an instant that was read already. */
export interface LineParts {
  readonly stamp: string | number;
  readonly unit: string;
  readonly message: string | null;
  readonly fields: ReadonlyMap<string, string>;
}

/** One way of writing a line; `null` for a line that is not written so. */
export interface LineFormat {
  readonly id: string;
  readonly title: string;
  /** Whether a line that it takes speaks for it; where it is not given, every one does. */
  speaks?(parts: LineParts): boolean;
  take(line: string, times: TimeReader): LineParts | null;
}

const nothing: ReadonlyMap<string, string> = new Map();

/** The fields of a line that say when, where and what, by the names that they have in JSON and key=value. */
export const fieldNames = {
  time: ['time', 'timestamp', 'ts', 'when'],
  unit: ['unit', 'node', 'module', 'device', 'source', 'pair'],
  half: ['half'],
  role: ['role'],
  message: ['message', 'msg', 'text', 'event'],
  severity: ['severity', 'level'],
  class: ['class'],
};

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
  take(line) {
    if (!line.startsWith('{')) return null;
    const value = parseJson(line);
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return null;
    const fields = new Map<string, string>();
    for (const [key, field] of Object.entries(value)) {
      if (field !== null && typeof field !== 'object') fields.set(key, String(field));
    }
    return fromFields(fields, undefined);
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
  take(line, times) {
    const leading = times.read(line);
    const from = typeof leading === 'number' ? times.end() : 0;
    const fields = readPairs(line, from);
    return fields === null ? null : fromFields(fields, typeof leading === 'number' ? leading : undefined);
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

function fromFields(fields: ReadonlyMap<string, string>, leading: number | undefined): LineParts | null {
  const pick = (keys: readonly string[]): string | undefined => {
    const found = keys.find((key) => fields.has(key));
    return found === undefined ? undefined : fields.get(found);
  };
  const stamp = leading ?? pick(fieldNames.time);
  const unit = pick(fieldNames.unit);
  if (stamp === undefined || unit === undefined) return null;
  const message = pick(fieldNames.message) ?? null;
  return { stamp, unit, message, fields };
}

/** A timestamp, a unit (in brackets, or the first word) and a message. */
export const leadingStamp: LineFormat = {
  id: 'leading-stamp',
  title: 'a leading timestamp, a unit and a message',
  // "09:14 pulled the standby" begins with a word, not with a unit: a unit has a figure, a mark or more than one capital.
  speaks: ({ unit }) => /[\d_:/.-]|^\p{Lu}$|.\p{Lu}/u.test(unit),
  take(line, times) {
    // A severity may stand before the stamp or behind it.
    const stamped = withoutSeverity(line);
    const at = times.read(stamped);
    if (typeof at !== 'number') return null;
    const rest = withoutSeverity(stamped.slice(times.end()).replace(/^[\s,;:|]+/, ''));
    const parts = /^(?:\[([^\]]+)\]|(\S+?)[:,;]?)(?:\s+|$)/.exec(rest.slice(0, 200));
    const unit = parts?.[1] ?? parts?.[2];
    if (parts === null || unit === undefined) return null;
    return { stamp: at, unit, message: rest.slice(parts[0].length), fields: nothing };
  },
};

/** All formats, the most particular first. */
export const lineFormats: readonly LineFormat[] = [rfc5424, rfc3164, jsonLines, keyValue, leadingStamp];

/** The format that a phrasebook's own pattern describes. */
export function ownFormat(pattern: Pattern): LineFormat {
  return {
    id: 'own',
    title: "the phrasebook's line pattern",
    take(line) {
      const groups = pattern.match(line);
      if (groups === null) return null;
      return {
        stamp: groups.time ?? '',
        unit: groups.unit ?? groups.pair ?? '',
        message: groups.message ?? '',
        fields: nothing,
      };
    },
  };
}
