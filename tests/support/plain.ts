import { eventWith } from '../../src/timeline/event-with.ts';
import { Seen } from '../../src/timeline/seen.ts';
import type { Source, TimelineEvent } from '../../src/vocabulary.ts';

/** A value in which every event and line that is still columns is an object of its own, so that two values can be compared. */
export function plain(value: unknown, known: Map<unknown, unknown> = new Map()): unknown {
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return value;
  const before = known.get(value);
  if (before !== undefined) return before;
  if (isEvent(value)) return kept(value, eventWith(value), known);
  if (isSource(value)) {
    const { file, line, text, count, printed } = value;
    return kept(value, { file, line, text, count, printed }, known);
  }
  if (Array.isArray(value)) {
    const list: unknown[] = [];
    known.set(value, list);
    for (const item of value) list.push(plain(item, known));
    return list;
  }
  if (value instanceof Map) return new Map([...value].map(([key, item]) => [key, plain(item, known)]));
  const fields: Record<string, unknown> = {};
  known.set(value, fields);
  for (const [key, item] of Object.entries(value)) fields[key] = plain(item, known);
  return fields;
}

function kept(value: object, own: object, known: Map<unknown, unknown>): object {
  known.set(value, own);
  return own;
}

function isSource(value: object): value is Source {
  return 'printed' in value && 'text' in value && 'count' in value;
}

function isEvent(value: object): value is TimelineEvent {
  return value instanceof Seen;
}
