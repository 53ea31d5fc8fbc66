import { lose, pause, restart, syncBadly, syncWell } from './acts.ts';
import { irregular, tryInVain } from './attempts.ts';
import { goBefore, type Site, waitUntil } from './site.ts';

/** Patterns of one pair: a standby that restarts by itself, and syncs that end after a fixed time. */

/**
 * Restarts at distances that may be regular or not; each ends what the one before began, with or without a word of the failed sync
 * as the module goes, or takes away a partner that was ready for a while.
 */
export function restartLoop(site: Site): void {
  const { act, chance } = site;
  const { bench } = act;
  goBefore(site);
  const half = bench.standby();
  const median = chance.between(70, 420);
  const spread = chance.pick(0.02, 0.3, 0.6);
  const dropsOut = chance.percent(25);
  const saysFailed = chance.percent(30);
  const getsReady = spread < 0.6 && median > 260 && chance.percent(40);
  const count = chance.whole(4, 14);
  let isSyncing = false;
  for (let index = 0; index < count; index += 1) {
    bench.happen(half, 'restart');
    bench.wait(chance.between(0.05, 1));
    if (saysFailed && isSyncing) bench.happen(half, 'sync-failed');
    lose(act);
    const period = Math.min(1500, Math.max(25, chance.around(median, spread)));
    if (dropsOut) {
      bench.set(null, 'partner-present', 'no');
      bench.wait(chance.between(4, 12));
      bench.set(null, 'partner-present', 'yes');
    }
    if (index === count - 1) break;
    const until = bench.now() + period * 1000;
    isSyncing = chance.percent(70) && period > 40;
    if (getsReady) {
      bench.wait(20);
      syncWell(act);
    } else if (isSyncing) {
      bench.wait(period * 0.4);
      bench.happen(half, 'sync-start');
    }
    waitUntil(bench, until);
  }
  bench.wait(chance.between(60, 600));
}

/** Syncs end for a reason that no log tells: at times without a pattern, by themselves or until somebody tries again. */
export function nothingTold(site: Site): void {
  const { act, chance } = site;
  goBefore(site);
  if (chance.percent(50)) restart(act);
  else lose(act);
  act.bench.wait(chance.between(5, 60));
  tryInVain(act, { count: chance.whole(1, 6) });
  pause(act, 60, 1800);
}

/** Every sync ends after the same time, whatever began it; in a long row one ends of something else. */
export function fixedAborts(site: Site): void {
  const { act, chance } = site;
  const { bench } = act;
  goBefore(site);
  const limit = chance.around(120, 0.8);
  const count = chance.whole(3, 9);
  const byRestarts = chance.percent(50);
  // The module restarts by itself as soon as a sync has failed.
  const isAutomatic = byRestarts && chance.percent(50);
  const odd = count > 5 ? chance.whole(1, count - 2) : -1;
  if (byRestarts) restart(act);
  else lose(act);
  bench.wait(chance.between(5, 60));
  for (let index = 0; index < count; index += 1) {
    if (index > 0) {
      if (isAutomatic) bench.wait(chance.between(0.5, 15));
      else pause(act, 20, chance.pick(60, 600));
      if (byRestarts && !isAutomatic) restart(act);
    }
    if (isAutomatic && index > 0) restart(act);
    syncBadly(act, index === odd ? irregular(act) : limit * chance.between(0.99, 1.01));
  }
  bench.wait(chance.between(60, 900));
}
