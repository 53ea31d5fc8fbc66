/**
 * Source: IEC 60050-192:2015, 192-01-23 (availability) and 192-02-21 (down time): mean up time over mean up and mean down
 * time. Up 700, 1200, 500 h and down 2, 4, 1.5 h give 800 / (800 + 2.5) = 0.9968847352 (figures constructed).
 * Relative tolerance 1e-9.
 */
import { expect, test } from 'vitest';
import { availabilityOf } from '../../src/timeline/exposure.ts';
import { analyseTexts } from '../support/read-text.ts';

test('availability of a pair is that of a repairable item', async () => {
  const hour = 3_600_000;
  let time = Date.UTC(2026, 0, 1);
  const rows = [`${new Date(time).toISOString()} RO1 partner ready`];
  for (const [up, down] of [
    [700, 2],
    [1200, 4],
    [500, 1.5],
  ] as const) {
    time += up * hour;
    rows.push(`${new Date(time).toISOString()} RO1 partner not ready`);
    time += down * hour;
    rows.push(`${new Date(time).toISOString()} RO1 partner ready`);
  }
  const { timelines } = await analyseTexts({ 'ro1.log': `${rows.join('\n')}\n` });
  const [timeline] = timelines;
  expect(timeline).toBeDefined();
  if (timeline === undefined) return;
  expect(availabilityOf(timeline)).toBeCloseTo(0.9968847352, 9);
});
