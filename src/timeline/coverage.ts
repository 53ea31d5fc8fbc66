import type { Interval } from '../vocabulary.ts';

/** Joins intervals that touch or overlap; gives them in the order of time. */
export function unite(intervals: readonly Interval[]): readonly Interval[] {
  const united: { from: number; to: number }[] = [];
  for (const { from, to } of [...intervals].sort((a, b) => a.from - b.from || a.to - b.to)) {
    const last = united.at(-1);
    if (last !== undefined && from <= last.to) last.to = Math.max(last.to, to);
    else united.push({ from, to });
  }
  return united;
}

/** What is left of `intervals` without `holes`; both united, both in the order of time. */
export function subtract(intervals: readonly Interval[], holes: readonly Interval[]): readonly Interval[] {
  const left: Interval[] = [];
  for (const { from, to } of intervals) {
    let start = from;
    for (const hole of holes) {
      if (hole.to <= start || hole.from >= to) continue;
      if (hole.from > start) left.push({ from: start, to: hole.from });
      start = Math.max(start, hole.to);
    }
    if (start < to || (from === to && start === from)) left.push({ from: start, to });
  }
  return left;
}

/** The part of `intervals` between two instants. */
export function clip(intervals: readonly Interval[], from: number, to: number): readonly Interval[] {
  return intervals
    .filter((i) => i.to > from && i.from < to)
    .map((i) => ({ from: Math.max(i.from, from), to: Math.min(i.to, to) }));
}

/** Sum of the lengths, in milliseconds. */
export function total(intervals: readonly Interval[]): number {
  return intervals.reduce((sum, { from, to }) => sum + (to - from), 0);
}

/** How much of the intervals, in milliseconds, lies within some windows; the windows in any order, united or not. */
export function totalWithin(intervals: readonly Interval[], windows: readonly Interval[]): number {
  const united = unite(windows);
  return total(intervals.flatMap(({ from, to }) => clip(united, from, to)));
}

/**
 * Which share of a span some windows cover, once what reaches over its end goes on at its begin: the share of the times by which
 * all of them, shifted around the span together, leave its end in one of them. 0 to 1; 0 for an empty span.
 */
export function shareAround({ from, to }: Interval, windows: readonly Interval[]): number {
  const length = to - from;
  if (length <= 0) return 0;
  const within = windows.flatMap((window): readonly Interval[] => {
    const [begin, end] = [window.from - from, window.to - from];
    if (end - begin >= length) return [{ from: 0, to: length }];
    if (end <= length) return [{ from: begin, to: end }];
    return [
      { from: begin, to: length },
      { from: 0, to: end - length },
    ];
  });
  return Math.min(1, total(clip(unite(within), 0, length)) / length);
}
