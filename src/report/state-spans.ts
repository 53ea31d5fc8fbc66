import type { StateRow } from '../charts/state-rows.ts';
import { compareText, type Interval, type StateSpan } from '../vocabulary.ts';
import { terminal } from './escape.ts';

const unitsPerLetter = 7.2;
const abnormal: ReadonlySet<string> = new Set(['down', 'crossed']);

/**
 * The rows beneath a staff that shows `shown` and is `width` units wide, on a clock `ahead` milliseconds before UTC. What is shorter than a unit of
 * the drawing and shares it with others of its row is drawn once, what is abnormal before what is not.
 */
export function stateRowRows(
  spans: readonly StateSpan[],
  shown: Interval,
  ahead: number,
  width: number,
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
        shownFrom: shown.from + ahead,
        shownTo: shown.to + ahead,
      };
    });
}

function isAbnormal({ value }: StateSpan): boolean {
  return abnormal.has(value);
}

/** What stays as it should be is one line for all of it; what changes, or is not as it should be, is drawn. */
export interface FoldedStates {
  readonly told: readonly StateSpan[];
  readonly rest: readonly string[];
}

/** Parts the states that were reported in what is shown. */
export function foldedStates(spans: readonly StateSpan[], { from, to }: Interval): FoldedStates {
  const inside = spans.filter((s) => s.to >= from && s.from <= to);
  const firsts = new Map(inside.toReversed().map((s) => [keyOf(s), s]));
  const changing = new Set(
    inside.filter((s) => isAbnormal(s) || firsts.get(keyOf(s))?.value !== s.value).map(keyOf),
  );
  const quiet = [...firsts.values()].filter((s) => !changing.has(keyOf(s)));
  const halves = [...new Set(inside.map((s) => s.half))].toSorted(compareText);
  return {
    told: inside.filter((s) => changing.has(keyOf(s))),
    rest: [
      ...sayOfHalves('Links', halves, (half) => sayLinks(quiet.filter((s) => s.half === half))),
      ...sayOfHalves(
        'Firmware',
        halves,
        (half) => quiet.find((s) => s.half === half && s.signal === 'firmware')?.value ?? '',
      ),
    ],
  };
}

function keyOf({ half, signal }: StateSpan): string {
  return `${signal}\n${half}`;
}

/** `up and straight`; of one link `link a up`; empty where nothing is to be said. */
function sayLinks(quiet: readonly StateSpan[]): string {
  const has = (signal: StateSpan['signal'], value: string): boolean =>
    quiet.some((s) => s.signal === signal && s.value === value);
  const [a, b] = [has('link-a', 'up'), has('link-b', 'up')];
  const up = a && b ? ['up'] : a ? ['link a up'] : b ? ['link b up'] : [];
  return [...up, ...(has('links', 'straight') ? ['straight'] : [])].join(' and ');
}

/** One sentence where it is so of both halves, else one for each of which there is something to say. */
function sayOfHalves(
  what: string,
  halves: readonly string[],
  say: (half: string) => string,
): readonly string[] {
  const said = halves.map((half) => ({ half, words: terminal(say(half)) }));
  const [first] = said;
  if (first === undefined) return [];
  if (said.length === 2 && first.words !== '' && said.every((s) => s.words === first.words))
    return [`${what} of both halves ${first.words} throughout.`];
  return said.flatMap(({ half, words }) =>
    words === '' ? [] : [`${what} of half ${terminal(half)} ${words} throughout.`],
  );
}
