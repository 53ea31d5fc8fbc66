import { type Act, moduleIn, pause, pull, restart, seat, syncBadly } from './acts.ts';

/** How a person, or the controller itself, tries again: a sync alone, after a restart, after pulling and seating the module. */
export type Try = 'sync' | 'restart' | 'reseat';

export interface Tries {
  readonly count: number;
  readonly kinds?: readonly [Try, ...Try[]];
  /** Seconds from the start of a sync to its end; irregular unless said. */
  readonly lasting?: (act: Act) => number;
  /** Also some that end without a line: nothing comes of them, until the next. */
  readonly silent?: boolean;
  /** Links that come up when a module is put back; all unless said. */
  readonly links?: readonly string[];
}

/** So many tries that come to nothing, with times between them that keep no pattern. */
export function tryInVain(act: Act, tries: Tries): void {
  const { chance } = act;
  for (let index = 0; index < tries.count; index += 1) {
    if (index > 0) pause(act, 30, chance.pick(200, 900));
    tryOnce(act, tries);
  }
}

/** One try; the standby is there and not ready when it begins. */
function tryOnce(
  act: Act,
  { kinds = ['sync', 'sync', 'restart', 'reseat'], lasting = irregular, silent = true, links }: Tries,
): void {
  const { bench, chance } = act;
  const kind = chance.pick(...kinds);
  if (kind === 'restart') restart(act);
  if (kind === 'reseat') {
    const module = moduleIn(bench, bench.standby());
    pull(act);
    bench.wait(chance.between(20, 120));
    seat(act, module, links);
  }
  bench.wait(chance.between(3, 30));
  if (silent && kind !== 'sync' && chance.percent(30)) bench.wait(chance.between(330, 700));
  else syncBadly(act, lasting(act));
}

/** How long a sync lasts that fails for a reason of its own. */
export function irregular({ chance }: Act): number {
  return Math.max(4, chance.around(70, 0.8));
}
