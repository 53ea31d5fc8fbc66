import { diagnoseReports } from '../report/diagnose-reports.ts';
import { shownZone } from '../report/shown-zone.ts';
import { type ReportFile, reportsOf } from '../report/verify-reports.ts';
import type { Diagnosis, Verification } from '../vocabulary.ts';

/** An answer alone, as plain data. */
export type AnswerAlone =
  | { readonly kind: 'verify'; readonly verification: Verification }
  | { readonly kind: 'diagnose'; readonly diagnosis: Diagnosis };

/** The reports of an answer, and its JSON document last. `zone`: what was said, `null` if nothing was. */
export function documentsOf(
  answer: AnswerAlone,
  zone: string | null,
  version: string,
): Promise<readonly ReportFile[]> {
  const { inputs } = answer.kind === 'verify' ? answer.verification : answer.diagnosis;
  const options = { zone: shownZone(zone, inputs), version };
  return answer.kind === 'verify'
    ? reportsOf(answer.verification, options)
    : diagnoseReports(answer.diagnosis, options);
}
