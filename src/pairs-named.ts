import { InputError } from './import/bytes/input-error.ts';
import type { PairFacts } from './timeline/facts.ts';

/** The facts of one pair, or of all. Throws InputError, naming the pairs there are, if it is not among them. */
export function pairsNamed(
  { facts }: { readonly facts: readonly PairFacts[] },
  pair: string | null,
): readonly PairFacts[] {
  if (pair === null) return facts;
  const found = facts.filter((f) => f.timeline.pair === pair);
  if (found.length > 0) return found;
  const inAnyCase = facts.filter((f) => f.timeline.pair.toLowerCase() === pair.toLowerCase());
  if (inAnyCase.length === 1) return inAnyCase;
  const names = facts.map((f) => f.timeline.pair).join(', ');
  throw new InputError(
    `pair ${pair}`,
    'no file names that pair.',
    names === '' ? 'The files name no pair.' : `Choose one of ${names}.`,
  );
}

/** Refuses files that speak of no pair; `command` is what was asked of them. */
export function noPairNamed(command: string): InputError {
  return new InputError(
    command,
    'the files name no pair.',
    'See how they were read.',
    'unreadable',
    'reading',
  );
}
