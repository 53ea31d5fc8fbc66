import { isStateSignal, type Signal, stateValues } from '../../vocabulary.ts';

/** What a state is where its condition no longer stands: the other one of two values; `null` where it has not just two. */
export function oppositeOf(signal: Signal, value: string): string | null {
  if (!isStateSignal(signal)) return null;
  const values: readonly string[] = stateValues[signal] ?? [];
  if (values.length !== 2 || !values.includes(value)) return null;
  return values.find((other) => other !== value) ?? null;
}
