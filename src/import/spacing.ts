/** How far apart the readings of a stream are: a histogram of bounded size, so that a long poll costs no memory. */
export interface Spacing {
  add(milliseconds: number): void;
  /** Median in milliseconds, to three significant digits; 0 without any. */
  median(): number;
}

export function spacingCounter(): Spacing {
  const counts = new Map<number, number>();
  let last = -1;
  let run = 0;
  let lastAdded = 0;
  const flush = (): void => {
    if (run > 0) counts.set(last, (counts.get(last) ?? 0) + run);
    run = 0;
  };
  return {
    add(milliseconds) {
      if (milliseconds === lastAdded) {
        if (milliseconds > 0) run += 1;
        return;
      }
      lastAdded = milliseconds;
      if (milliseconds <= 0) return;
      const rounded = milliseconds < 1000 ? milliseconds : toThreeDigits(milliseconds);
      if (rounded !== last) flush();
      last = rounded;
      run += 1;
    },
    median() {
      flush();
      const sorted = [...counts.entries()].sort((a, b) => a[0] - b[0]);
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

function toThreeDigits(value: number): number {
  const step = 10 ** (Math.floor(Math.log10(value)) - 2);
  return Math.round(value / step) * step;
}
