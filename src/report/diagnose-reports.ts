import type { Diagnosis } from '../vocabulary.ts';
import { diagnoseHtml } from './diagnose-html.ts';
import { diagnoseJson } from './diagnose-json.ts';
import { diagnoseMarkdown } from './diagnose-markdown.ts';
import { iso } from './json.ts';
import type { ReportOptions } from './report-options.ts';
import { safeName } from './verify-reports.ts';

/** The files of a diagnosis: HTML, Markdown and the JSON document. Names are safe everywhere. */
export async function diagnoseReports(
  diagnosis: Diagnosis,
  options: ReportOptions,
): Promise<readonly { readonly name: string; readonly text: string }[]> {
  const name = `${safeName(diagnosis.pair)}-diagnosis-${iso(diagnosis.to).slice(0, 10)}`;
  return [
    { name: `${name}.html`, text: await diagnoseHtml(diagnosis, options) },
    { name: `${name}.md`, text: diagnoseMarkdown(diagnosis, options) },
    { name: 'diagnose.json', text: diagnoseJson(diagnosis) },
  ];
}
