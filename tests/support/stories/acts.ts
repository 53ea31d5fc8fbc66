import type { Random } from '../../../samples/random.ts';
import { type HalfName, type Module, type Teller, tell, until } from '../../../samples/story.ts';
import { beginOf, otherThan, type Plan } from './plan.ts';

/** Seconds from the start of a bring-up; `null`: never. */
export interface Times {
  readonly ready: number | null;
  readonly steady: number | null;
}

/** A swap while it is told. */
export interface Telling {
  readonly plan: Plan;
  readonly teller: Teller;
  readonly acts: Acts;
  /** A number of seconds between two, by chance. */
  between(low: number, high: number): number;
  /** True in so large a share of the stories. */
  chance(share: number): boolean;
  /** When the last bring-up started, and when it was ready at last; milliseconds UTC. */
  start: number;
  readyAt: number;
}

/** The parts of the work. A fault does one of them otherwise. */
export interface Acts {
  baseline(telling: Telling): void;
  /** Pulls a module; gives the half that is to be fitted next. */
  pull(telling: Telling, half: HalfName): HalfName;
  /** A module that was pushed in reports itself for the first time. */
  report(telling: Telling, half: HalfName, module: Module): void;
  reflash(telling: Telling, half: HalfName): void;
  times(telling: Telling, half: HalfName): Times;
  bringUp(telling: Telling, half: HalfName): void;
  switchOver(telling: Telling): void;
  soak(telling: Telling): void;
}

/** The work as it should be done. */
export const goodActs: Acts = {
  baseline({ plan, teller, between }) {
    if (plan.exercised) {
      teller.wait(between(60, 300));
      for (let turn = 0; turn < 2; turn += 1) {
        teller.switchOver(true);
        teller.wait(between(120, 600));
      }
    }
    teller.wait(between(920, 2400));
  },
  pull({ teller }, half) {
    teller.remove(half);
    return half;
  },
  report: (telling, half, module) => report(telling, half, module, 'standby'),
  reflash(telling, half) {
    const { plan, teller, between } = telling;
    if (!plan.reflashes) return;
    teller.wait(between(20, 120));
    teller.reflash(half, teller.state()[otherThan(half)].firmware, between(100, 200));
    telling.start = teller.now();
  },
  times({ teller, start, between }) {
    const elapsed = (teller.now() - start) / 1000;
    return {
      ready: Math.max(between(40, 400), elapsed + between(10, 40)),
      steady: Math.max(between(60, 290), elapsed + between(15, 45)),
    };
  },
  bringUp(telling, half) {
    synchronise(telling, half, telling.acts.times(telling, half));
    telling.teller.wait(telling.between(70, 250));
  },
  switchOver({ teller, between }) {
    teller.switchOver(true);
    teller.wait(between(60, 250));
  },
  soak: ({ teller, between }) => teller.wait(between(1860, 3600)),
};

/** Tells the work of a plan by some acts. */
export function tellSwap(plan: Plan, acts: Acts, random: Random): Teller {
  const teller = tell(plan.pair, plan.from, beginOf(plan));
  const between = (low: number, high: number): number => low + (high - low) * random();
  const chance = (share: number): boolean => random() < share;
  const telling: Telling = { plan, teller, acts, between, chance, start: plan.from, readyAt: plan.from };
  acts.baseline(telling);
  for (const [index, planned] of plan.halves.entries()) {
    const half = acts.pull(telling, planned);
    teller.wait(between(40, 600));
    seat(telling, half);
    acts.report(telling, half, plan.fresh[half]);
    acts.reflash(telling, half);
    acts.bringUp(telling, half);
    if (index < plan.halves.length - 1 || (plan.halves.length === 1 && plan.switchesOver))
      acts.switchOver(telling);
  }
  acts.soak(telling);
  return teller;
}

/** Pushes a module in: until it reports itself the place looks as empty as before. */
export function seat(telling: Telling, half: HalfName): void {
  telling.teller.happen(half, 'inserted');
  telling.start = telling.teller.now();
  telling.teller.wait(telling.between(5, 150));
}

export function report(
  { teller }: Telling,
  half: HalfName,
  module: Module,
  role: 'active' | 'standby' | 'none',
): void {
  if (role !== 'active') teller.set(null, 'partner-present', 'yes');
  for (const signal of ['serial', 'model', 'firmware'] as const) teller.set(half, signal, module[signal]);
  teller.set(half, 'link-a', 'up');
  teller.set(half, 'link-b', 'up');
  teller.set(half, 'role', role);
  if (role === 'standby') teller.set(half, 'light', 'flashing');
}

/** Sync start, ready and steady light in the order of their times. */
export function synchronise(telling: Telling, half: HalfName, { ready, steady }: Times): void {
  const { teller, start } = telling;
  const elapsed = (teller.now() - start) / 1000;
  const steps: (readonly [number | null, () => void])[] = [
    [elapsed + 2, () => teller.happen(half, 'sync-start')],
    [ready, () => gainReady(telling)],
    [steady, () => teller.set(half, 'light', 'steady')],
  ];
  for (const [seconds, step] of steps.sort(([a], [b]) => (a ?? 0) - (b ?? 0))) {
    if (seconds === null) continue;
    until(teller, Math.round(start + seconds * 1000));
    step();
  }
}

function gainReady(telling: Telling): void {
  telling.teller.set(null, 'partner-ready', 'yes');
  telling.readyAt = telling.teller.now();
}

export function standbyOf({ teller }: Telling): HalfName {
  return teller.state().A.role === 'standby' ? 'A' : 'B';
}

/** The pair loses its ready partner, though the module stays. */
export function lose(telling: Telling): void {
  telling.teller.set(null, 'partner-ready', 'no');
  telling.teller.set(standbyOf(telling), 'light', 'flashing');
}

export function regain(telling: Telling): void {
  telling.teller.set(null, 'partner-ready', 'yes');
  telling.teller.set(standbyOf(telling), 'light', 'steady');
}

/** Goes on to an instant of the soak: so many seconds after the ready partner, or at once where that is over. */
export function intoSoak(telling: Telling, low = 600, high = 1600): void {
  const { teller, between, readyAt } = telling;
  const time = Math.round(readyAt + 1000 * between(low, high));
  until(teller, Math.max(teller.now() + 5000, time));
}
