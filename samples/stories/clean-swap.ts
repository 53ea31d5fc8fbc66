import { atRest, type Story, tell, until } from '../story.ts';

const tern2a = { model: 'Tern-2', serial: 'T2-10441', firmware: '6.4.1' };
const tern2b = { model: 'Tern-2', serial: 'T2-10442', firmware: '6.4.1' };
/** New modules arrive with older firmware than the pair runs, and are reflashed to match it. */
const tern4a = { model: 'Tern-4', serial: 'T4-20815', firmware: '6.2.0' };
const tern4b = { model: 'Tern-4', serial: 'T4-20816', firmware: '6.2.0' };

/** 14 March 2026: both halves of RO1 replaced, one after the other, as it should be done. */
export function cleanSwap(): Story {
  const teller = tell('RO1', Date.UTC(2026, 2, 14, 8, 52, 0), atRest(tern2a, tern2b));
  until(teller, Date.UTC(2026, 2, 14, 9, 14, 5, 212));
  teller.remove('B');
  teller.wait(94.6);
  teller.insert('B', tern4b);
  teller.wait(41.3);
  teller.reflash('B', '6.4.1', 152.8);
  teller.synchronise('B', 142.412, 262.306);
  until(teller, Date.UTC(2026, 2, 14, 9, 41, 10, 450));
  teller.switchOver(true);
  teller.wait(182.5);
  teller.remove('A');
  teller.wait(88.9);
  teller.insert('A', tern4a);
  teller.wait(37.2);
  teller.reflash('A', '6.4.1', 149.5);
  teller.synchronise('A', 151.733, 271.894);
  teller.wait(35 * 60);
  return teller.story();
}
