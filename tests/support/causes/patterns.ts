import { lose, pause, restart, syncBadly } from './acts.ts';
import { irregular } from './attempts.ts';
import { goBefore, type Site } from './site.ts';

/** Patterns of one pair: a standby that restarts by itself, and syncs that end after a fixed time. */

/** Restarts at distances that may be regular or not; each ends what the one before began. */
export function restartLoop(site: Site): void {
  const { act, chance } = site;
  const { bench } = act;
  goBefore(site);
  const half = bench.standby();
  const median = chance.between(70, 420);
  const spread = chance.pick(0.02, 0.3, 0.6);
  const dropsOut = chance.percent(25);
  const count = chance.whole(4, 14);
  for (let index = 0; index < count; index += 1) {
    bench.happen(half, 'restart');
    bench.wait(chance.between(0.05, 1));
    lose(act);
    const period = Math.min(1500, Math.max(25, chance.around(median, spread)));
    if (dropsOut) {
      bench.set(null, 'partner-present', 'no');
      bench.wait(chance.between(4, 12));
      bench.set(null, 'partner-present', 'yes');
    }
    if (index === count - 1) break;
    if (chance.percent(70) && period > 40) {
      bench.wait(period * 0.4);
      bench.happen(half, 'sync-start');
      bench.wait(period * 0.6);
    } else bench.wait(period);
  }
  bench.wait(chance.between(60, 600));
}

/** Every sync ends after the same time, whatever began it; in a long row one ends of something else. */
export function fixedAborts(site: Site): void {
  const { act, chance } = site;
  const { bench } = act;
  goBefore(site);
  const limit = chance.around(120, 0.8);
  const count = chance.whole(3, 9);
  const byRestarts = chance.percent(50);
  const odd = count > 5 ? chance.whole(1, count - 2) : -1;
  if (byRestarts) restart(act);
  else lose(act);
  bench.wait(chance.between(5, 60));
  for (let index = 0; index < count; index += 1) {
    if (index > 0) {
      pause(act, 20, chance.pick(60, 600));
      if (byRestarts) restart(act);
    }
    syncBadly(act, index === odd ? irregular(act) : limit * chance.between(0.99, 1.01));
  }
  bench.wait(chance.between(60, 900));
}
