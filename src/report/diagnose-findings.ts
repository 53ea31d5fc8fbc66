import type { Diagnosis, Finding } from '../vocabulary.ts';
import { toldFindings } from './told-findings.ts';

const mostInText = 10;
const mostInReport = 40;

/** The findings of severity warning or worse of the pair, whenever they were, since the exit status rests on them: the first ten. */
export function warningsOf(diagnosis: Diagnosis): {
  readonly told: readonly Finding[];
  readonly leftOut: number;
} {
  const all = diagnosis.findings.filter((f) => isWarning(f, diagnosis));
  return { told: all.slice(0, mostInText), leftOut: Math.max(0, all.length - mostInText) };
}

/**
 * What a report tells in its section on findings, as that section takes it: those warnings, at most forty, and of the others
 * those about the files and those of the time of the diagnosis.
 */
export function toldOf(
  diagnosis: Diagnosis,
): [Pick<Diagnosis, 'findings' | 'inputs'>, Pick<Diagnosis, 'pair' | 'from' | 'to'>] {
  const { findings, pair } = diagnosis;
  const warnings = findings.filter((f) => isWarning(f, diagnosis)).slice(0, mostInReport);
  const others = toldFindings(diagnosis, diagnosis).filter((f) => !isWarning(f, diagnosis));
  const always = { pair, from: Number.NEGATIVE_INFINITY, to: Number.POSITIVE_INFINITY };
  return [{ inputs: diagnosis.inputs, findings: [...warnings, ...others] }, always];
}

function isWarning({ pair, severity }: Finding, diagnosis: Diagnosis): boolean {
  return pair === diagnosis.pair && severity !== 'info';
}
