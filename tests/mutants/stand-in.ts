/** Stands in for `vitest` while mutants are tried: it collects the tests, so that they can be run over and over. */
export { expect } from 'vitest';

type Body = (...row: readonly unknown[]) => unknown;

/** Every test that the files loaded so far hold, in their order. */
export const collected: { readonly name: string; readonly run: () => unknown }[] = [];

const within: string[] = [];

export function describe(name: string, body: Body): void {
  within.push(name);
  body();
  within.pop();
}
describe.each = (rows: readonly unknown[]) => each(rows, describe);

/** As in the runner itself, options stand before the body or a limit behind it: they count nothing here. */
export function test(name: string, ...rest: readonly [Body, number?] | readonly [object, Body]): void {
  const run = rest.find((part) => typeof part === 'function');
  if (run !== undefined) collected.push({ name: [...within, name].join(' > '), run: () => run() });
}
test.each = (rows: readonly unknown[]) => each(rows, test);

function each(rows: readonly unknown[], one: (name: string, body: Body) => void): typeof one {
  return (name, body) => {
    for (const row of rows) one(name, () => body(...(Array.isArray(row) ? row : [row])));
  };
}
