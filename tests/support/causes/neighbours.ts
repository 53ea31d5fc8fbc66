import {
  type Act,
  lose,
  moduleIn,
  pause,
  pull,
  reflash,
  replace,
  restart,
  seat,
  switchOver,
  syncWell,
} from './acts.ts';
import { tryInVain } from './attempts.ts';

/** What is normal work on a sound pair, and what sound pairs do by themselves now and then. */
export type Normal = (act: Act) => void;

export const restartsWell: Normal = (act) => {
  restart(act);
  syncWell(act);
};

export const losesOnce: Normal = (act) => {
  lose(act);
  act.bench.wait(act.chance.between(2, 40));
  syncWell(act);
};

export const swapsBoth: Normal = (act) => {
  for (const round of ['first', 'second']) {
    const { model, firmware } = moduleIn(act.bench, act.bench.standby());
    replace(act, { model, firmware, serial: `${act.bench.pair}-${round}-${act.chance.whole(1000, 9999)}` });
    syncWell(act);
    pause(act, 300, 900);
    switchOver(act);
    pause(act, 200, 600);
  }
};

export const swapsOne: Normal = (act) => {
  const { model, firmware } = moduleIn(act.bench, act.bench.standby());
  replace(act, { model, firmware, serial: `${act.bench.pair}-N${act.chance.whole(1000, 9999)}` });
  syncWell(act);
};

/** A new module comes with older firmware, and is brought to that of the active half. */
export const swapsAndReflashes: Normal = (act) => {
  const { bench } = act;
  const { model, firmware } = moduleIn(bench, bench.standby());
  replace(act, { model, firmware: '5.9.3', serial: `${bench.pair}-R${act.chance.whole(1000, 9999)}` });
  bench.wait(act.chance.between(30, 200));
  reflash(act, firmware);
  syncWell(act);
};

export const switchesOver: Normal = (act) => switchOver(act);

export const pullsAndReturns: Normal = (act) => {
  const { bench } = act;
  const module = moduleIn(bench, bench.standby());
  pull(act);
  bench.wait(act.chance.between(20, 100));
  seat(act, module);
  syncWell(act);
};

/** One try that fails, and the next that does not. */
export const triesTwice: Normal = (act) => {
  restart(act);
  tryInVain(act, { count: 1, kinds: ['sync'], silent: false });
  act.bench.wait(act.chance.between(20, 200));
  syncWell(act);
};

const planned: readonly [Normal, ...Normal[]] = [
  restartsWell,
  swapsOne,
  swapsAndReflashes,
  switchesOver,
  pullsAndReturns,
];

/**
 * A sound pair until a time, with normal work now and then; ready, and for long enough, at the end. A calm one has planned work only.
 */
export function keepSound(act: Act, to: number, isCalm: boolean): void {
  const { bench, chance } = act;
  for (;;) {
    const left = (to - bench.now()) / 1000;
    if (left < 6000) return;
    const quiet = chance.between(900, 6000);
    if (quiet > left - 5000) return;
    bench.wait(quiet);
    if (isCalm) chance.pick(...planned)(act);
    else chance.pick(losesOnce, triesTwice, ...planned)(act);
  }
}

/** Another pair that has trouble of its own, which has nothing to do with ours. */
export function keepTroubled(act: Act, to: number): void {
  const { bench, chance } = act;
  while (to - bench.now() > 2_400_000) {
    bench.wait(chance.between(200, 1500));
    lose(act);
    bench.wait(chance.between(6, 90));
    tryInVain(act, { count: chance.whole(1, 2), kinds: ['sync', 'restart'], silent: false });
    bench.wait(chance.between(20, 90));
    if (chance.percent(85)) syncWell(act);
    else return;
  }
}
