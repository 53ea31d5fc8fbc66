import { fleet } from '../../src/pipeline.ts';
import type { Fleet, PairReview } from '../../src/vocabulary.ts';
import { analyseTexts } from './read-text.ts';

export const day = 86_400_000;
export const begin = Date.UTC(2026, 0, 1);

/** A line of a journal on a day, counted from the begin, of the whole or a part. */
export function lineOn(onDay: number, text: string): string {
  return `${new Date(begin + onDay * day).toISOString()} ${text}`;
}

/** A pair that loses its partner for a minute on each of some days; both halves are known, and ready at the end. */
export function lossLog(
  pair: string,
  days: number,
  lossDays: readonly number[],
  ...others: readonly string[]
): string {
  const states = [
    `${pair} partner ready`,
    ...['A', 'B'].flatMap((half) => [
      `${pair}-${half} role ${half === 'A' ? 'active' : 'standby'}`,
      `${pair}-${half} model Tern-4`,
    ]),
  ];
  const losses = lossDays.flatMap((at) => [
    lineOn(at, `${pair} partner not ready`),
    lineOn(at + 1 / 1440, `${pair} partner ready`),
  ]);
  return [
    ...states.map((text) => lineOn(0, text)),
    ...losses,
    ...others,
    lineOn(days, `${pair}-A light off`),
  ].join('\n');
}

/** The firmware of both halves from a day on. */
export function firmwareFrom(pair: string, onDay: number, firmware: string): readonly string[] {
  return ['A', 'B'].map((half) => lineOn(onDay, `${pair}-${half} firmware ${firmware}`));
}

/** The review of some logs, a file each. */
export async function reviewLogs(logs: readonly string[], by: Fleet['by'] = 'firmware'): Promise<Fleet> {
  const files = Object.fromEntries(logs.map((log, index) => [`${index}.log`, `${log}\n`]));
  return fleet(await analyseTexts(files), { by, swaps: 10 });
}

/** A pair of a review. Throws if it is not there. */
export function pairIn({ pairs }: Fleet, name: string): PairReview {
  const found = pairs.find((p) => p.pair === name);
  if (found === undefined) throw new Error(`There is no pair ${name}.`);
  return found;
}

/** So many days, evenly apart, from one to another. */
export function daysFrom(from: number, to: number, count: number): readonly number[] {
  return Array.from({ length: count }, (_, index) => from + ((index + 0.5) * (to - from)) / count);
}
