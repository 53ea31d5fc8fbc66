import { lose, moduleIn, pause, reflash, replace, restart, syncBadly } from './acts.ts';
import { irregular, tryInVain } from './attempts.ts';
import { goBefore, type Site } from './site.ts';

/** Conditions that stand while attempts fail. Each is told of a site that was as it should be before. */

/** No half is active: the active one left its role, or restarts whenever the standby copies. */
export function activeAbsent(site: Site): void {
  const { act, chance } = site;
  const { bench } = act;
  goBefore(site);
  const active = bench.active();
  const kind = chance.pick('none', 'standby', 'restarts');
  if (kind !== 'restarts') {
    bench.set(active, 'role', kind);
    bench.wait(chance.between(0.1, 3));
    lose(act);
    bench.wait(chance.between(10, 200));
    for (let index = chance.whole(1, 4); index > 0; index -= 1) {
      syncBadly(act, irregular(act));
      bench.wait(chance.between(30, 300));
    }
    return;
  }
  lose(act);
  for (let index = chance.whole(1, 4); index > 0; index -= 1) {
    bench.wait(chance.between(30, 300));
    bench.happen(bench.standby(), 'sync-start');
    bench.wait(chance.between(20, 200));
    bench.happen(active, 'restart');
    bench.wait(chance.between(0.5, 12));
    bench.happen(bench.standby(), 'sync-failed');
    bench.wait(chance.between(20, 60));
  }
  bench.wait(chance.between(60, 600));
}

export function firmwareDiffers(site: Site): void {
  const { act, chance } = site;
  goBefore(site);
  const wrong = chance.pick('6.2.0', '6.4.0', '7.0.1');
  const { model } = moduleIn(act.bench, act.bench.standby());
  if (chance.percent(70)) replace(act, { model, serial: `N-${chance.whole(1000, 9999)}`, firmware: wrong });
  else reflash(act, wrong);
  tryInVain(act, { count: chance.whole(1, 5) });
  pause(act, 300, 2400);
}

export function modelsDiffer(site: Site): void {
  const { act, chance } = site;
  goBefore(site);
  const { firmware } = moduleIn(act.bench, act.bench.standby());
  replace(act, { model: chance.pick('Tern-2', 'Tern-6'), serial: `N-${chance.whole(1000, 9999)}`, firmware });
  tryInVain(act, { count: chance.whole(1, 5) });
  pause(act, 300, 2400);
}

export function configurationPending(site: Site): void {
  const { act, chance } = site;
  const { bench } = act;
  goBefore(site);
  bench.set(null, 'configuration', 'pending');
  bench.wait(chance.between(10, 900));
  if (chance.percent(50)) restart(act);
  else lose(act);
  bench.wait(chance.between(20, 200));
  tryInVain(act, { count: chance.whole(1, 5) });
  pause(act, 300, 2400);
}

export function linksCrossed(site: Site): void {
  const { act, chance } = site;
  const { bench } = act;
  goBefore(site);
  const half = bench.standby();
  if (chance.percent(60)) {
    const { model, firmware } = moduleIn(bench, half);
    replace(act, { model, firmware, serial: `N-${chance.whole(1000, 9999)}` });
    bench.set(half, 'links', 'crossed');
  } else {
    // Work on the cables: both out, and back in each other's port.
    for (const link of ['link-a', 'link-b']) bench.set(half, link, 'down');
    bench.wait(chance.between(0.5, 4));
    lose(act);
    bench.wait(chance.between(20, 200));
    for (const link of ['link-a', 'link-b']) bench.set(half, link, 'up');
    bench.set(half, 'links', 'crossed');
  }
  bench.wait(chance.between(10, 60));
  tryInVain(act, { count: chance.whole(1, 5) });
  pause(act, 300, 2400);
}

export function activeOverloaded(site: Site): void {
  const { act, chance } = site;
  const { bench } = act;
  goBefore(site);
  const half = bench.active();
  bench.level(half, 'load', chance.between(93.5, 99.5));
  bench.wait(chance.between(200, 1500));
  if (chance.percent(50)) restart(act);
  else lose(act);
  bench.wait(chance.between(20, 200));
  tryInVain(act, { count: chance.whole(1, 5) });
  pause(act, 300, 2400);
}

/** The standby, the active half or both have no room. */
export function memoryShort(site: Site): void {
  const { act, chance } = site;
  const { bench } = act;
  goBefore(site);
  const which = chance.pick('standby', 'standby', 'active', 'both');
  if (which !== 'standby') bench.level(bench.active(), 'free-memory', chance.between(6e4, 2.4e5));
  if (which === 'standby') {
    const { model, firmware } = moduleIn(bench, bench.standby());
    replace(act, { model, firmware, serial: `N-${chance.whole(1000, 9999)}` });
  } else {
    bench.wait(chance.between(30, 600));
    restart(act);
  }
  if (which !== 'active') bench.level(bench.standby(), 'free-memory', chance.between(6e4, 2.4e5));
  bench.wait(chance.between(20, 200));
  tryInVain(act, { count: chance.whole(1, 5) });
  pause(act, 300, 2400);
}
