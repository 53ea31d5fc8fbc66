import type { Staff, StaffStretch } from '../vocabulary.ts';

type Drawn = StaffStretch['drawn'];

/** The last hour is drawn, as look.md asks: it grows to the right until the hour is full. */
const spanMs = 3_600_000;

/** What a half's line is drawn with. All of them are plain, and told apart in black alone. */
const drawnWith: Readonly<Record<Drawn, string>> = {
  active: '=',
  ready: '-',
  'not-ready': '.',
  absent: ' ',
  unknown: '?',
};
const marks = { happening: '|', switchover: 'X', unobserved: '/', now: '>' } as const;

/** What stands where several fall into one column, the gravest last: a loss is never hidden by what is longer. */
const byGravity: readonly Drawn[] = ['ready', 'active', 'unknown', 'not-ready', 'absent'];

/** The key of the staff, shown once; each line fits 80 columns. */
export const staffKey = [
  'The last hour: = active  - standby, ready  . standby, not ready  blank out',
  '| restart, reflash, fault, loss  X switchover  / unobserved  ? unknown  > now',
] as const;

/** A module that is out is blank: its removal and insertion need no mark of their own, which would hide it. */
const seenByBlank: ReadonlySet<string> = new Set(['removed', 'inserted']);

/** The line of one half over the last hour of a staff, in `columns` characters; the last one drawn is now. */
export function staffLine(staff: Staff, half: string, columns: number): string {
  const from = Math.max(staff.from, staff.to - spanMs);
  const unit = spanMs / (columns - 1);
  const columnOf = (time: number): number => Math.floor((time - from) / unit);
  const length = Math.min(columns - 1, Math.max(1, Math.ceil((staff.to - from) / unit)));
  const line: string[] = Array.from({ length }, () => drawnWith.unknown);
  const fill = (start: number, end: number, mark: string): void => {
    const last = Math.min(length - 1, Math.max(columnOf(start), Math.ceil((end - from) / unit) - 1));
    for (let at = Math.max(0, columnOf(start)); at <= last; at += 1) line[at] = mark;
  };
  for (const drawn of byGravity)
    for (const stretch of staff.stretches)
      if (stretch.half === half && stretch.drawn === drawn && stretch.to > from)
        fill(stretch.from, stretch.to, drawnWith[drawn]);
  for (const gap of staff.unobserved) if (gap.to > from) fill(gap.from, gap.to, marks.unobserved);
  const point = (time: number, mark: string): void => {
    if (time >= from && time <= staff.to) line[Math.min(length - 1, columnOf(time))] = mark;
  };
  for (const { half: of, word, time } of staff.ticks)
    if (of === half && !seenByBlank.has(word)) point(time, marks.happening);
  for (const { time } of staff.switchovers) point(time, marks.switchover);
  return line.join('') + marks.now;
}
