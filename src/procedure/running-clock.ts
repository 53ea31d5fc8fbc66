/**
 * The log's own clock between its rows: what the newest stamp says, and on by the time that has passed here since its row arrived.
 * It stops, and the log is silent, once that is longer than its habit; without a habit it never is. All instants are
 * milliseconds, `arrivedAt` and `thisMoment` by one clock here. A clock here that is set back takes nothing off.
 */
export function runningClock(
  { at, habitSeconds }: { readonly at: number; readonly habitSeconds: number | null },
  arrivedAt: number,
  thisMoment: number,
): { readonly at: number; readonly isSilent: boolean } {
  const passed = Math.max(0, thisMoment - arrivedAt);
  const habit = habitSeconds === null ? Number.POSITIVE_INFINITY : habitSeconds * 1000;
  return { at: at + Math.min(passed, habit), isSilent: passed > habit };
}
