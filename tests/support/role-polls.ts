import type { Signal } from '../../src/vocabulary.ts';
import { type Polled, pollText } from './clean-swap.ts';
import { eventLine, factsOfPair, type Told, whenOf } from './pair-facts.ts';

/** The events of some signals, each in a line. */
export async function eventsTold(story: Told, ...signals: readonly Signal[]): Promise<readonly string[]> {
  return (await factsOfPair(story)).timeline.events.filter((e) => signals.includes(e.signal)).map(eventLine);
}

/** The switchovers, each with its bounds and from which half to which. */
export async function switchoversTold(story: Told): Promise<readonly string[]> {
  return (await factsOfPair(story)).switchovers.map((s) => `${whenOf(s.at)} ${s.fromHalf}>${s.toHalf}`);
}

/** Polled every 10 s from 10:00:00 to 10:10:00 under the names of the roles, without a word about slots. */
export function polledRoles(
  ...values: readonly (readonly [string, ...(readonly [string, string])[]])[]
): Told {
  const columns = values.map(([parameter, ...rest]): Polled => ['RO1', parameter, ...rest]);
  return { 'poll.csv': pollText(['10:00:00', '10:10:00'], 10, columns) };
}
