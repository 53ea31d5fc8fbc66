import { atRest, type Story, tell, until } from '../story.ts';

/** 11 to 14 March 2026: RO1 up to the quarter of an hour before both of its halves are replaced, with one loss of its partner. */
export function beforeSwap(): Story {
  const module = (serial: string) => ({ model: 'Tern-2', serial, firmware: '6.4.1' });
  const teller = tell('RO1', Date.UTC(2026, 2, 11, 8, 0, 0), atRest(module('T2-10441'), module('T2-10442')));
  until(teller, Date.UTC(2026, 2, 12, 3, 12, 44, 318));
  teller.set(null, 'partner-ready', 'no');
  teller.set('B', 'light', 'flashing');
  teller.wait(4.2);
  teller.synchronise('B', 88.604, 151.917);
  until(teller, Date.UTC(2026, 2, 14, 8, 51, 30));
  return teller.story();
}
