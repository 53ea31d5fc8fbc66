import type { Act } from './acts.ts';
import { lose, moduleIn, pause, replace, syncWell } from './acts.ts';
import { smallTroubles } from './beside.ts';
import { chanceOf } from './chance.ts';
import { dressings, filesOf } from './dress.ts';
import {
  keepTroubled,
  losesOnce,
  type Normal,
  pullsAndReturns,
  restartsWell,
  swapsAndReflashes,
  swapsBoth,
  swapsOne,
  switchesOver,
  triesTwice,
} from './neighbours.ts';
import { siteOf, talesOf } from './site.ts';
import type { CauseStory } from './stories.ts';

/** A module of another model, or of other firmware, that the pair is ready with all the same. */
const mixesModels: Normal = (act) => {
  const { firmware } = moduleIn(act.bench, act.bench.standby());
  replace(act, { model: 'Tern-2', firmware, serial: `M-${act.chance.whole(1000, 9999)}` });
  syncWell(act);
};

/** What stays as it is and hinders nothing: an edit not sent yet, a busy active half, one network of one half. */
const livesWith: Normal = ({ bench, chance }) => {
  const odd = chance.pick('pending', 'load', 'link');
  if (odd === 'pending') bench.set(null, 'configuration', 'pending');
  else if (odd === 'load') bench.level(bench.active(), 'load', 94);
  else bench.set(bench.standby(), 'link-a', 'down');
  bench.wait(chance.between(100, 600));
};

/** Some losses within minutes, over long ago. */
const wasRestless: Normal = (act) => {
  for (let index = 0; index < 4; index += 1) {
    lose(act);
    act.bench.wait(act.chance.between(5, 60));
    syncWell(act);
    act.bench.wait(act.chance.between(70, 400));
  }
  act.bench.wait(9000);
};

const blinks: Normal = ({ bench, chance }) => {
  const half = bench.standby();
  const link = chance.pick('link-a', 'link-b');
  for (let index = chance.whole(1, 4); index > 0; index -= 1) {
    bench.set(half, link, 'down');
    bench.wait(chance.between(1, 20));
    bench.set(half, link, 'up');
    bench.wait(chance.between(20, 900));
  }
};

const ways: readonly [Normal, ...Normal[]] = [
  restartsWell,
  losesOnce,
  swapsOne,
  swapsBoth,
  swapsAndReflashes,
  switchesOver,
  pullsAndReturns,
  triesTwice,
  mixesModels,
  livesWith,
  wasRestless,
  blinks,
];

/** A pair with nothing wrong as its log ends, whatever was before; the same for the same seed. */
export function soundStoryOf(number: number, seed: number): CauseStory {
  const chance = chanceOf(seed * 104_729 + 500_000 + number);
  const dressing = dressings[number % dressings.length] ?? 'logged';
  const site = siteOf(chance, {
    pairs: chance.whole(dressing === 'noise' ? 2 : 1, 4),
    beside: dressing === 'beside' ? smallTroubles(3) : () => undefined,
  });
  const { act, others } = site;
  pause(act, 300, 3000);
  for (let index = chance.whole(0, 3); index > 0; index -= 1) {
    chance.pick(...ways)(act);
    pause(act, 400, 3000);
  }
  act.bench.wait(chance.between(600, 4000));
  const neighbour: Act | undefined = others.at(-1);
  if (dressing === 'noise' && neighbour !== undefined) keepTroubled(neighbour, act.bench.now());
  const tales = talesOf(site);
  return { pair: act.bench.pair, dressing, files: filesOf(tales, dressing, chance, false) };
}
