import { type StaffState, type StaffStateKind, sayDuration } from '../vocabulary.ts';
import { terminal } from './escape.ts';

const words: Readonly<Record<Exclude<StaffStateKind, 'past-limit'>, string>> = {
  'two-active': 'two active',
  'none-active': 'none active',
  'no-ready-partner': 'no ready partner',
  flapping: 'flapping',
  'firmware-differs': 'firmware differs',
  'models-differ': 'models differ',
  unobserved: 'unobserved',
};

/** What a state is called on the staff. `limitSeconds` is the limit of a bring-up. */
export function nameState(kind: StaffStateKind, limitSeconds: number): string {
  return kind === 'past-limit' ? `past ${shortLimit(limitSeconds)}` : words[kind];
}

function shortLimit(seconds: number): string {
  return seconds % 60 === 0 ? `${seconds / 60} min` : sayDuration(seconds);
}

/**
 * A state, or several of a kind told as one, as its label says it: `no ready partner 17 min 08 s`,
 * `no ready partner 37 times, 4 h 12 min`.
 */
export function sayState(
  { kind, half, seconds, count, losses, goesOn }: StaffState,
  limitSeconds: number,
): string {
  const name = nameState(kind, limitSeconds);
  const lasted = sayDuration(seconds);
  if (kind === 'flapping')
    return count > 1 ? `${name} ${count} times, ${losses} losses` : `${name}, ${losses} losses in ${lasted}`;
  if (count > 1) return `${name} ${count} times, ${lasted}`;
  if (kind === 'past-limit') return `${half === null ? '' : `${terminal(half)} `}${name} by ${lasted}`;
  return `${name} ${goesOn ? 'for more than ' : ''}${lasted}`;
}
