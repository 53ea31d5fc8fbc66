import type { WorkSheet } from '../vocabulary.ts';
import { iso } from './json.ts';
import { prepareHtml } from './prepare-html.ts';
import { prepareJson } from './prepare-json.ts';
import { prepareMarkdown } from './prepare-markdown.ts';
import type { ReportOptions } from './report-options.ts';
import { type ReportFile, safeName } from './verify-reports.ts';

/** The files of a work sheet: HTML, Markdown and the JSON document. Names are safe everywhere. */
export function prepareReports(sheet: WorkSheet, options: ReportOptions): readonly ReportFile[] {
  const name = `${safeName(sheet.pair)}-work-sheet-${iso(sheet.asOf.time).slice(0, 10)}`;
  return [
    { name: `${name}.html`, text: prepareHtml(sheet, options) },
    { name: `${name}.md`, text: prepareMarkdown(sheet, options) },
    { name: 'prepare.json', text: prepareJson(sheet) },
  ];
}
