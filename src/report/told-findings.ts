import { type Finding, mayConcern, type Swap, type Verification } from '../vocabulary.ts';

/** The findings that a report on a swap or a diagnosis tells: those of its pair in its time, and those about the files. */
export function toldFindings(
  { findings }: Pick<Verification, 'findings'>,
  { pair, from, to }: Pick<Swap, 'pair' | 'from' | 'to'>,
): readonly Finding[] {
  return findings.filter(
    (f) => mayConcern(f, pair) && (f.pair === null || ((f.to ?? from) >= from && (f.from ?? to) <= to)),
  );
}
