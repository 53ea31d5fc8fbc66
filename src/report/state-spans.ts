import type { StateRow } from '../charts/state-rows.ts';
import { compareText, type Interval, type StateSpan } from '../vocabulary.ts';
import { terminal } from './escape.ts';

const width = 660;
const unitsPerLetter = 7.2;
const abnormal: ReadonlySet<string> = new Set(['down', 'crossed']);

/**
 * The rows beneath a staff that shows `shown`, on a clock `ahead` milliseconds before UTC. What is shorter than a unit of
 * the drawing and shares it with others of its row is drawn once, what is abnormal before what is not.
 */
export function stateRowRows(
  spans: readonly StateSpan[],
  shown: Interval,
  ahead: number,
): readonly StateRow[] {
  const unit = Math.max(1, shown.to - shown.from) / width;
  const inside = spans.filter((s) => s.to >= shown.from && s.from <= shown.to);
  const seen = new Set<string>();
  const first = inside.toSorted((a, b) => Number(isAbnormal(b)) - Number(isAbnormal(a)));
  const kept = first.filter((s) => {
    const key = `${s.half}\n${s.signal}\n${Math.floor(s.from / unit)}`;
    if (s.to - s.from < unit && seen.has(key)) return false;
    seen.add(key);
    return true;
  });
  return kept
    .toSorted((a, b) => compareText(a.half, b.half) || compareText(a.signal, b.signal) || a.from - b.from)
    .map((span) => {
      const from = Math.max(span.from, shown.from);
      const to = Math.min(span.to, shown.to);
      const value = terminal(span.value);
      const hasRoom = (value.length * unitsPerLetter + 6) * unit <= to - from;
      return {
        name: `${terminal(span.half)} ${span.signal.replace('-', ' ')}`,
        from: from + ahead,
        to: to + ahead,
        value,
        word: hasRoom ? value : '',
        isAbnormal: isAbnormal(span),
      };
    });
}

function isAbnormal({ value }: StateSpan): boolean {
  return abnormal.has(value);
}
