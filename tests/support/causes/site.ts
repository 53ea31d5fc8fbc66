import { type Act, pause } from './acts.ts';
import { type Bench, benchOf, type Tale } from './bench.ts';
import type { Chance } from './chance.ts';
import { keepSound, losesOnce, restartsWell, switchesOver } from './neighbours.ts';

/** A site: the pair in question and the others, each with a clock of its own until `talesOf` brings them to one end. */
export interface Site {
  readonly act: Act;
  readonly others: readonly Act[];
  readonly chance: Chance;
  /** When the trouble began: the end of the last `goBefore`. */
  readonly begun: { time: number };
}

const names = [
  'PRETREAT',
  'RO1',
  'RO2',
  'RO3',
  'RO4',
  'REMIN',
  'OUTFALL',
  'INTAKE',
  'DOSING',
  'BRINE',
  'POLISH',
  'WASH1',
  'WASH2',
];

export interface Fleet {
  readonly pairs: number;
  /** The firmware of each pair, by its place; the first is the pair in question. */
  readonly firmware?: (place: number) => string;
  readonly beside?: (act: Act) => void;
}

/** A site of so many pairs, all as they should be. */
export function siteOf(
  chance: Chance,
  { pairs, firmware = () => '6.4.1', beside = () => undefined }: Fleet,
): Site {
  const from = Date.UTC(2026, 8, chance.whole(1, 28), chance.whole(0, 23), chance.whole(0, 59));
  const halves = chance.pick<readonly [string, string]>(['A', 'B'], ['A', 'B'], ['1', '2'], ['B', 'A']);
  const first = chance.whole(0, names.length - 1);
  const acts = Array.from({ length: pairs }, (_, place): Act => {
    const pair = names[(first + place) % names.length] ?? `P${place}`;
    const module = (index: number): Parameters<typeof benchOf>[2]['modules'][0] => ({
      model: 'Tern-4',
      serial: `${pair}-${index}`,
      firmware: firmware(place),
    });
    const fitted = {
      halves,
      modules: [module(1), module(2)] as const,
      loads: [chance.between(25, 70), chance.between(5, 20)] as const,
      memory: chance.between(3e6, 5e6),
    };
    return { bench: benchOf(pair, from, fitted), chance, beside: place === 0 ? beside : () => undefined };
  });
  const [act, ...others] = acts;
  if (act === undefined) throw new RangeError('A site has at least one pair.');
  return { act, others, chance, begun: { time: from } };
}

/** What was before the trouble: a quiet time, with or without normal work in it. */
export function goBefore({ act, chance, begun }: Pick<Site, 'act' | 'chance' | 'begun'>): void {
  pause(act, 600, 2500);
  for (let index = chance.whole(0, 2); index > 0; index -= 1) {
    chance.pick(restartsWell, switchesOver, losesOnce)(act);
    pause(act, 400, 2000);
  }
  begun.time = act.bench.now();
}

export function waitUntil(bench: Bench, time: number): void {
  if (time > bench.now()) bench.wait((time - bench.now()) / 1000);
}

/** Every pair to the end of the log of the one in question; the others are sound from where they are. */
export function talesOf({ act, others }: Site, isCalm = false): readonly Tale[] {
  const to = act.bench.now();
  for (const other of others) keepSound(other, to, isCalm);
  return [act, ...others].map(({ bench }) => bench.tale(to));
}
