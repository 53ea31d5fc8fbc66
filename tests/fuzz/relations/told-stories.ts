import { type Random, seeded } from '../../../samples/random.ts';
import type { HalfName, Module, Story } from '../../../samples/story.ts';
import type { Told } from '../../support/relations/relation.ts';
import { type Acts, goodActs, lose, regain, tellSwap } from '../../support/stories/acts.ts';
import { faults } from '../../support/stories/faults.ts';
import { spellsOf, valueAt } from '../../support/stories/history.ts';
import { drawPlan, otherThan, type Plan } from '../../support/stories/plan.ts';
import { swapStory } from '../../support/stories/swap-story.ts';

/** What may happen to a pair. */
export interface Happening {
  readonly id: string;
  tell(seed: number): Told;
}

const hourMs = 3_600_000;

/** Everything that the fuzzer tells of, the common before the rare. */
export const happenings: readonly Happening[] = [
  { id: 'swap', tell: (seed) => whole(seed, swapStory(seed).story) },
  { id: 'two swaps', tell: twoSwaps },
  { id: 'long absence', tell: (seed) => whole(seed, goodSwap(seed, { pull: pullForHours })) },
  { id: 'absence without end', tell: endlessAbsence },
  // By its penalty, flapping goes on after its last loss, maybe into the work: the rules of truth know nothing of that.
  {
    id: 'flapping standby',
    tell: (seed) => ({ seed, story: goodSwap(seed, { baseline: flapping }), swaps: [] }),
  },
];

function whole(seed: number, story: Story): Told {
  return { seed, story, swaps: [story] };
}

function goodSwap(seed: number, otherwise: Partial<Acts>): Story {
  const random = seeded(seed);
  return tellSwap(drawPlan(random, {}), { ...goodActs, ...otherwise }, random).story();
}

/** The place stays empty for up to two hours. */
const pullForHours: Acts['pull'] = (telling, half) => {
  const pulled = goodActs.pull(telling, half);
  telling.teller.wait(telling.between(1200, 7200));
  return pulled;
};

/** The partner is lost and comes back again and again before the work; after it all is quiet for a quarter of an hour. */
const flapping: Acts['baseline'] = (telling) => {
  const { teller, between } = telling;
  const times = Math.floor(between(3, 25));
  teller.wait(between(60, 600));
  for (let time = 0; time < times; time += 1) {
    lose(telling);
    teller.wait(between(3, 90));
    regain(telling);
    teller.wait(between(3, 300));
  }
  goodActs.baseline(telling);
};

/** A module is pulled, and up to the end of the story none is fitted. The rules of truth know no swap without an insertion. */
function endlessAbsence(seed: number): Told {
  const { story, truth } = swapStory(seed, null);
  const fitted = Math.min(...truth.replacements.map((r) => r.inserted));
  const events = story.events.filter((e) => e.time < fitted);
  const to = Math.max(fitted, truth.firstRemoval + Math.round(2 * hourMs * seeded(seed ^ 0xab5e)()));
  return { seed, story: { ...story, to, events }, swaps: [] };
}

/** A good swap, and after up to an hour another of the same pair, in which something may go wrong. */
function twoSwaps(seed: number): Told {
  const first = swapStory(seed, null).story;
  const random = seeded(seed ^ 0x25ab);
  const to = first.to + Math.floor(hourMs * random());
  const fault = random() < 0.5 ? (faults[Math.floor(random() * faults.length)] ?? null) : null;
  const plan = planAfter(first, to, drawPlan(random, fault?.shape ?? {}));
  const second = tellSwap(plan, { ...goodActs, ...fault?.change(goodActs) }, random).story();
  const story = { ...first, to: second.to, events: [...first.events, ...second.events] };
  return { seed, story, swaps: [{ ...first, to }, second] };
}

/** A plan for the pair as a story left it: what new modules are to match stays as the plan was drawn. */
function planAfter(story: Story, from: number, plan: Plan): Plan {
  const last = (half: HalfName, signal: string): string => valueAt(spellsOf(story, half, signal), story.to);
  const now = (half: HalfName): Module => ({
    model: last(half, 'model'),
    serial: last(half, 'serial'),
    firmware: last(half, 'firmware'),
  });
  const active = last('A', 'role') === 'active' ? 'A' : 'B';
  const old = { A: now('A'), B: now('B') };
  const isOne = plan.halves.length === 1;
  // Of one half alone the new module is to match the one that stays, where the drawn one did.
  const fitted = (half: HalfName): Module => {
    const other = otherThan(half);
    const fresh = { ...plan.fresh[half], serial: `${plan.fresh[half].serial}-2` };
    const isMatching = plan.fresh[half].model === plan.old[other].model;
    return isOne ? { ...fresh, model: isMatching ? old[other].model : otherModel(old[other].model) } : fresh;
  };
  const halves: Plan['halves'] = isOne ? [otherThan(active)] : [otherThan(active), active];
  return {
    ...plan,
    pair: story.pair,
    from,
    active,
    halves,
    old,
    fresh: { A: fitted('A'), B: fitted('B') },
  };
}

function otherModel(model: string): string {
  return model === 'Tern-2' ? 'Tern-4' : 'Tern-2';
}

/** What happens to the pair of a seed: half of all an ordinary swap, the rest as often as each other. */
export function toldOf(seed: number, random: Random): { readonly happening: Happening; readonly told: Told } {
  const [ordinary, ...others] = happenings;
  const rare = others[Math.floor(random() * others.length)];
  const happening = random() < 0.5 ? ordinary : rare;
  if (happening === undefined) throw new RangeError('Nothing happens.');
  return { happening, told: happening.tell(seed) };
}
