/** A pair in which everything changes all the time keeps nobody waiting: no analysis takes time by the square of its events. */
import { expect, test } from 'vitest';
import { seeded } from '../../samples/random.ts';
import { diagnose, fleet, verify } from '../../src/pipeline.ts';
import { denseLogs } from '../support/dense-logs.ts';
import { analyseTexts } from '../support/read-text.ts';

const changes = 40_000;

// One that goes by the square takes minutes for so many, by the cube a day; all of them take some four seconds.
test('every answer about 40,000 changes of one pair', async () => {
  const analysed = await analyseTexts(denseLogs(changes, seeded(3)));
  const [timeline] = analysed.timelines;
  expect(timeline?.events.length).toBeGreaterThan(changes / 2);
  const swaps = verify(analysed, null, { from: null, to: null }, null).swaps;
  expect(swaps.length).toBeGreaterThan(0);
  expect(diagnose(analysed, null).pair).toBe('RO1');
  expect(fleet(analysed, { by: 'firmware', swaps: 10, readyDays: 1 }).pairs.length).toBe(1);
}, 40_000);
