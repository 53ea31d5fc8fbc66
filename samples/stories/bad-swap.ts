import { atRest, type Story, tell, until } from '../story.ts';

const active = { model: 'Tern-4', serial: 'T4-20790', firmware: '6.4.1' };
const old = { model: 'Tern-2', serial: 'T2-10447', firmware: '6.4.1' };
const fresh = { model: 'Tern-4', serial: 'T4-20831', firmware: '6.2.0' };

/**
 * 17 March 2026: the standby of RO3 is replaced, never reflashed to the firmware of the active half, its light never
 * becomes steady, and the roles are switched over before the partner is ready.
 */
export function badSwap(): Story {
  const teller = tell('RO3', Date.UTC(2026, 2, 17, 13, 5, 0), atRest(active, old));
  until(teller, Date.UTC(2026, 2, 17, 13, 32, 40, 300));
  teller.remove('B');
  teller.wait(120.4);
  teller.insert('B', fresh);
  teller.wait(62);
  teller.happen('B', 'sync-start');
  teller.wait(98.5);
  teller.happen('B', 'sync-failed');
  teller.wait(340);
  teller.switchOver(true);
  teller.wait(18);
  teller.set('A', 'light', 'flashing');
  teller.wait(600);
  teller.switchOver(true);
  teller.set('B', 'light', 'flashing');
  teller.wait(25 * 60);
  return teller.story();
}
