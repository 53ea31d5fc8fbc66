import { expect, test } from 'vitest';
import { chartWidth, fitted } from '../../../web/fitted.ts';

test('two charts stand side by side where each has 400 pixels, else under each other', () => {
  // Half of what is left beside 32 pixels between them.
  expect(chartWidth(950, 2)).toBe(459);
  expect(chartWidth(832, 2)).toBe(400);
  expect(chartWidth(831, 2)).toBe(831);
  expect(chartWidth(950, 1)).toBe(950);
});

test('a chart of layers is as wide as its place, one of rows leaves room for its names', () => {
  const layer = { data: { values: [] }, width: 480, layer: [{ mark: 'rule' as const }] };
  expect(fitted(layer, 459)).toMatchObject({ width: 459, autosize: { type: 'fit-x' } });
  expect(fitted(layer, 1200)).toMatchObject({ width: 760 });
  const { width: _, data, ...lines } = layer;
  const rows = { data, facet: { row: { field: 'pair' } }, spec: { width: 480, ...lines } };
  expect(fitted(rows, 459)).toMatchObject({ spec: { width: 269 } });
});
