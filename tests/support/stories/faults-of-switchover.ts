import { lose, regain, standbyOf, type Telling } from './acts.ts';
import type { Fault } from './fault.ts';
import { otherThan } from './plan.ts';

/** The roles change hands by command, so many seconds apart: neither half is active meanwhile, or both are. */
function handOver({ teller }: Telling, kind: 'neither' | 'both', seconds: number): void {
  const old = teller.state().A.role === 'active' ? 'A' : 'B';
  const next = otherThan(old);
  const leave = (): void => {
    teller.happen(null, 'switchover');
    teller.set(old, 'role', 'standby');
  };
  const take = (): void => {
    teller.set(next, 'role', 'active');
    teller.set(next, 'light', 'off');
  };
  const [first, second] = kind === 'neither' ? [leave, take] : [take, leave];
  teller.happen(null, 'switchover-command');
  teller.wait(0.6);
  first();
  teller.wait(seconds);
  second();
  teller.set(old, 'light', 'steady');
}

/** Some seconds, or longer than any poll can hide. */
function conflict(id: string, kind: 'neither' | 'both'): Fault {
  return {
    id,
    breaks: 'never-without-active',
    shape: { switchesOver: true },
    change: () => ({
      switchOver(telling) {
        const { teller, between, chance } = telling;
        handOver(telling, kind, chance(0.5) ? between(2, 30) : between(380, 600));
        teller.wait(between(60, 250));
      },
    }),
  };
}

/** What goes wrong as the roles are exchanged. */
export const faultsOfSwitchover: readonly Fault[] = [
  {
    id: 'switchover-not-ready',
    breaks: 'ready-before-switchover',
    shape: { switchesOver: true },
    change: () => ({
      switchOver(telling) {
        const { teller, between } = telling;
        lose(telling);
        teller.wait(between(5, 150));
        teller.switchOver(true);
        teller.set(standbyOf(telling), 'light', 'flashing');
        teller.wait(between(60, 200));
        regain(telling);
        teller.wait(between(70, 250));
      },
    }),
  },
  {
    id: 'switchover-not-held',
    breaks: 'ready-before-switchover',
    shape: { switchesOver: true },
    change: (good) => ({
      switchOver(telling) {
        const { teller, between } = telling;
        lose(telling);
        teller.wait(between(20, 150));
        regain(telling);
        teller.wait(between(3, 50));
        good.switchOver(telling);
      },
    }),
  },
  {
    id: 'switchover-by-itself',
    breaks: 'switchover-commanded',
    shape: { switchesOver: true },
    change: () => ({
      switchOver({ teller, between }) {
        teller.switchOver(false);
        teller.wait(between(60, 250));
      },
    }),
  },
  conflict('neither-active', 'neither'),
  conflict('both-active', 'both'),
  {
    id: 'gap-under-a-second',
    breaks: null,
    shape: { switchesOver: true },
    change: () => ({
      switchOver(telling) {
        handOver(telling, 'neither', telling.between(0.5, 0.9));
        telling.teller.wait(telling.between(60, 250));
      },
    }),
  },
];
