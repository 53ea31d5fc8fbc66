import { happenings, stateValues } from '../../vocabulary.ts';
import { parameterSpellings } from '../phrasebook/built-in-phrasebook.ts';
import { folded } from '../phrasebook/plain-parameters.ts';
import { isSeverity, withoutSeverity } from '../phrasebook/severity-words.ts';
import { jsonFields } from './json-fields.ts';
import type { LineFormat } from './line-format.ts';
import { parseJson } from './parse-json.ts';
import { serviceJournal } from './service-journal.ts';
import { readStructuredData } from './structured-data.ts';
import { readRfc3164, readRfc5424, wrongStructuredData } from './syslog.ts';

const nothing: ReadonlyMap<string, string> = new Map();

const rfc5424: LineFormat = {
  id: 'rfc5424',
  title: 'RFC 5424',
  take(line) {
    const parts = readRfc5424(line);
    if (parts === null) {
      const wrong = wrongStructuredData(line);
      return wrong === null ? null : { wrong };
    }
    const { stamp, host, message, structuredData } = parts;
    const data = structuredData === null ? null : readStructuredData(structuredData, 0);
    const fields = data === null || 'wrong' in data ? nothing : data.params;
    // Structured data alone is no message.
    const isSaid = message.trim() !== '' || fields.size === 0;
    const [half, role] = [fields.get('half') ?? '', fields.get('role') ?? ''];
    return { stamp: stamp ?? '', unit: host ?? '', half, role, message: isSaid ? message : null, fields };
  },
};

const rfc3164: LineFormat = {
  id: 'rfc3164',
  title: 'RFC 3164',
  take(line) {
    const parts = readRfc3164(line);
    if (parts === null) return null;
    const message = withoutTag(parts.message);
    return { stamp: parts.stamp ?? '', unit: parts.host ?? '', message, fields: nothing };
  },
};

/** The program that writes, and its process: `redund[812]:`. Source: RFC 3164 (2001), section 4.1.3. */
const tag = /^([\w./-]{1,48})(\[[\w.]+\])?:\s+/;

/** A message without its tag; a signal before a colon is none: `light: steady`. */
function withoutTag(message: string): string {
  const found = tag.exec(message);
  if (found === null) return message;
  const isSignal = found[2] === undefined && signals.has(folded(found[1] ?? ''));
  return isSignal ? message : message.slice(found[0].length);
}

const signals: ReadonlySet<string> = new Set(
  [...Object.keys(stateValues), ...happenings, ...Object.keys(parameterSpellings)].map(folded),
);

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

const keyValue: LineFormat = {
  id: 'key-value',
  title: 'key=value',
  hasFields: true,
  take(line, times, rules) {
    const bare = withoutSeverity(line);
    const leading = times.read(bare);
    const from = typeof leading === 'number' ? times.end() : 0;
    const fields = readPairs(withoutSeverity(bare.slice(from)));
    if (fields === null) return null;
    return rules.fields.read(fields, typeof leading === 'number' ? leading : undefined);
  },
};

const pair = /\s*([A-Za-z_@][\w.@-]*)=("(?:[^"\\]|\\.)*"|\S*)/y;
/** A key without a value says that it is so. Common practice of such logs, no source. */
const flag = /\s+([A-Za-z_][\w.-]*)(?=\s|$)/y;

/** `key=value key="a value" flag`; `null` if anything else stands there, or it begins with no pair. */
function readPairs(text: string): ReadonlyMap<string, string> | null {
  const fields = new Map<string, string>();
  let end = 0;
  for (;;) {
    pair.lastIndex = end;
    const [all = '', key = '', value = ''] = pair.exec(text) ?? [];
    if (all !== '') {
      fields.set(key, value.startsWith('"') ? unquoted(value) : value);
      end += all.length;
      continue;
    }
    flag.lastIndex = end;
    const [word = '', name = ''] = flag.exec(text) ?? [];
    if (word === '' || fields.size === 0) break;
    if (!isSeverity(name)) fields.set(name, 'true');
    end += word.length;
  }
  return fields.size === 0 || text.slice(end).trim() !== '' ? null : fields;
}

function unquoted(value: string): string {
  const plain: Readonly<Record<string, string>> = { n: '\n', t: '\t', r: '\r' };
  return value.slice(1, -1).replace(/\\(.)/g, (_all, escaped: string) => plain[escaped] ?? escaped);
}

/** The formats that say themselves what each part is, the most particular first. */
export const lineFormats: readonly LineFormat[] = [rfc5424, rfc3164, serviceJournal, jsonLines, keyValue];
