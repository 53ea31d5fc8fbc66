import type { DatePattern } from './date-pattern.ts';
import { type Doubt, repeatedHourWatch } from './repeated-hour.ts';
import type { DateOrder, StampFailure, StampOptions } from './stamp.ts';
import { readStamp } from './timestamps.ts';
import type { Zone } from './zones.ts';

/** Reads the stamps of one file in the order of its rows. */
export interface TimeReader {
  readonly order: DateOrder | undefined;
  /** Milliseconds UTC, or why the text is no time. `end` tells where the stamp ended. */
  read(text: string): number | StampFailure;
  end(): number;
  /** True once a stamp with decimals was read. */
  hasDecimals(): boolean;
  /** How many stamps stood in a repeated or in a missing hour. */
  folds(): { readonly repeated: number; readonly missing: number };
  /** The stamps in repeated hours that the order of the rows leaves open. */
  doubts(): readonly Doubt[];
  /** True if a stamp was read that said neither zone nor offset. */
  usedZone(): boolean;
  setDay(day: number): void;
}

/**
 * A reader of stamps in a zone. A year that is not printed goes on over New Year. A stated pattern comes first; what it
 * does not fit is read as any other stamp.
 */
export function timeReader(
  zone: Zone,
  order: DateOrder | undefined,
  year: number | undefined,
  pattern?: DatePattern,
): TimeReader {
  let last = Number.NEGATIVE_INFINITY;
  let ended = 0;
  let decimals = false;
  let zoned = false;
  const watch = repeatedHourWatch();
  let options: StampOptions = { order, year, day: undefined };
  const saysYear = (text: string, end: number, isOwn: boolean): boolean =>
    isOwn ? pattern?.hasYear === true : /\d{4}/.test(text.slice(0, end));
  return {
    order,
    read(text) {
      const own = pattern?.read(text, options) ?? 'no-date';
      const isOwn = own !== 'no-date';
      let stamp = isOwn ? own : readStamp(text, options);
      if (typeof stamp === 'string') return stamp;
      if (
        options.year !== undefined &&
        last - stamp.clock > halfYearMs &&
        !saysYear(text, stamp.end, isOwn)
      ) {
        options = { ...options, year: options.year + 1 };
        stamp = isOwn && pattern !== undefined ? pattern.read(text, options) : readStamp(text, options);
        if (typeof stamp === 'string') return stamp;
      }
      ended = stamp.end;
      decimals = decimals || stamp.hasDecimals;
      if (stamp.isInstant) {
        last = stamp.clock;
        return stamp.clock;
      }
      zoned = true;
      const time = zone.toUtc(stamp.clock, last);
      watch.take(time, zone);
      last = time;
      return time;
    },
    end: () => ended,
    hasDecimals: () => decimals,
    folds: watch.folds,
    doubts: watch.doubts,
    usedZone: () => zoned,
    setDay(day) {
      options = { ...options, day };
    },
  };
}

const halfYearMs = 183 * 86_400_000;

const explanations: Readonly<Record<StampFailure, string>> = {
  'no-date': 'is not a date',
  'out-of-range': 'is not a date that exists',
  order: 'may be day-first or month-first',
  year: 'has no year',
  day: 'has no date',
};

const remedies: Readonly<Record<StampFailure, string>> = {
  'no-date': 'Correct the row, or name the time column in the phrasebook.',
  'out-of-range': 'Correct the row, or set time.order in the phrasebook.',
  order: 'Choose with --order day-first or --order month-first, or set time.order in the phrasebook.',
  year: 'Give the year of the first row with --year, or set time.year in the phrasebook.',
  day: 'Put a line with the date before it.',
};

/** Why a text is no time, and what to do about it, for a message to the user. */
export function explain(
  text: string,
  failure: StampFailure,
): { readonly what: string; readonly fix: string } {
  return { what: `"${text.slice(0, 60)}" ${explanations[failure]}.`, fix: remedies[failure] };
}
