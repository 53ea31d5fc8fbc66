import type { Gauge, GaugeBin, GaugeSeries, Subject } from '../../vocabulary.ts';

/** Reads one gauge of one unit into five-minute bins. */
export interface GaugeReader {
  /** The number that a text says, as the log prints it; NaN if it is none. */
  number(text: string): number;
  add(at: number, printed: number): void;
  /** What was read so far. */
  series(): GaugeSeries;
}

const binMs = 300_000;

/** `scale` turns what the log prints into percent or bytes; a decimal comma is read as a point. */
export function gaugeReader(subject: Subject, gauge: Gauge, scale: number): GaugeReader {
  const bins: GaugeBin[] = [];
  let from = Number.NEGATIVE_INFINITY;
  let count = 0;
  let sum = 0;
  let minimum = 0;
  let maximum = 0;
  const last = (): readonly GaugeBin[] =>
    count === 0 ? [] : [{ from, count, minimum, mean: sum / count, maximum }];
  return {
    number(text) {
      const bare = text.endsWith('%') ? text.slice(0, -1) : text;
      const number = Number(bare.replace(',', '.'));
      return text.trim() === '' || !Number.isFinite(number * scale) ? Number.NaN : number;
    },
    add(at, printed) {
      const number = printed * scale;
      const bin = Math.floor(at / binMs) * binMs;
      if (bin !== from) {
        bins.push(...last());
        count = 0;
        sum = 0;
        from = bin;
      }
      minimum = count === 0 ? number : Math.min(minimum, number);
      maximum = count === 0 ? number : Math.max(maximum, number);
      count += 1;
      sum += number;
    },
    series: () => ({ subject, gauge, bins: [...bins, ...last()] }),
  };
}
