import type { Batch, BatchGauge, BatchTime, RowTemplate } from './row-template.ts';

/** The gauges of a row that just matched, with their numbers. */
export function gaugesOf({ readings }: RowTemplate, numbers: ArrayLike<number>): readonly BatchGauge[] {
  const gauges: BatchGauge[] = [];
  for (const { parameter } of readings)
    if (parameter.gauge !== null)
      gauges.push({ reader: parameter.gauge, number: numbers[gauges.length] ?? 0, timesNoted: 0 });
  return gauges;
}

/** The gauges of a row of a batch show other numbers from now on: what they showed while the batch was only counted is noted. */
export function moveGauges({ gauges, time }: Batch, row: number, numbers: ArrayLike<number>): void {
  let place = 0;
  for (const gauge of gauges[row] ?? []) {
    if (time !== null) noteGauge(gauge, time);
    gauge.number = numbers[place] ?? 0;
    place += 1;
  }
}

/** Notes a number as often as it came since it was noted. */
export function noteGauge(gauge: BatchGauge, { lastTime, timesPending }: BatchTime): void {
  gauge.reader.add(lastTime, gauge.number, timesPending - gauge.timesNoted);
  gauge.timesNoted = timesPending;
}

/** Puts the numbers of a row of a batch where those of a row that just matched are. */
export function numbersOfRow({ gauges }: Batch, row: number, numbers: Float64Array): void {
  for (const [place, { number }] of (gauges[row] ?? []).entries()) numbers[place] = number;
}
