import type { Mark } from '../src/pipeline.ts';
import type { Interval } from '../src/vocabulary.ts';
import type { Cited } from './cite.ts';

const mostCited = 12;

/** The marks that lie in a span, or may. */
export function marksIn(marks: readonly Mark[], { from, to }: Interval): readonly Mark[] {
  return marks.filter((m) => m.time >= from && m.earliest <= to);
}

/** From the earliest instant of some marks to the last; `null` of none. */
export function spanOf(marks: readonly Mark[]): Interval | null {
  const [first, ...rest] = marks;
  if (first === undefined) return null;
  return rest.reduce<Interval>(
    (span, m) => ({ from: Math.min(span.from, m.earliest), to: Math.max(span.to, m.time) }),
    { from: first.earliest, to: first.time },
  );
}

/** The instant of the next mark after another instant, or of the last before it; `null` where there is none. */
export function nextMark(marks: readonly Mark[], time: number, step: 1 | -1): number | null {
  const found = step > 0 ? marks.find((m) => m.time > time) : marks.findLast((m) => m.time < time);
  return found?.time ?? null;
}

/** Some marks in a line, with the lines they rest on. */
export function citedOf(title: string, marks: readonly Mark[]): Cited {
  const words = marks.slice(0, mostCited).map(sayMark).join(', ');
  const more = marks.length > mostCited ? `, and ${marks.length - mostCited} more` : '';
  return { title: `${title}: ${words}${more}`, lines: marks.flatMap((m) => m.evidence) };
}

function sayMark({ half, what }: Mark): string {
  return half === null ? what : `${half} ${what}`;
}
