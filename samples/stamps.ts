import { Temporal } from 'temporal-polyfill';

/** How a stamp is printed. */
export interface StampStyle {
  readonly form: 'iso' | 'iso-offset' | 'day-first' | 'month-first' | 'day-first-12' | 'epoch-s' | 'epoch-ms';
  readonly zone: string;
  /** Digits after the second: 0 or 3. */
  readonly decimals: 0 | 3;
}

/** An instant (milliseconds UTC) as a plant's export prints it. */
export function formatStamp(time: number, style: StampStyle): string {
  const fraction = style.decimals === 3 ? `.${pad(((time % 1000) + 1000) % 1000, 3)}` : '';
  if (style.form === 'epoch-ms') return String(time);
  if (style.form === 'epoch-s') return `${Math.floor(time / 1000)}${fraction}`;
  const local = Temporal.Instant.fromEpochMilliseconds(time).toZonedDateTimeISO(style.zone);
  const { year, month, day, hour, minute, second } = local;
  const clock = `${pad(hour, 2)}:${pad(minute, 2)}:${pad(second, 2)}${fraction}`;
  switch (style.form) {
    case 'iso':
      return `${year}-${pad(month, 2)}-${pad(day, 2)} ${clock}`;
    case 'iso-offset':
      return `${year}-${pad(month, 2)}-${pad(day, 2)}T${clock}${local.offset}`;
    case 'day-first':
      return `${pad(day, 2)}/${pad(month, 2)}/${year} ${clock}`;
    case 'month-first':
      return `${pad(month, 2)}/${pad(day, 2)}/${year} ${clock}`;
    case 'day-first-12':
      return `${pad(day, 2)}/${pad(month, 2)}/${year} ${pad(hour % 12 === 0 ? 12 : hour % 12, 2)}:${pad(minute, 2)}:${pad(second, 2)}${fraction} ${hour < 12 ? 'AM' : 'PM'}`;
  }
}

function pad(value: number, width: number): string {
  return String(value).padStart(width, '0');
}
