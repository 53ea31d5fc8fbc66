import { lose, regain, report, seat, synchronise } from './acts.ts';
import type { Fault } from './fault.ts';
import { otherThan } from './plan.ts';

/** What goes wrong before the first module is out, or as one comes out. */
export const faultsOfRemoval: readonly Fault[] = [
  {
    id: 'not-ready-before',
    breaks: 'baseline-redundant',
    shape: {},
    change: (good) => ({
      baseline(telling) {
        good.baseline(telling);
        lose(telling);
        telling.teller.wait(telling.between(10, 400));
        regain(telling);
        telling.teller.wait(telling.between(300, 480));
      },
    }),
  },
  {
    id: 'active-pulled',
    breaks: 'removed-standby',
    shape: { both: false, switchesOver: false },
    change: () => ({
      pull({ teller, between }, planned) {
        const active = otherThan(planned);
        teller.remove(active);
        teller.wait(between(0.2, 0.9));
        teller.happen(null, 'switchover');
        teller.set(planned, 'role', 'active');
        teller.set(planned, 'light', 'off');
        return active;
      },
    }),
  },
  {
    id: 'both-out',
    breaks: 'one-half-at-a-time',
    shape: { both: false, switchesOver: false },
    change: () => ({
      pull(telling, planned) {
        const { plan, teller, between } = telling;
        const active = otherThan(planned);
        teller.remove(planned);
        teller.wait(between(20, 200));
        teller.remove(active);
        teller.wait(between(30, 300));
        seat(telling, active);
        report(telling, active, plan.fresh[active], 'active');
        return planned;
      },
    }),
  },
  {
    id: 'second-too-early',
    breaks: 'one-half-at-a-time',
    shape: { both: true },
    change: (good) => ({
      bringUp(telling, half) {
        if (half !== telling.plan.halves[0]) return good.bringUp(telling, half);
        const { ready } = telling.acts.times(telling, half);
        // Not at all ready, or ready for less than the hold time.
        const isReady = telling.chance(0.7);
        synchronise(telling, half, { ready: isReady ? ready : null, steady: null });
        telling.teller.wait(telling.between(2, 25));
      },
      switchOver({ teller, between }) {
        teller.switchOver(true);
        teller.wait(between(2, 25));
      },
    }),
  },
  {
    id: 'lost-and-back-before',
    breaks: null,
    shape: {},
    change: (good) => ({
      baseline(telling) {
        telling.teller.wait(telling.between(30, 200));
        lose(telling);
        telling.teller.wait(telling.between(10, 200));
        regain(telling);
        good.baseline(telling);
      },
    }),
  },
];
