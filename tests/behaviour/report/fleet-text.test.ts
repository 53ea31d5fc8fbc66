import { expect, test } from 'vitest';
import { fleet } from '../../../src/pipeline.ts';
import { fleetText } from '../../../src/report/fleet-text.ts';
import { analyseTexts } from '../../support/read-text.ts';

const log = `2026-03-14T09:00:00Z RO1-A role active
2026-03-14T09:00:00Z RO1 partner ready
2026-03-14T10:00:00Z RO1-B module restart
2026-03-14T10:00:01Z RO1 partner not ready
2026-03-14T10:01:20Z RO1 partner ready
2026-03-14T12:00:00Z RO1-A light off
`;

/** The text of a review whose one group has a trend of that chance. */
async function textWith(p: number): Promise<string> {
  const found = fleet(await analyseTexts({ 'x.log': log }), { by: 'firmware', swaps: 10 });
  expect(found.groups).toHaveLength(1);
  const trend = { months: 9, secondsPerYear: { value: 12, low: 3, high: 21 }, p };
  const groups = found.groups.map((g) => ({ ...g, trend }));
  return fleetText({ ...found, groups }, { zone: 'UTC', paint: (words) => words, reports: [] });
}

test('the text tells a trend of sync times up to a chance of 5 in 100, and not above', async () => {
  expect(await textWith(0.05)).toContain('    changes in a year by 12 s (3 to 21), p = 0.05\n');
  expect(await textWith(0.051)).not.toContain('in a year by');
});

test('the text keeps to 100 columns with names of sixty characters, and cuts none of them', async () => {
  const [pair, firmware] = [`P${'W'.repeat(59)}`, `6.${'4'.repeat(58)}`];
  const found = fleet(await analyseTexts({ 'x.log': log }), { by: 'firmware', swaps: 10 });
  const named = {
    ...found,
    pairs: found.pairs.map((p) => ({ ...p, pair })),
    groups: found.groups.map((g) => ({ ...g, group: firmware })),
  };
  const text = fleetText(named, { zone: 'UTC', paint: (words) => words, reports: [] });
  expect(text).toContain(`\n  ${pair}\n`);
  expect(text).toContain(`\n  ${firmware}\n`);
  expect(text.split('\n').filter((line) => line.length > 100)).toEqual([]);
});
