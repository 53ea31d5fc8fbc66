import { Temporal } from 'temporal-polyfill';

const dayMs = 86_400_000;

/** The clock of a zone at an instant as a share of a day of 24 hours, 0 to below 1; daylight saving is followed. For few instants, not for rows. */
export function dayShare(time: number, zone: string): number {
  const local = Temporal.Instant.fromEpochMilliseconds(time).toZonedDateTimeISO(zone).toPlainTime();
  const { hour, minute, second, millisecond } = local;
  return (((hour * 60 + minute) * 60 + second) * 1000 + millisecond) / dayMs;
}
