import type { Condition, ExpectedTime, HoldPoint, SwapNow } from '../vocabulary.ts';
import { sayDuration } from '../vocabulary.ts';
import { inLine } from './panel-fit.ts';
import { sayCount } from './words.ts';

const before: Readonly<Record<HoldPoint['id'], string>> = {
  removal: 'removal',
  switchover: 'switchover',
  leaving: 'leaving the cabinet',
};

/** What is waited for, or what is so where nothing is; without its pair. */
export function sayAwaited({ awaits, says, swap }: Pick<SwapNow, 'awaits' | 'says' | 'swap'>): string {
  if (awaits !== null) return `Waiting for ${inLine(says)}`;
  return swap === null ? capital(inLine(says)) : `The swap is over: ${swap.verdict.replace('-', ' ')}`;
}

/** A hold point with its status word: `Hold point before removal of half A: waiting`. */
export function sayHoldPoint({ id, half, status }: HoldPoint): string {
  const link = id === 'switchover' ? 'to' : 'of';
  const of = half === null || id === 'leaving' ? '' : ` ${link} half ${inLine(half)}`;
  return `Hold point before ${before[id]}${of}: ${status}`;
}

/** The conditions by name, those that are not met first: `not met: ready, steady B; met: roles`. */
export function sayConditions(conditions: readonly Condition[]): string {
  const [open, met] = [notMet(conditions), conditions.filter((c) => c.status === 'met')];
  return [
    ...(open.length === 0 ? [] : [`not met: ${open.map(nameOf).join(', ')}`]),
    ...(met.length === 0 ? [] : [`met: ${met.map(nameOf).join(', ')}`]),
  ].join('; ');
}

/** What is missing, the worst first; where nothing is, what the hold point says. */
export function sayMissing({ conditions, statement }: HoldPoint): readonly string[] {
  const open = notMet(conditions).map((c) => inLine(c.statement));
  return open.length === 0 ? [inLine(statement)] : open;
}

function notMet(conditions: readonly Condition[]): readonly Condition[] {
  return (['stop', 'waiting'] as const).flatMap((status) => conditions.filter((c) => c.status === status));
}

/** Conditions whose id is too short to be read alone. */
const names: Readonly<Record<string, string>> = {
  in: 'module in',
  reflash: 'firmware',
  fault: 'nothing at fault',
  identity: 'identity known',
};

function nameOf({ id, half }: Condition): string {
  const name = names[id] ?? inLine(id).replaceAll('-', ' ');
  return `${name}${half === null ? '' : ` ${inLine(half)}`}`;
}

/** How long what is waited for takes here, as far as that is known. */
export function sayExpected(expected: ExpectedTime | null): string {
  if (expected === null) return 'Usual time here: not known';
  const { median, p95, n } = expected;
  if (median === null) return `Usual time here: not known (n = ${n})`;
  const high = p95 === null ? 'not known' : sayDuration(p95);
  return `Usual here: median ${sayDuration(median)}, 95th percentile ${high}, n = ${n}`;
}

/** How many checks of the swap failed so far; empty where none did. */
export function sayFailed({ swap }: Pick<SwapNow, 'swap'>): string {
  const failed = swap?.checks.filter((c) => c.status === 'fail').length ?? 0;
  return failed === 0 ? '' : `${capital(sayCount(failed, 'check'))} failed`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
