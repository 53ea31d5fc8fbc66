/** How far apart the readings of a stream are: a histogram of bounded size, so that a long poll costs no memory. */
export interface Spacing {
  add(milliseconds: number): void;
  /** Median in milliseconds, to three significant digits; 0 without any. */
  median(): number;
}

interface State {
  readonly counts: Map<number, number>;
  /** As it was added last, and as it is counted. */
  added: number;
  counted: number;
  run: number;
}

export function spacingCounter(): Spacing {
  // An object, not variables: numbers that change with every row are kept in their places there.
  const state: State = { counts: new Map(), added: Number.NaN, counted: -1, run: 0 };
  return {
    add(milliseconds) {
      if (milliseconds === state.added) state.run += 1;
      else addOther(state, milliseconds);
    },
    median() {
      flush(state);
      const sorted = [...state.counts.entries()].sort((a, b) => a[0] - b[0]);
      const total = sorted.reduce((sum, [, count]) => sum + count, 0);
      let seen = 0;
      for (const [value, count] of sorted) {
        seen += count;
        if (seen * 2 >= total) return value;
      }
      return 0;
    },
  };
}

function addOther(state: State, milliseconds: number): void {
  if (milliseconds <= 0) return;
  const rounded = milliseconds < 1000 ? milliseconds : toThreeDigits(milliseconds);
  if (rounded !== state.counted) flush(state);
  state.added = milliseconds;
  state.counted = rounded;
  state.run += 1;
}

function flush(state: State): void {
  const { counts, counted, run } = state;
  if (run > 0) counts.set(counted, (counts.get(counted) ?? 0) + run);
  state.run = 0;
}

function toThreeDigits(value: number): number {
  const step = 10 ** (Math.floor(Math.log10(value)) - 2);
  return Math.round(value / step) * step;
}
