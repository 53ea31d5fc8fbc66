import { type Act, lose, moduleIn, pause, replace, switchOver, syncWell } from './acts.ts';
import { tryInVain } from './attempts.ts';
import type { Module } from './bench.ts';
import { goBefore, type Site, waitUntil } from './site.ts';

/** Patterns that only several places, or several pairs, can show. */

const spare: Module = { model: 'Tern-4', serial: 'X-4711', firmware: '6.4.1' };

/** A module fails wherever it is put, and others are ready in the same places; it is in our pair as the log ends. */
export function followsModule(site: Site): void {
  const { act, others, chance } = site;
  const { bench } = act;
  goBefore(site);
  const own = moduleIn(bench, bench.standby());
  const [there] = others;
  if (there === undefined || chance.percent(35)) {
    // In one half, then in the other, of the same pair.
    fails(act, spare);
    replace(act, own);
    syncWell(act);
    pause(act, 200, 900);
    switchOver(act);
    pause(act, 200, 900);
  } else {
    goBefore({ ...site, act: there });
    const theirs = moduleIn(there.bench, there.bench.standby());
    fails(there, spare);
    replace(there, theirs);
    syncWell(there);
    waitUntil(bench, there.bench.now() + 300_000);
  }
  fails(act, spare);
  pause(act, 300, 1800);
}

/** A module comes in, and some tries with it come to nothing. */
function fails(act: Act, module: Module): void {
  replace(act, module);
  tryInVain(act, { count: act.chance.whole(1, 3), kinds: ['sync', 'restart'] });
  pause(act, 100, 600);
}

/**
 * Two or three modules fail in one half of our pair, and each of them is ready elsewhere: in another pair before it came here,
 * or there after it had failed here.
 */
export function followsSlot(site: Site): void {
  const { act, others, chance } = site;
  const { bench } = act;
  const count = chance.whole(2, 3);
  const modules = Array.from({ length: count }, (_, n) => ({ ...spare, serial: `S-10${n}` }));
  const isOwnFirst = chance.percent(50);
  const cameFrom = modules.map((_, n) => n === count - 1 || (!(isOwnFirst && n === 0) && chance.percent(40)));
  for (const [n, module] of modules.entries()) if (cameFrom[n] === true) worksFor(others[n], module);
  waitUntil(bench, Math.max(...others.map((other) => other.bench.now())));
  goBefore(site);
  for (const [n, module] of modules.entries()) {
    const before = moduleIn(bench, bench.standby());
    if (isOwnFirst && n === 0) {
      lose(act);
      bench.wait(chance.between(6, 90));
      tryInVain(act, { count: chance.whole(1, 3), kinds: ['sync', 'restart'] });
      pause(act, 100, 600);
    } else fails(act, module);
    const there = others[n - 1];
    if (there === undefined || cameFrom[n - 1] === true) continue;
    waitUntil(there.bench, bench.now());
    replace(there, before);
    syncWell(there);
    waitUntil(bench, there.bench.now() + 200_000);
  }
  bench.wait(chance.between(200, 900));
}

/** The module works in another pair for a while, and another one takes its place there. */
function worksFor(there: Act | undefined, module: Module): void {
  if (there === undefined) return;
  there.bench.wait(there.chance.between(100, 900));
  for (const serial of [module.serial, `${module.serial}-X`]) {
    replace(there, { ...module, serial });
    syncWell(there);
    there.bench.wait(there.chance.between(100, 900));
  }
}

/** The pairs with the firmware, all but the last others, lose their partner or do not get it back; the rest is sound. */
export function firmwareWide(site: Site, withIt: number): void {
  const { act, others, chance } = site;
  const { bench } = act;
  goBefore(site);
  lose(act);
  bench.wait(chance.between(6, 90));
  tryInVain(act, { count: chance.whole(1, 4), kinds: ['sync', 'restart'] });
  pause(act, 1200, 4000);
  const to = bench.now();
  for (const other of others.slice(0, withIt - 1)) {
    other.bench.wait(chance.between(120, (to - other.bench.now()) / 2000));
    lose(other);
    other.bench.wait(chance.between(6, 90));
    tryInVain(other, { count: chance.whole(1, 3), kinds: ['sync', 'restart'] });
    other.bench.wait(chance.between(20, 200));
    if (chance.percent(50)) syncWell(other);
  }
}
