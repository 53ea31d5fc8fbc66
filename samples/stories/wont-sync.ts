import { atRest, type Story, tell } from '../story.ts';

const tern4a = { model: 'Tern-4', serial: 'T4-20774', firmware: '6.4.1' };
const tern4b = { model: 'Tern-4', serial: 'T4-20775', firmware: '6.4.1' };

/**
 * 2 June 2026: network A of the standby of PRETREAT goes down, the pair loses its ready partner, and every attempt to
 * synchronise gives up seconds after the network goes down again; all else is in order. Before that it synchronised once,
 * after a restart, for comparison.
 */
export function wontSync(): Story {
  const teller = tell('PRETREAT', Date.UTC(2026, 5, 2, 0, 20, 0), atRest(tern4a, tern4b));
  const lose = (): void => {
    teller.set(null, 'partner-ready', 'no');
    teller.set('B', 'light', 'flashing');
  };
  teller.wait(1200);
  teller.happen('B', 'restart');
  lose();
  teller.synchronise('B', 138.2, 251.7);
  teller.wait(2400);
  // Seconds that network A was down, then seconds until the next time: irregular, as a bad contact is.
  const faults = [
    [31.4, 402.5],
    [12.2, 655.1],
    [47.9, 231.6],
    [22.6, 508.3],
    [18.8, 344.7],
  ] as const;
  for (const [downSeconds, upSeconds] of faults) {
    teller.set('B', 'link-a', 'down');
    teller.wait(4.3);
    lose();
    teller.wait(downSeconds);
    teller.set('B', 'link-a', 'up');
    teller.wait(9.1);
    teller.happen('B', 'sync-start');
    teller.wait(upSeconds / 4);
    teller.set('B', 'link-a', 'down');
    teller.wait(2.7);
    teller.happen('B', 'sync-failed');
    teller.wait(downSeconds / 2);
    teller.set('B', 'link-a', 'up');
    teller.wait((upSeconds * 3) / 4);
  }
  return teller.story();
}
