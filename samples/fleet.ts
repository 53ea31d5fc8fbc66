import { type Random, seeded } from './random.ts';
import { atRest, type HalfName, type Module, type Story, type Teller, tell, until } from './story.ts';

/** What is injected into one pair: its losses as a process whose rate may grow, and the work done on it. */
export interface PairPlan {
  readonly pair: string;
  readonly lossesPerYear: number;
  /** Exponent of the power law of the losses: 1 keeps one rate, above 1 it grows. */
  readonly growth: number;
  /** When both halves were reflashed to the new firmware; `null`: never. */
  readonly reflashedAt: number | null;
  /** When both modules were swapped; `null`: never. */
  readonly swappedAt: number | null;
}

/** One pair as it was told, with the instants of the losses that were injected (milliseconds UTC). */
export interface ToldPair {
  readonly plan: PairPlan;
  readonly story: Story;
  readonly losses: readonly number[];
}

export const fleetFrom = Date.UTC(2024, 10, 1);
export const fleetTo = Date.UTC(2026, 10, 1);
const oldFirmware = '6.2.0';
export const newFirmware = '6.4.1';
/** Median seconds from a start to the ready partner, by firmware: the new one takes 1.7 times as long. */
export const medianSyncSeconds: Readonly<Record<string, number>> = { [oldFirmware]: 80, [newFirmware]: 136 };
export const restartsPerYear = 4;
const syncSpread = 0.12;
const yearMs = 365.25 * 86_400_000;
const dayMs = 86_400_000;
/** Two things never happen within this time: the pair had settled before. */
const apartMs = 4 * 3_600_000;

/** The eight pairs: RO2 loses its partner six times as often as it should, OUTFALL more and more often. */
export const fleetPlans: readonly PairPlan[] = [
  planOf('INTAKE', 2, 1, null, Date.UTC(2026, 1, 10, 9)),
  planOf('PRETREAT', 2, 1, Date.UTC(2025, 7, 5, 9), Date.UTC(2025, 10, 12, 9)),
  planOf('RO1', 2, 1, Date.UTC(2025, 7, 12, 9), Date.UTC(2025, 11, 3, 9)),
  planOf('RO2', 12, 1, Date.UTC(2025, 7, 19, 9), null),
  planOf('RO3', 2, 1, Date.UTC(2025, 8, 2, 9), Date.UTC(2026, 0, 14, 9)),
  planOf('RO4', 2, 1, Date.UTC(2025, 8, 9, 9), Date.UTC(2026, 2, 4, 9)),
  planOf('REMIN', 2, 1, null, null),
  planOf('OUTFALL', 9, 2.5, Date.UTC(2025, 8, 23, 9), null),
];

function planOf(
  pair: string,
  lossesPerYear: number,
  growth: number,
  reflashedAt: number | null,
  swappedAt: number | null,
): PairPlan {
  return { pair, lossesPerYear, growth, reflashedAt, swappedAt };
}

/** Two years of the fleet, the same for the same plans and seed. */
export function tellFleet(plans: readonly PairPlan[], seed: number): readonly ToldPair[] {
  return plans.map((plan, place) => tellPair(plan, place, seeded(seed * 1000 + place)));
}

type Act = (telling: Telling) => void;

interface Telling {
  readonly teller: Teller;
  readonly random: Random;
  readonly losses: number[];
  /** The next serial number of a new module. */
  serial: number;
}

