import type { HalfName } from '../../../samples/story.ts';
import { lose, report, synchronise, type Telling, type Times } from './acts.ts';
import type { Fault } from './fault.ts';

/** Other times for the half that is replaced last. */
function withTimes(
  id: string,
  breaks: Fault['breaks'],
  shape: Fault['shape'],
  otherwise: (times: Times, telling: Telling) => Times,
): Fault {
  return {
    id,
    breaks,
    shape,
    change: (good) => ({
      times(telling, half) {
        const times = good.times(telling, half);
        return isLast(telling, half) ? otherwise(times, telling) : times;
      },
    }),
  };
}

function isLast({ plan }: Telling, half: HalfName): boolean {
  return half === plan.halves.at(-1);
}

/** What goes wrong from the first report of a new module to its steady light. */
export const faultsOfBringUp: readonly Fault[] = [
  {
    id: 'never-standby-in-time',
    breaks: 'identified-standby',
    shape: {},
    change: () => ({
      report(telling, half, module) {
        report(telling, half, module, isLast(telling, half) ? 'none' : 'standby');
        if (!isLast(telling, half)) return;
        telling.teller.wait(telling.between(910, 1500));
        telling.teller.set(half, 'role', 'standby');
        telling.teller.set(half, 'light', 'flashing');
      },
    }),
  },
  {
    id: 'firmware-differs',
    breaks: 'firmware-matched',
    shape: { reflashes: true, switchesOver: true },
    change: () => ({ reflash: () => undefined }),
  },
  withTimes('sync-late', 'synchronised', {}, ({ steady }, { between, chance }) => {
    const ready = between(902, 1600);
    return { ready, steady: chance(0.5) ? steady : ready + between(1, 60) };
  }),
  withTimes('sync-never', 'synchronised', { switchesOver: false }, () => ({ ready: null, steady: null })),
  {
    id: 'ready-not-held',
    breaks: 'synchronised',
    shape: { switchesOver: false },
    change: (good) => ({
      bringUp(telling, half) {
        if (!isLast(telling, half)) return good.bringUp(telling, half);
        const { teller, between } = telling;
        synchronise(telling, half, { ...good.times(telling, half), steady: null });
        teller.wait(between(5, 50));
        lose(telling);
        teller.wait(between(600, 1500));
      },
    }),
  },
  withTimes('light-late', 'light-steady', {}, (times, { between }) => ({
    ...times,
    steady: between(301, 500),
  })),
  withTimes('light-never', 'light-steady', { switchesOver: false }, (times) => ({ ...times, steady: null })),
  {
    id: 'links-crossed',
    breaks: 'links-restored',
    shape: {},
    change: (good) => ({
      report(telling, half, module) {
        good.report(telling, half, module);
        if (isLast(telling, half)) telling.teller.set(half, 'links', 'crossed');
      },
    }),
  },
  {
    id: 'models-differ',
    breaks: 'models-matched',
    shape: { both: false, modelsDiffer: true },
    change: () => ({}),
  },
  withTimes('light-at-the-limit', null, {}, (times, { between }) => ({
    ...times,
    steady: between(293, 299.5),
  })),
  withTimes('ready-at-the-limit', null, {}, (times, { between }) => ({ ...times, ready: between(870, 899) })),
];
