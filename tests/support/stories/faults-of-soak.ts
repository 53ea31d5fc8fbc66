import { intoSoak, lose, regain, standbyOf, type Telling } from './acts.ts';
import type { CheckId } from './check-rules.ts';
import type { Fault } from './fault.ts';

/** Something that comes in the soak, and stays. */
function inSoak(id: string, breaks: CheckId, come: (telling: Telling) => void): Fault {
  return {
    id,
    breaks,
    shape: {},
    change: (good) => ({
      soak(telling) {
        intoSoak(telling);
        come(telling);
        good.soak(telling);
      },
    }),
  };
}

function newHalf({ plan }: Telling): 'A' | 'B' {
  return plan.halves.at(-1) ?? plan.halves[0];
}

/** What goes wrong after the last bring-up. */
export const faultsOfSoak: readonly Fault[] = [
  inSoak('light-flashes-again', 'nothing-at-fault', (telling) =>
    telling.teller.set(standbyOf(telling), 'light', 'flashing'),
  ),
  inSoak('supply-fault', 'nothing-at-fault', (telling) =>
    telling.teller.set(newHalf(telling), 'supply', 'fault'),
  ),
  inSoak('module-fault', 'nothing-at-fault', (telling) => telling.teller.happen(newHalf(telling), 'fault')),
  inSoak('link-down', 'links-restored', ({ teller, chance }) =>
    teller.set(chance(0.5) ? 'A' : 'B', chance(0.5) ? 'link-a' : 'link-b', 'down'),
  ),
  inSoak('configuration-pending', 'configuration-current', ({ teller }) =>
    teller.set(null, 'configuration', 'pending'),
  ),
  inSoak('loss-in-soak', 'soaked', (telling) => {
    lose(telling);
    telling.teller.wait(telling.between(2, 180));
    regain(telling);
  }),
  {
    id: 'flapping',
    breaks: 'not-flapping',
    shape: {},
    change: (good) => ({
      soak(telling) {
        const { teller, between } = telling;
        intoSoak(telling, 600, 1000);
        const losses = Math.floor(between(4, 7));
        for (let index = 0; index < losses; index += 1) {
          lose(telling);
          teller.wait(between(5, 60));
          regain(telling);
          teller.wait(between(20, 90));
        }
        good.soak(telling);
      },
    }),
  },
];