function tellPair(plan: PairPlan, place: number, random: Random): ToldPair {
  const module = (serial: number): Module => ({
    model: 'Tern-2',
    serial: `T2-${10_400 + 2 * place + serial}`,
    firmware: oldFirmware,
  });
  const teller = tell(plan.pair, fleetFrom, atRest(module(0), module(1)));
  const telling: Telling = { teller, random, losses: [], serial: 20_800 + 2 * place };
  const planned = [
    ...arrivals(plan.lossesPerYear, plan.growth, random).map((time) => [time, lose] as const),
    ...arrivals(restartsPerYear, 1, random).map((time) => [time, restart] as const),
    ...(plan.reflashedAt === null ? [] : [[plan.reflashedAt, reflashBoth] as const]),
    ...(plan.swappedAt === null ? [] : [[plan.swappedAt, swapBoth] as const]),
  ];
  for (const [time, act] of planned.sort(([a], [b]) => a - b) satisfies (readonly [number, Act])[]) {
    const begin = Math.max(time, teller.now() + apartMs);
    if (begin > fleetTo - dayMs) break;
    until(teller, begin);
    act(telling);
  }
  until(teller, fleetTo);
  return { plan, story: teller.story(), losses: telling.losses };
}

/**
 * Instants of a power-law process over the two years: unit arrivals `s` become `T (s / n) ^ (1 / growth)`, `n` the mean
 * number. Source: IEC 61710 (2013), power law model.
 */
function arrivals(perYear: number, growth: number, random: Random): readonly number[] {
  const length = fleetTo - fleetFrom;
  const mean = (perYear * length) / yearMs;
  const times: number[] = [];
  let sum = exponential(random);
  while (sum < mean) {
    times.push(fleetFrom + Math.round(length * (sum / mean) ** (1 / growth)));
    sum += exponential(random);
  }
  return times;
}

/** An exponential number of mean 1. */
function exponential(random: Random): number {
  return -Math.log(1 - random());
}

function lose({ teller, random, losses }: Telling): void {
  const half = standbyOf(teller);
  losses.push(teller.now());
  teller.set(null, 'partner-ready', 'no');
  teller.set(half, 'light', 'flashing');
  teller.wait(5 + 25 * random());
  synchronise(teller, random, half);
}

function restart({ teller, random }: Telling): void {
  const half = standbyOf(teller);
  teller.happen(half, 'restart');
  teller.set(null, 'partner-ready', 'no');
  teller.set(half, 'light', 'flashing');
  synchronise(teller, random, half);
}

function reflashBoth({ teller, random }: Telling): void {
  reflash(teller, random, newFirmware);
  teller.wait(900);
  teller.switchOver(true);
  teller.wait(300);
  reflash(teller, random, newFirmware);
}

function swapBoth(telling: Telling): void {
  swap(telling);
  telling.teller.wait(1200);
  telling.teller.switchOver(true);
  telling.teller.wait(180);
  swap(telling);
}

/** A new module arrives with the old firmware, and is reflashed where its partner runs the new one. */
function swap(telling: Telling): void {
  const { teller, random } = telling;
  const half = standbyOf(teller);
  const wanted = teller.state()[half].firmware;
  teller.remove(half);
  teller.wait(60 + 60 * random());
  teller.insert(half, { model: 'Tern-4', serial: `T4-${telling.serial}`, firmware: oldFirmware });
  telling.serial += 1;
  if (wanted === oldFirmware) synchronise(teller, random, half);
  else {
    teller.wait(30 + 20 * random());
    reflash(teller, random, wanted);
  }
}

function reflash(teller: Teller, random: Random, firmware: string): void {
  const half = standbyOf(teller);
  teller.reflash(half, firmware, 140 + 30 * random());
  synchronise(teller, random, half);
}

function synchronise(teller: Teller, random: Random, half: HalfName): void {
  const median = medianSyncSeconds[teller.state()[half].firmware];
  if (median === undefined) throw new RangeError(`No sync time for ${teller.state()[half].firmware}.`);
  const seconds = median * Math.exp(syncSpread * normal(random));
  teller.synchronise(half, seconds, seconds + 40 + 30 * random());
}

/** A standard normal number, by Box and Muller (The Annals of Mathematical Statistics 29, 1958, p. 610). */
function normal(random: Random): number {
  return Math.sqrt(2 * exponential(random)) * Math.cos(2 * Math.PI * random());
}

function standbyOf(teller: Teller): HalfName {
  return teller.state().A.role === 'standby' ? 'A' : 'B';
}
