import type { Message } from './exports.ts';
import { halfReadings, halves, type PollStyle, pairReadings, pollsOf } from './polls.ts';
import { formatStamp, type StampStyle } from './stamps.ts';
import type { Story } from './story.ts';

/** Facility 16 (local use 0) and severity 5 (notice): 16 * 8 + 5. Source: RFC 5424 (2009), section 6.2.1. */
const priority = 133;

type Field = readonly [string, string];

/** RFC 5424 lines, the unit as HOSTNAME. Throws RangeError for a unit with a space. Source: RFC 5424 (2009), section 6. */
export function rfc5424Log(messages: readonly Message[], zone: string, aheadSeconds = 0): string {
  const stamp: StampStyle = { form: 'iso-offset', zone, decimals: 3, aheadSeconds };
  return joined(
    messages.map((m) => `<${priority}>1 ${formatStamp(m.time, stamp)} ${host(m.unit)} pair - - - ${m.text}`),
  );
}

/** RFC 3164 lines, the unit as HOSTNAME: no year, whole seconds. Throws RangeError for a unit with a space. */
export function rfc3164Log(messages: readonly Message[], zone: string, aheadSeconds = 0): string {
  const stamp: StampStyle = { form: 'no-year', zone, decimals: 0, aheadSeconds };
  return joined(messages.map((m) => `<${priority}>${formatStamp(m.time, stamp)} ${host(m.unit)} ${m.text}`));
}

function host(unit: string): string {
  if (/\s/.test(unit)) throw new RangeError(`"${unit}" is no host name: it holds a space.`);
  return unit;
}

/** Entries as `time=... unit=... message="..."`. */
export function keyValueLog(messages: readonly Message[], stamp: StampStyle): string {
  return joined(entries(messages, stamp).map(keyValueLine));
}

/** Entries as one JSON object per line, with the keys `time`, `unit`, `message`. */
export function jsonLog(messages: readonly Message[], stamp: StampStyle): string {
  return joined(entries(messages, stamp).map(jsonLine));
}

/** Polls as key=value lines, one per poll and half; a blank is left out. Names must be plain words, as keys are. */
export function keyValueSnapshots(stories: Story | readonly Story[], style: PollStyle): string {
  return joined(snapshots(stories, style).map((fields) => keyValueLine(fields.filter(([, v]) => v !== ''))));
}

/** Polls as one JSON object per line, one per poll and half, every value a text. */
export function jsonSnapshots(stories: Story | readonly Story[], style: PollStyle): string {
  return joined(snapshots(stories, style).map(jsonLine));
}

function entries(messages: readonly Message[], stamp: StampStyle): readonly (readonly Field[])[] {
  return messages.map((m) => [
    ['time', formatStamp(m.time, stamp)],
    ['unit', m.unit],
    ['message', m.text],
  ]);
}

function snapshots(stories: Story | readonly Story[], style: PollStyle): readonly (readonly Field[])[] {
  return pollsOf(stories, style).flatMap((poll) =>
    halves.map((half): readonly Field[] => [
      ['time', formatStamp(poll.time, style.stamp)],
      ['unit', style.wording.unit(poll.pair, half)],
      ...pairReadings(poll, style),
      ...halfReadings(poll, half, style),
    ]),
  );
}

function keyValueLine(fields: readonly Field[]): string {
  return fields
    .map(([key, value]) => `${key}=${/^[^\s"\\]+$/.test(value) ? value : quoted(value)}`)
    .join(' ');
}

function quoted(value: string): string {
  return `"${value.replace(/["\\]/g, '\\$&')}"`;
}

function jsonLine(fields: readonly Field[]): string {
  return JSON.stringify(Object.fromEntries(fields));
}

const noted: Readonly<Record<string, (half: string) => string>> = {
  removed: (half) => `pulled standby from slot ${half}`,
  inserted: (half) => `fitted new module in slot ${half}`,
  'reflash-start': (half) => `reflash started in slot ${half}`,
  'reflash-end': (half) => `reflash finished in slot ${half}`,
  'switchover-command': () => 'switched over',
};

/** What a technician would write down of a story: a heading, each date, and a line with the minute of each act. */
export function fieldNotes(story: Story, zone: string): string {
  const rows = [`Pair ${story.pair}`];
  let written = '';
  for (const { time, half, signal } of story.events) {
    const words = noted[signal]?.(half ?? '');
    if (words === undefined) continue;
    const [date = '', clock = ''] = formatStamp(time, { form: 'iso', zone, decimals: 0 }).split(' ');
    if (date !== written) rows.push(date);
    written = date;
    rows.push(`${clock.slice(0, 5)} ${words}`);
  }
  return joined(rows);
}

function joined(rows: readonly string[]): string {
  return `${rows.join('\n')}\n`;
}
