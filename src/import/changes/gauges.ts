import type { Gauge, GaugeBin, GaugeSeries, Subject } from '../../vocabulary.ts';

/** Reads one gauge of one unit into five-minute bins. */
export interface GaugeReader {
  /** The number that a text says, as the log prints it; NaN if it is none. */
  number(text: string): number;
  /** Takes a number that was read so many times, at instants of one bin. */
  add(at: number, printed: number, times?: number): void;
  /** What was read so far. */
  series(): GaugeSeries;
}

const binMs = 300_000;

/** Where the bin of an instant ends, in milliseconds UTC: the next one begins there. */
export function endOfBin(at: number): number {
  return (Math.floor(at / binMs) + 1) * binMs;
}

/** `scale` turns what the log prints into percent or bytes; a decimal comma is read as a point. */
export function gaugeReader(subject: Subject, gauge: Gauge, scale: number): GaugeReader {
  const bins: GaugeBin[] = [];
  // An object, not variables: numbers that change with every reading are kept in their places there.
  const open: OpenBin = { from: Number.NEGATIVE_INFINITY, count: 0, sum: 0, minimum: 0, maximum: 0 };
  return {
    number(text) {
      const bare = text.endsWith('%') ? text.slice(0, -1) : text;
      const number = Number(bare.replace(',', '.'));
      return text.trim() === '' || !Number.isFinite(number * scale) ? Number.NaN : number;
    },
    add(at, printed, times = 1) {
      if (times === 0) return;
      const from = Math.floor(at / binMs) * binMs;
      if (from !== open.from) {
        if (open.count > 0) bins.push(closed(open));
        open.from = from;
        open.count = 0;
        open.sum = 0;
      }
      addTo(open, printed * scale, times);
    },
    series: () => ({ subject, gauge, bins: open.count > 0 ? [...bins, closed(open)] : [...bins] }),
  };
}

interface OpenBin {
  from: number;
  count: number;
  sum: number;
  minimum: number;
  maximum: number;
}

function addTo(open: OpenBin, number: number, times: number): void {
  open.minimum = open.count === 0 ? number : Math.min(open.minimum, number);
  open.maximum = open.count === 0 ? number : Math.max(open.maximum, number);
  open.count += times;
  let { sum } = open;
  // One by one: a product would be rounded otherwise than the sum of the same readings.
  for (let time = 0; time < times; time += 1) sum += number;
  open.sum = sum;
}

function closed({ from, count, sum, minimum, maximum }: OpenBin): GaugeBin {
  return { from, count, minimum, mean: sum / count, maximum };
}
