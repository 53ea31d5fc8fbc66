import { describe, expect, test } from 'vitest';
import { mutate } from './mutate.ts';

const source = `/** Über zwei Grenzen: ü hat zwei Bytes. */
export function reach(list: readonly number[], limit: number): number {
  const wide = list.filter((item) => item > limit);
  if (wide.length === 0 || !list.includes(limit)) return -1;
  const [last, first] = [wide.at(-1) ?? 0, wide[0] ?? 0];
  return first !== last ? Math.min(limit, first) : last - first + 1;
}
export const total = (items?: readonly number[]): string => 'of ' + items?.filter(Boolean).length;
`;

/** What a text gives with one of its mutants on; no types in it. */
async function valueWith(text: string, on: number): Promise<unknown> {
  Object.defineProperty(globalThis, 'isMutant', { value: (id: number) => id === on, configurable: true });
  const { code } = mutate(text, 100);
  const { value } = await import(/* @vite-ignore */ `data:text/javascript,${encodeURIComponent(code)}#${on}`);
  return value;
}

describe('mutants', () => {
  test('of a text of nine lines, each with its line and what it puts in place of what', () => {
    const { mutants } = mutate(source, 100);
    expect(mutants.map((m) => `${m.line}: ${m.from} -> ${m.to}`)).toEqual([
      '3: list.filter((item) => item > limit) -> list',
      '3: item > limit -> item >= limit',
      '4: wide.length === 0 || !list.includes(limit) -> true',
      '4: wide.length === 0 || !list.includes(limit) -> false',
      '4: wide.length === 0 || !list.includes(limit) -> wide.length === 0',
      '4: wide.length === 0 || !list.includes(limit) -> !list.includes(limit)',
      '4: wide.length === 0 -> wide.length !== 0',
      '4: 0 -> 1',
      '4: !list.includes(limit) -> list.includes(limit)',
      '5: 1 -> 2',
      '5: 0 -> 1',
      '6: first !== last -> true',
      '6: first !== last -> false',
      '6: first !== last -> first === last',
      '6: Math.min -> Math.max',
      '6: last - first + 1 -> last - first - 1',
      '6: last - first -> last + first',
      '6: 1 -> 2',
    ]);
    expect(mutants.map((m) => m.id)).toEqual(mutants.map((_, index) => 100 + index));
  });

  test('are in one text, one on at a time: 5 - 2 + 1 is 4, and otherwise 2, 8 and 5', async () => {
    const text = 'export const value = 5 - 2 + 1;';
    // From the outside in, from left to right: 5 - 2 - 1, then 5 + 2 + 1, 6 - 2 + 1, 5 - 3 + 1 and 5 - 2 + 2.
    const values = [];
    for (const on of [0, 100, 101, 102, 103, 104, 105]) values.push(await valueWith(text, on));
    expect(values).toEqual([4, 2, 8, 5, 3, 5, 4]);
  });

  test('keep the lines where they were', () => {
    expect(mutate(source, 0).code.split('\n')).toHaveLength(source.split('\n').length);
  });

  test('are not made of a text that does not parse', () => {
    expect(() => mutate('const = 1', 0)).toThrow(SyntaxError);
  });
});
