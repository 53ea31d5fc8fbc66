import type { SwapNow } from '../vocabulary.ts';
import { sayDuration } from '../vocabulary.ts';
import { inLine } from './panel-fit.ts';
import { capital, sayAwaited, sayConditions, sayHoldPoint, sayMissing } from './panel-words.ts';
import { sayInstant } from './words.ts';

/** A change of a swap on one line, for an output that is no terminal: when, by the log's clock, which pair, and how it stands. */
export function changeLine(now: SwapNow, zone: string): string {
  const { at, pair, awaits, limitSeconds, holdPoint } = now;
  const limit = awaits === null || limitSeconds === null ? '' : `, the limit is ${sayDuration(limitSeconds)}`;
  // What is missing first: the others follow by name.
  const [missing = holdPoint.statement] = sayMissing(holdPoint);
  const stands = `${sayHoldPoint(holdPoint)}. ${missing}`;
  const conditions = capital(sayConditions(holdPoint.conditions));
  return `${sayInstant(at, zone)}  ${inLine(pair)}: ${ended(`${sayAwaited(now)}${limit}`)} ${ended(stands)} ${conditions}.`;
}

/** That a log is silent, and the clock with it. */
export function silentLine({ pair, clock, habitSeconds }: SwapNow, at: number, zone: string): string {
  const habit = sayDuration(habitSeconds ?? 0);
  return `${sayInstant(at, zone)}  ${inLine(pair)}: ${inLine(clock)} is silent: no row for longer than ${habit}. The clock has stopped.`;
}

function ended(sentence: string): string {
  return sentence.endsWith('.') ? sentence : `${sentence}.`;
}
