import { Temporal } from 'temporal-polyfill';

/** How a stamp is printed. */
export interface StampStyle {
  /** `no-year` is the stamp of RFC 3164 (section 4.1.2): `Mar  4 09:14:05`. */
  readonly form:
    | 'iso'
    | 'iso-offset'
    | 'day-first'
    | 'month-first'
    | 'day-first-12'
    | 'no-year'
    | 'dotted'
    | 'dotted-clock'
    | 'german'
    | 'french'
    | 'portuguese'
    | 'epoch-s'
    | 'epoch-ms';
  readonly zone: string;
  /** Digits after the second: 0 (cut off, not rounded) or 3. */
  readonly decimals: 0 | 3;
  /** What stands before the decimals; a point unless said. */
  readonly mark?: '.' | ',';
  /** Seconds by which the clock of this export is ahead of the story's. */
  readonly aheadSeconds?: number;
}

// Source: Unicode CLDR, gregorian calendar, wide and abbreviated names of months.
const named = {
  german: 'Januar Februar März April Mai Juni Juli August September Oktober November Dezember'.split(' '),
  french: 'janv. févr. mars avr. mai juin juil. août sept. oct. nov. déc.'.split(' '),
  portuguese:
    'janeiro fevereiro março abril maio junho julho agosto setembro outubro novembro dezembro'.split(' '),
};

const monthNames = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');

/** An instant (milliseconds UTC) as a plant's export prints it. */
export function formatStamp(instant: number, style: StampStyle): string {
  const time = instant + Math.round((style.aheadSeconds ?? 0) * 1000);
  const fraction = style.decimals === 3 ? `${style.mark ?? '.'}${pad(((time % 1000) + 1000) % 1000, 3)}` : '';
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
    case 'dotted':
      return `${pad(day, 2)}.${pad(month, 2)}.${year} ${clock}`;
    case 'dotted-clock':
      return `${pad(day, 2)}.${pad(month, 2)}.${year} ${clock.replace(/:/g, '.')}`;
    case 'german':
      return `${day}. ${named.german[month - 1]} ${year} ${clock}`;
    case 'french':
      return `${day}-${named.french[month - 1]}-${year} ${clock}`;
    case 'portuguese':
      return `${day} de ${named.portuguese[month - 1]} de ${year} ${clock}`;
    case 'no-year':
      return `${monthNames[month - 1]} ${String(day).padStart(2)} ${clock}`;
  }
}

/** A stamp as two cells, date and clock. Throws RangeError for a form that has no date apart from its clock. */
export function splitStamp(instant: number, style: StampStyle): readonly [string, string] {
  const stamp = formatStamp(instant, style);
  const found = /^(\S+)[ T](\d\d:.*)$/.exec(stamp);
  if (found === null) throw new RangeError(`"${stamp}" does not divide into a date and a clock.`);
  const [, date = '', clock = ''] = found;
  return [date, clock];
}

function pad(value: number, width: number): string {
  return String(value).padStart(width, '0');
}
