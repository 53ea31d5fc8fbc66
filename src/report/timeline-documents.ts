import type { Input, PairTimeline, TimelineEvent } from '../vocabulary.ts';
import { csvCell } from './escape.ts';
import { iso, toJson } from './json.ts';

/** The JSON document of `timeline`. Source: design.md, section 8. */
export function timelineJson(inputs: readonly Input[], timelines: readonly PairTimeline[]): string {
  return toJson({
    schema: 'steadypair/timeline/1',
    inputs,
    events: timelines.flatMap((t) => t.events.map(eventDocument)),
  });
}

/** One JSON object a line, an event each. */
export function timelineJsonLines(timelines: readonly PairTimeline[]): string {
  const line = (event: TimelineEvent): string =>
    JSON.stringify({ ...eventDocument(event), time: iso(event.time), earliest: iso(event.earliest) });
  return timelines.flatMap((t) => t.events.map((e) => `${line(e)}\n`)).join('');
}

/** One event a row, RFC 4180; sources as `file:line` parted by spaces. Safe to open in a spreadsheet. */
export function timelineCsv(timelines: readonly PairTimeline[]): string {
  const header = ['time', 'earliest', 'pair', 'half', 'signal', 'value', 'before', 'sources'];
  const rows = timelines.flatMap((t) =>
    t.events.map((e) => [
      iso(e.time),
      iso(e.earliest),
      e.pair,
      e.half,
      e.signal,
      e.value,
      e.before,
      e.sources.map((s) => `${s.file}:${s.line}`).join(' '),
    ]),
  );
  return [header, ...rows].map((row) => `${row.map(csvCell).join(',')}\r\n`).join('');
}

function eventDocument({ time, earliest, pair, half, signal, value, before, sources }: TimelineEvent): {
  readonly time: number;
  readonly earliest: number;
} & Record<string, unknown> {
  return { time, earliest, pair, half, signal, value, before, sources };
}
