import { type SwapNow, sayDuration } from '../vocabulary.ts';
import { cut, inLine, type LinePart } from './panel-fit.ts';
import { sayClock, sayInstant } from './words.ts';

/** Where the log's own clock stands as the panel is drawn. */
export interface PanelClock {
  readonly at: number;
  /** The log is silent for longer than its habit: the clock stands still. */
  readonly isSilent: boolean;
  /** How far the newest stamp was behind this computer's clock when its row arrived, in seconds; negative where it was ahead. */
  readonly behindSeconds: number;
}

/** Less than this says nothing of a clock: rows arrive late. Chosen here. */
const leastApartSeconds = 120;
/** Another day's log: its date says so, and a distance would be of no use at the cabinet. */
const daySeconds = 86_400;
const longestName = 20;

/** A time that was waited, as a clock counts it: `02:37`, from an hour `1:02:37`. */
export function clockText(seconds: number): string {
  const whole = Math.max(0, Math.floor(seconds));
  const [hours, minutes] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60];
  const rest = `${two(minutes)}:${two(whole % 60)}`;
  return hours === 0 ? rest : `${hours}:${rest}`;
}

/**
 * How long has been waited by the log's clock: `02:37 of 15:00`, or `02:37` where there is no limit; a time that has to pass stops
 * at its end. `null` where nothing is waited for.
 */
export function waitText({ awaits, since, limitSeconds }: SwapNow, { at }: PanelClock): string | null {
  if (awaits === null || since === null) return null;
  const seconds = (at - since.time) / 1000;
  if (limitSeconds === null) return clockText(seconds);
  const counted = isPassing(awaits) ? Math.min(seconds, limitSeconds) : seconds;
  return `${clockText(counted)} of ${clockText(limitSeconds)}`;
}

/** Whether what is waited for is longer due than its limit by the log's clock. */
export function isPastLimit({ awaits, since, limitSeconds }: SwapNow, at: number): boolean {
  if (awaits === null || since === null || limitSeconds === null || isPassing(awaits)) return false;
  return (at - since.time) / 1000 > limitSeconds;
}

/** Whether a time that has to pass is waited for: its end is what is wanted. */
function isPassing(awaits: SwapNow['awaits']): boolean {
  return awaits === 'soak';
}

/** Whose clock runs, where it stands, and what is odd about it. */
export function clockLine(now: SwapNow, clock: PanelClock, zone: string): LinePart {
  const name = cut(inLine(now.clock.split(/[\\/]/).at(-1) ?? now.clock), longestName);
  const apart = Math.abs(clock.behindSeconds);
  const said = apart < daySeconds ? sayClock(clock.at, zone) : sayInstant(clock.at, zone);
  const habit = now.habitSeconds ?? 0;
  if (clock.isSilent) {
    const text = `No row for over ${sayDuration(habit)}: clock of ${name} stopped at ${said}`;
    return { text, as: 'warning' };
  }
  const where = `(${zone})`;
  if (apart <= Math.max(leastApartSeconds, 2 * habit) || apart >= daySeconds)
    return { text: `Clock of ${name}: ${said} ${where}` };
  const side = clock.behindSeconds > 0 ? 'behind' : 'ahead of';
  const text = `Clock of ${name}: ${said}, ${sayDuration(apart)} ${side} this computer ${where}`;
  return { text, as: 'warning' };
}

function two(value: number): string {
  return String(value).padStart(2, '0');
}
