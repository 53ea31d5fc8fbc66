import type { Act } from './acts.ts';

/** Small troubles of other kinds, each over in moments, that no attempt failed of: at most so many of them. */
export function smallTroubles(most: number): (act: Act) => void {
  let left = most;
  return (act) => {
    if (left === 0 || act.chance.percent(40)) return;
    left -= 1;
    act.chance.pick(linkBlinks, supplyDips, editPending, loadPeaks, mismatchNoticed)(act);
  };
}

/** Something that is odd from first to last, and with which the pair was ready all the same. */
export function standsOdd({ bench, chance }: Act, cause: string): void {
  const odd = chance.pick('configuration-pending', 'link-down', 'active-overloaded', 'models-differ');
  if (odd === cause) return;
  if (odd === 'configuration-pending') bench.set(null, 'configuration', 'pending');
  if (odd === 'link-down') bench.set(bench.active(), 'link-b', 'down');
  if (odd === 'active-overloaded') bench.level(bench.active(), 'load', 93);
  if (odd === 'models-differ') bench.set(bench.active(), 'model', 'Tern-2');
}

/** Seconds in which something is so, and then no more. */
function brief({ bench, chance }: Act, half: string | null, signal: string, value: string): void {
  const before = bench.get(half, signal);
  if (before === value || before === '') return;
  bench.wait(chance.between(60, 90));
  bench.set(half, signal, value);
  bench.wait(chance.between(2, 25));
  bench.set(half, signal, before);
  bench.wait(chance.between(60, 120));
}

function linkBlinks(act: Act): void {
  brief(act, act.bench.active(), act.chance.pick('link-a', 'link-b'), 'down');
}

function supplyDips(act: Act): void {
  brief(act, act.bench.active(), 'supply', 'fault');
}

function editPending(act: Act): void {
  brief(act, null, 'configuration', 'pending');
}

function loadPeaks({ bench, chance }: Act): void {
  const half = bench.active();
  const before = bench.levelOf(half, 'load');
  bench.level(half, 'load', Math.max(before, 93));
  bench.wait(chance.between(60, 200));
  bench.level(half, 'load', before);
}

/** A word of a fault that nothing came of. */
function mismatchNoticed({ bench, chance }: Act): void {
  bench.happen(bench.active(), 'fault');
  bench.wait(chance.between(5, 30));
}
