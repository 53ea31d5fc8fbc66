import type { Interval } from '../src/vocabulary.ts';

/** The least that the staff shows. */
export const nearestMs = 10_000;
const mostPerTurn = 2.5;
/** What one notch of a wheel zooms by. */
const perNotch = 1.6;
const notchPixels = 100;
const linePixels = 33;
/** Fingers on a touch pad that move apart turn the wheel by little. */
const pinchPixels = 12;

/** The window zoomed by a factor, below 1 to see more closely, about a place that stays where it is: a share of the width. */
export function zoomed(shown: Interval, by: number, at: number, whole: Interval): Interval {
  const length = shown.to - shown.from;
  const next = Math.min(whole.to - whole.from, Math.max(nearestMs, length * by));
  return within(shown.from + (length - next) * at, next, whole);
}

/** The window moved by a share of its width, and no further than to the ends of the log. */
export function panned(shown: Interval, by: number, whole: Interval): Interval {
  const length = shown.to - shown.from;
  return within(shown.from + length * by, length, whole);
}

/** The window moved by no more than is needed to show an instant. */
export function broughtInto(shown: Interval, time: number, whole: Interval): Interval {
  if (time >= shown.from && time <= shown.to) return shown;
  const length = shown.to - shown.from;
  return within(time < shown.from ? time : time - length, length, whole);
}

/** A span that a person marked, as a window: in order, inside the log and no less than the least. */
export function windowOf(a: number, b: number, whole: Interval): Interval {
  const [from, to] = [Math.min(a, b), Math.max(a, b)];
  const length = Math.min(whole.to - whole.from, Math.max(nearestMs, to - from));
  return within((from + to - length) / 2, length, whole);
}

export function isSame(a: Interval, b: Interval): boolean {
  return a.from === b.from && a.to === b.to;
}

/** What a turn of the wheel zooms by. */
export function wheelFactor(event: Pick<WheelEvent, 'deltaY' | 'deltaX' | 'deltaMode' | 'ctrlKey'>): number {
  // A wheel turned with Shift moves sideways.
  const delta = event.deltaY === 0 ? event.deltaX : event.deltaY;
  const pixels = event.deltaMode === 0 ? delta : delta * linePixels;
  const isPinch = event.ctrlKey && event.deltaMode === 0 && Math.abs(pixels) < notchPixels / 2;
  const factor = perNotch ** (pixels / (isPinch ? pinchPixels : notchPixels));
  return Math.min(mostPerTurn, Math.max(1 / mostPerTurn, factor));
}

/** An instant is a whole number of milliseconds; a place on the staff need not be. */
function within(from: number, length: number, whole: Interval): Interval {
  const most = Math.max(whole.from, whole.to - length);
  const begin = Math.floor(Math.min(most, Math.max(whole.from, from)));
  return { from: begin, to: Math.min(whole.to, Math.ceil(begin + length)) };
}
