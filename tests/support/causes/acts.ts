import type { Bench, Module } from './bench.ts';
import type { Chance } from './chance.ts';

/** Who acts in a story: a pair and chance. */
export interface Act {
  readonly bench: Bench;
  readonly chance: Chance;
  /** What may happen beside while nobody works on the pair: nothing, or a trouble of another kind. */
  beside(act: Act): void;
}

/** Some time in which nothing is done, and something else may happen in its middle. */
export function pause(act: Act, low: number, high: number): void {
  const seconds = act.chance.between(low, high);
  act.bench.wait(seconds / 2);
  act.beside(act);
  act.bench.wait(seconds / 2);
}

export function lose({ bench }: Act): void {
  bench.set(null, 'partner-ready', 'no');
  if (bench.get(bench.standby(), 'role') !== 'none') bench.set(bench.standby(), 'light', 'flashing');
}

/** The standby synchronises, and its light is steady soon after. */
export function syncWell({ bench, chance }: Act): void {
  const half = bench.standby();
  bench.set(half, 'light', 'flashing');
  bench.happen(half, 'sync-start');
  bench.wait(chance.around(95, 0.15));
  bench.set(null, 'partner-ready', 'yes');
  bench.wait(chance.between(8, 50));
  bench.set(half, 'light', 'steady');
}

/** A sync that ends by itself after so many seconds. */
export function syncBadly({ bench }: Act, seconds: number): void {
  const half = bench.standby();
  bench.set(half, 'light', 'flashing');
  bench.happen(half, 'sync-start');
  bench.wait(seconds);
  bench.happen(half, 'sync-failed');
}

/** The standby restarts and is back on the network half a minute later. */
export function restart(act: Act): void {
  const { bench, chance } = act;
  bench.happen(bench.standby(), 'restart');
  bench.wait(chance.between(0.05, 1.5));
  lose(act);
  bench.wait(chance.between(15, 45));
}

/** The standby is pulled: an empty place. */
export function pull({ bench, chance }: Act): void {
  const half = bench.standby();
  bench.happen(half, 'removed');
  bench.wait(chance.between(0.05, 0.8));
  bench.set(null, 'partner-present', 'no');
  bench.set(null, 'partner-ready', 'no');
  bench.set(half, 'role', 'none');
  bench.set(half, 'light', 'off');
  for (const signal of ['model', 'serial', 'firmware']) bench.set(half, signal, '');
  for (const signal of ['link-a', 'link-b']) bench.set(half, signal, 'down');
}

/** A module is put into the empty place; `null` links stay as they are. */
export function seat(
  { bench, chance }: Act,
  module: Module,
  links: readonly string[] = ['link-a', 'link-b'],
): void {
  const half = bench.standby();
  bench.happen(half, 'inserted');
  bench.wait(chance.between(0.05, 2));
  bench.set(null, 'partner-present', 'yes');
  bench.wait(chance.between(5, 25));
  bench.set(half, 'role', 'standby');
  bench.set(half, 'light', 'flashing');
  for (const [signal, value] of Object.entries(module)) bench.set(half, signal, value);
  for (const signal of links) bench.set(half, signal, 'up');
  bench.wait(chance.between(5, 40));
}

export function moduleIn(bench: Bench, half: string): Module {
  const [model, serial, firmware] = ['model', 'serial', 'firmware'].map((signal) => bench.get(half, signal));
  return { model: model ?? '', serial: serial ?? '', firmware: firmware ?? '' };
}

/** Another module in the place of the standby. */
export function replace(act: Act, module: Module, links?: readonly string[]): void {
  pull(act);
  act.bench.wait(act.chance.between(40, 400));
  seat(act, module, links);
}

/** The halves exchange their roles on command. */
export function switchOver({ bench, chance }: Act): void {
  const [from, to] = [bench.active(), bench.standby()];
  bench.happen(from, 'switchover-command');
  bench.wait(chance.between(0.5, 4));
  bench.set(from, 'role', 'standby');
  bench.set(to, 'role', 'active');
  bench.set(to, 'light', 'off');
  bench.set(null, 'partner-ready', 'no');
  bench.set(from, 'light', 'flashing');
  bench.wait(chance.between(30, 90));
  bench.set(null, 'partner-ready', 'yes');
  bench.set(from, 'light', 'steady');
}

/** The standby gets other firmware; whether it synchronises after that is another matter. */
export function reflash(act: Act, firmware: string): void {
  const { bench, chance } = act;
  const half = bench.standby();
  bench.happen(half, 'reflash-start');
  bench.wait(chance.between(0.1, 2));
  lose(act);
  bench.wait(chance.between(100, 300));
  bench.set(half, 'firmware', firmware);
  bench.happen(half, 'reflash-end');
  bench.wait(chance.between(10, 40));
}
