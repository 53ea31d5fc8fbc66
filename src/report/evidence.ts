import type { NonEmpty, SourceLine, Swap } from '../vocabulary.ts';

/** The numbered lines that a report rests on. */
export interface EvidenceList {
  readonly lines: readonly SourceLine[];
  /** How many more there are, left out for length. */
  readonly leftOut: number;
  /** The numbers of some lines, those that are listed. */
  numbersOf(lines: NonEmpty<SourceLine>): readonly number[];
}

const mostLines = 120;
const mostPerThing = 6;

/** Collects the lines behind the checks and steps of a swap, each once, in the order in which they are first cited. */
export function evidenceOf(swap: Swap): EvidenceList {
  const cited = [...swap.checks, ...swap.steps].flatMap((thing) => thing.evidence.slice(0, mostPerThing));
  const unique = new Map(cited.map((line) => [keyOf(line), line]));
  const lines = [...unique.values()].slice(0, mostLines);
  const numbers = new Map(lines.map((line, index) => [keyOf(line), index + 1]));
  const all = new Set([...swap.checks, ...swap.steps].flatMap((thing) => thing.evidence.map(keyOf)));
  return {
    lines,
    leftOut: all.size - lines.length,
    numbersOf: (some) => some.flatMap((line) => numbers.get(keyOf(line)) ?? []).slice(0, mostPerThing),
  };
}

function keyOf({ file, line }: SourceLine): string {
  return `${file}\n${line}`;
}
