import { isBlank, lettersEnd, pastBlanks } from './calendar-words.ts';
import { digitsFrom, endsWord } from './digits.ts';
import type { Stamp, StampFailure, StampOptions } from './stamp.ts';
import { zoneSaid } from './stamp-zones.ts';
import { isZone } from './zones.ts';

const colon = 58;
const plus = 43;
const minus = 45;

/** A clock with the offset or zone behind it, and `h`, `hrs` or `Uhr` before it. */
export function withZone(
  text: string,
  from: number,
  clock: number,
  hasDecimals: boolean,
  options: StampOptions,
): Stamp | StampFailure {
  if (from >= text.length) return { clock, isInstant: false, hasDecimals, end: from };
  // Most stamps that name a zone end so.
  if (text.charCodeAt(from) === 90 && endsWord(text, from + 1))
    return { clock, isInstant: true, hasDecimals, end: from + 1 };
  const end = pastHourWord(text, from);
  const at = isBlank(text.charCodeAt(end)) ? pastBlanks(text, end) : end;
  const sign = text.charCodeAt(at);
  // "10:00:00 ZEBRA-A" names a unit, not UTC.
  if ((sign === 90 || sign === 122) && endsWord(text, at + 1))
    return { clock, isInstant: true, hasDecimals, end: at + 1 };
  if (sign === plus || sign === minus) return withOffset(text, at, end, clock, hasDecimals);
  return withName(text, at, end, clock, hasDecimals, options);
}

/** `09:14 Uhr`, `09:14 hrs`, `09:14h`; a capital is a unit. */
function pastHourWord(text: string, from: number): number {
  const at = pastBlanks(text, from);
  const end = lettersEnd(text, at);
  const word = end > at && end - at <= 3 ? text.slice(at, end) : '';
  return word === 'h' || word === 'hrs' || word === 'Uhr' || word === 'uhr' ? end : from;
}

function withOffset(
  text: string,
  at: number,
  end: number,
  clock: number,
  hasDecimals: boolean,
): Stamp | StampFailure {
  const hours = digitsFrom(text, at + 1);
  const isParted = text.charCodeAt(hours.end) === colon;
  const minutes = isParted ? digitsFrom(text, hours.end + 1) : undefined;
  // Two digits alone are an offset only where no blank parts them from the clock.
  const isShort = hours.count === 2 && !isParted && at === end && endsWord(text, hours.end);
  if (!(isParted && hours.count === 2 && minutes?.count === 2) && hours.count !== 4 && !isShort)
    return { clock, isInstant: false, hasDecimals, end };
  const h = isParted || isShort ? hours.value : Math.floor(hours.value / 100);
  const m = isShort ? 0 : (minutes?.value ?? hours.value % 100);
  if (h > 23 || m > 59) return 'out-of-range';
  const ahead = (h * 60 + m) * 60_000;
  const after = minutes?.end ?? hours.end;
  // The name behind an offset says no more: `+01:00[Europe/Lisbon]`, `+0100 (WEST)`.
  const next = text.charCodeAt(after) === 32 ? after + 1 : after;
  const named =
    text.charCodeAt(next) === 91 || text.charCodeAt(next) === 40 ? zoneSaid(text, next, isZone) : null;
  return {
    clock: text.charCodeAt(at) === plus ? clock - ahead : clock + ahead,
    isInstant: true,
    hasDecimals,
    end: named === null || named.kind === 'several' ? after : named.end,
  };
}

function withName(
  text: string,
  at: number,
  end: number,
  clock: number,
  hasDecimals: boolean,
  { zoneNamed }: StampOptions,
): Stamp | StampFailure {
  const said = zoneSaid(text, at, (name) =>
    zoneNamed === undefined ? isZone(name) : zoneNamed(name) !== null,
  );
  if (said === null) return { clock, isInstant: false, hasDecimals, end };
  switch (said.kind) {
    case 'several':
      return 'zone';
    case 'offset':
      return { clock: clock - said.minutes * 60_000, isInstant: true, hasDecimals, end: said.end };
    case 'name':
      return { clock, isInstant: false, hasDecimals, end: said.end, zone: said.name };
  }
}
