import type { Diagnosis } from '../vocabulary.ts';
import { byFile, type EvidenceList, evidenceBehind } from './evidence.ts';

/** The numbered lines behind a diagnosis: its causes, what was doubted, and the stages of the last attempt. */
export function evidenceOfDiagnosis({ causes, doubted, attempts }: Diagnosis): EvidenceList {
  return byFile(
    evidenceBehind([
      ...causes.flatMap((c) => [...c.for, ...c.against]),
      ...(attempts.at(-1)?.stages ?? []),
      ...doubted.flatMap((d) => d.against.slice(0, 1)),
    ]),
  );
}
