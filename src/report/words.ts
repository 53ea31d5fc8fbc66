import { Temporal } from 'temporal-polyfill';
import { type Finding, type Instant, type Measure, sayBounds, sayDuration } from '../vocabulary.ts';

const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** An instant as a clock in a zone shows it: `14 Mar 2026 09:14:05`. The zone is named once per page, not here. */
export function sayInstant(time: number, zone: string): string {
  const t = Temporal.Instant.fromEpochMilliseconds(time).toZonedDateTimeISO(zone);
  return `${t.day} ${months[t.month - 1]} ${t.year} ${two(t.hour)}:${two(t.minute)}:${two(t.second)}`;
}

/** The clock alone: `09:14:05`. */
export function sayClock(time: number, zone: string): string {
  return sayInstant(time, zone).split(' ')[3] ?? '';
}

/**
 * An instant with its bounds: `09:14:10`, or `09:14:00 to 09:14:10`. The day is said unless it is that of `begin`, the
 * instant that the page names first: a swap may run past midnight.
 */
export function sayInstantBounds({ time, earliest }: Instant, zone: string, begin: number): string {
  const day = sayDay(begin, zone);
  const [from, to] = [earliest, time].map((t) =>
    sayDay(t, zone) === day ? sayClock(t, zone) : sayInstant(t, zone),
  );
  return from === to || from === undefined ? `${to}` : `${from} to ${to}`;
}

/** An instant with its bounds and its day: `14 Mar 2026 09:14:00 to 09:14:10`. */
export function sayDatedBounds({ time, earliest }: Instant, zone: string): string {
  const [from, to] = [sayInstant(earliest, zone), sayInstant(time, zone)];
  return from === to ? to : `${from} to ${sayInstantBounds({ time, earliest: time }, zone, earliest)}`;
}

function sayDay(time: number, zone: string): string {
  return sayInstant(time, zone).split(' ').slice(0, 3).join(' ');
}

/** When a finding was so, before its sentence: `14 Mar 2026 09:14:05: `; empty for what concerns a whole file or log. */
export function sayWhen({ id, from, to }: Pick<Finding, 'id' | 'from' | 'to'>, zone: string): string {
  if (from === null || ofWholeLog.has(id)) return '';
  return `${sayDatedBounds({ time: to ?? from, earliest: from }, zone)}: `;
}

/** Findings that sum up all that was read: their sentence says so. */
const ofWholeLog: ReadonlySet<string> = new Set(['exposure', 'coincidence', 'rhythm']);

/** A measure with its bounds; one whose end was not seen as longer than what was watched. */
export function sayMeasure({ seconds, low, high, censored }: Measure): string {
  if (seconds === null || low === null) return 'not observed';
  if (censored) return `longer than ${sayDuration(low)}`;
  return sayBounds(low, high ?? seconds);
}

/** A count with its word: `one row`, `5 rows`. */
export function sayCount(count: number, word: string, plural = `${word}s`): string {
  return count === 1 ? `one ${word}` : `${count} ${plural}`;
}

function two(value: number): string {
  return String(value).padStart(2, '0');
}
