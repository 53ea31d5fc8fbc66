import { seeded } from '../../../samples/random.ts';
import type { Story } from '../../../samples/story.ts';
import { goodActs, tellSwap } from './acts.ts';
import type { Fault } from './fault.ts';
import { faults } from './faults.ts';
import { drawPlan } from './plan.ts';
import { type Truth, truthOf } from './truth.ts';

/** One swap with its truth. */
export interface ToldSwap {
  readonly seed: number;
  /** What was put in; `null`: the work as it should be. */
  readonly fault: Fault | null;
  readonly story: Story;
  readonly truth: Truth;
}

/** So many stories have something put in, and of these so many a fault. */
const faultShare = 0.6;

/** The swap of a seed, the same on every computer; `fault` puts in that one, or with `null` none. */
export function swapStory(seed: number, fault?: Fault | null): ToldSwap {
  const random = seeded(seed);
  const [isFaulty, which] = [random() < faultShare, random()];
  const drawn = isFaulty ? (faults[Math.floor(which * faults.length)] ?? null) : null;
  const chosen = fault === undefined ? drawn : fault;
  const plan = drawPlan(random, chosen?.shape ?? {});
  const story = tellSwap(plan, { ...goodActs, ...chosen?.change(goodActs) }, random).story();
  return { seed, fault: chosen, story, truth: truthOf(story) };
}
