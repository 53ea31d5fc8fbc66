import { compareText, type NonEmpty, type SourceLine, type Swap } from '../vocabulary.ts';

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

/** The same lines, numbered in the order of their files and line numbers: what a person looks up in print. */
export function byFile(evidence: EvidenceList): EvidenceList {
  const lines = evidence.lines.toSorted((a, b) => compareText(a.file, b.file) || a.line - b.line);
  return { lines, leftOut: evidence.leftOut, numbersOf: numbersIn(lines) };
}

/** The lines behind the checks and steps of a swap. */
export function evidenceOf(swap: Swap): EvidenceList {
  return evidenceBehind([...swap.checks, ...swap.steps]);
}

/** Collects the lines behind some things, each once, in the order in which they are first cited; `most` of them at most. */
export function evidenceBehind(
  things: readonly { readonly evidence: NonEmpty<SourceLine> }[],
  most = mostLines,
): EvidenceList {
  const cited = things.flatMap((thing) => thing.evidence.slice(0, mostPerThing));
  const unique = new Map(cited.map((line) => [keyOf(line), line]));
  const lines = [...unique.values()].slice(0, most);
  const all = new Set(things.flatMap((thing) => thing.evidence.map(keyOf)));
  return { lines, leftOut: all.size - lines.length, numbersOf: numbersIn(lines) };
}

function numbersIn(lines: readonly SourceLine[]): EvidenceList['numbersOf'] {
  const numbers = new Map(lines.map((line, index) => [keyOf(line), index + 1]));
  return (some) => {
    const found = some.flatMap((line) => numbers.get(keyOf(line)) ?? []).slice(0, mostPerThing);
    return found.sort((a, b) => a - b);
  };
}

function keyOf({ file, line }: SourceLine): string {
  return `${file}\n${line}`;
}
