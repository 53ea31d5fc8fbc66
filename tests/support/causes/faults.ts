import { type Act, lose, moduleIn, pause, pull, restart, seat, syncBadly, syncWell } from './acts.ts';
import { irregular, tryInVain } from './attempts.ts';
import { goBefore, type Site } from './site.ts';

/** Faults that stand, or come and go and end attempts, of links, supply and contacts. */

export function linkDown(site: Site): void {
  const { act, chance } = site;
  goBefore(site);
  const half = chance.percent(75) ? act.bench.standby() : act.bench.active();
  const link = chance.pick('link-a', 'link-b');
  if (chance.percent(50)) comesAndGoes(act, half, link, 'down', 'up');
  else linkStays(act, half, link);
}

/** It goes down and stays so; a module that is tried for some seconds tells nothing of it. */
function linkStays(act: Act, half: string, link: string): void {
  const { bench, chance } = act;
  bench.set(half, link, 'down');
  bench.wait(chance.between(0.2, 12));
  lose(act);
  bench.wait(chance.between(20, 200));
  const other = link === 'link-a' ? 'link-b' : 'link-a';
  tryInVain(act, { count: chance.whole(1, 4), links: [other] });
  if (chance.percent(40) && half === bench.standby()) {
    const module = moduleIn(bench, half);
    pull(act);
    bench.wait(chance.between(20, 120));
    // In for seven seconds: both links show up at first, as the switch sees them, and the attempt fails at once.
    bench.happen(half, 'inserted');
    bench.set(null, 'partner-present', 'yes');
    bench.set(half, link, 'up');
    bench.set(half, other, 'up');
    bench.wait(chance.between(4, 7));
    if (chance.percent(50)) bench.happen(half, 'sync-failed');
    bench.wait(0.5);
    pull(act);
    bench.wait(chance.between(30, 200));
    seat(act, module, [other]);
    tryInVain(act, { count: 1, links: [other] });
  }
  pause(act, 300, 1800);
}

export function supplyFault(site: Site): void {
  const { act, chance } = site;
  const { bench } = act;
  goBefore(site);
  const half = chance.percent(80) ? bench.standby() : bench.active();
  if (chance.percent(50)) {
    comesAndGoes(act, half, 'supply', 'fault', 'good');
    return;
  }
  bench.set(half, 'supply', 'fault');
  bench.wait(chance.between(0.2, 12));
  lose(act);
  bench.wait(chance.between(20, 200));
  tryInVain(act, { count: chance.whole(1, 4) });
  pause(act, 300, 1800);
}

/** A fault for moments, again and again, that ends what was under way: a sync, or a ready partner. */
function comesAndGoes(act: Act, half: string, signal: string, bad: string, good: string): void {
  const { bench, chance } = act;
  const count = chance.whole(3, 7);
  for (let index = 0; index < count; index += 1) {
    bench.set(half, signal, bad);
    bench.wait(chance.between(0.3, 9));
    if (index === 0 || bench.get(null, 'partner-ready') === 'yes') lose(act);
    else bench.happen(bench.standby(), 'sync-failed');
    if (signal === 'supply' && chance.percent(40)) bench.happen(half, 'restart');
    bench.wait(chance.between(4, 40));
    bench.set(half, signal, good);
    pause(act, 30, 400);
    if (chance.percent(35) && index < count - 1) {
      syncWell(act);
      bench.wait(chance.between(5, 400));
    } else {
      bench.happen(bench.standby(), 'sync-start');
      bench.wait(irregular(act));
    }
    // Now and then one fails of something else.
    if (count > 4 && index === 2 && bench.get(null, 'partner-ready') === 'no') {
      bench.happen(bench.standby(), 'sync-failed');
      bench.wait(chance.between(40, 200));
      bench.happen(bench.standby(), 'sync-start');
      bench.wait(irregular(act));
    }
  }
}

/** Presence comes and goes for seconds, with no one at the cabinet; the standby tries again in between. */
export function poorSeating(site: Site, least: number): void {
  const { act, chance } = site;
  const { bench } = act;
  goBefore(site);
  const half = bench.standby();
  const takesLinks = chance.percent(50);
  const count = chance.whole(least, 16);
  let isSyncing = false;
  for (let index = 0; index < count; index += 1) {
    bench.set(null, 'partner-present', 'no');
    if (takesLinks) for (const link of ['link-a', 'link-b']) bench.set(half, link, 'down');
    bench.wait(chance.between(0.05, 1.5));
    if (isSyncing) bench.happen(half, 'sync-failed');
    if (bench.get(null, 'partner-ready') === 'yes') lose(act);
    bench.wait(chance.between(2, 15));
    bench.set(null, 'partner-present', 'yes');
    if (takesLinks) for (const link of ['link-a', 'link-b']) bench.set(half, link, 'up');
    bench.wait(chance.between(4, 40));
    isSyncing = chance.percent(60);
    if (isSyncing) {
      bench.happen(half, 'sync-start');
      bench.wait(irregular(act));
    } else if (chance.percent(40)) {
      syncWell(act);
      bench.wait(chance.around(200, 0.8));
    } else bench.wait(chance.around(200, 0.8));
  }
  if (bench.get(null, 'partner-ready') === 'yes') {
    bench.set(null, 'partner-present', 'no');
    bench.wait(chance.between(0.05, 1.5));
    lose(act);
    bench.wait(chance.between(2, 9));
    bench.set(null, 'partner-present', 'yes');
  }
  if (!isSyncing && chance.percent(50)) {
    restart(act);
    syncBadly(act, irregular(act));
  }
  bench.wait(chance.between(60, 900));
}
