import { InputError } from '../bytes/input-error.ts';
import { readStamp } from './timestamps.ts';
import { zoneOf } from './zones.ts';

/** An instant that a user typed, in milliseconds UTC: ISO 8601, read in `zone` if it names none. Throws InputError. */
export function readTime(option: string, text: string, zone: string): number {
  const stamp = readStamp(text, { order: undefined, year: undefined, day: undefined });
  if (typeof stamp === 'string' || stamp.end !== text.trimEnd().length) {
    throw new InputError(
      option,
      `"${text}" is not a time.`,
      'Give it like 2026-03-14T09:00, or with its offset: 2026-03-14T09:00Z.',
    );
  }
  return stamp.isInstant ? stamp.clock : zoneOf(zone, '--zone').toUtc(stamp.clock, Number.NEGATIVE_INFINITY);
}
