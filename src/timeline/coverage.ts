import type { Coverage, Interval, Unobserved } from '../vocabulary.ts';

/** Joins intervals that touch or overlap; gives them in the order of time. */
function unite(intervals: readonly Interval[]): readonly Interval[] {
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
 * What was observed of a pair, and the spans between in which a poll was due but not read. Journals observe from their
 * first to their last entry, but cover no such span; another poll does. Source: design.md, section 2, Unobserved.
 */
export function observe(coverage: readonly Coverage[]): {
  readonly observed: readonly Interval[];
  readonly unobserved: readonly Unobserved[];
} {
  const polls = coverage.filter(({ stream }) => stream.kind === 'reading');
  const read = unite(polls.flatMap(({ stream }) => readSpans(stream)));
  const gaps = polls.flatMap(({ file, stream }) =>
    stream.gaps.map(({ before, after }) => ({
      file,
      before,
      after,
      open: subtract([{ from: before.time, to: after.time }], read),
    })),
  );
  const unobserved = gaps
    .flatMap(({ file, before, after, open }) =>
      open.map(
        ({ from, to }): Unobserved => ({
          from,
          to,
          evidence: [
            { file, line: before.line, text: before.text },
            { file, line: after.line, text: after.text },
          ],
        }),
      ),
    )
    .sort((a, b) => a.from - b.from || a.to - b.to)
    .filter((gap, index, all) => !all.slice(0, index).some((g) => g.from <= gap.from && g.to >= gap.to));
  const journals = coverage
    .filter(({ stream }) => stream.kind === 'entry')
    .map(({ stream }) => ({ from: stream.first.time, to: stream.last.time }));
  return { observed: unite([...read, ...subtract(unite(journals), unite(unobserved))]), unobserved };
}

function readSpans({ first, last, gaps }: Coverage['stream']): readonly Interval[] {
  const spans: Interval[] = [];
  let from = first.time;
  for (const gap of gaps) {
    spans.push({ from, to: gap.before.time });
    from = gap.after.time;
  }
  return [...spans, { from, to: last.time }];
}
