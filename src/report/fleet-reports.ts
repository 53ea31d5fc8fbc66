import type { Fleet } from '../vocabulary.ts';
import { fleetHtml } from './fleet-html.ts';
import { fleetJson } from './fleet-json.ts';
import { fleetMarkdown } from './fleet-markdown.ts';
import { fleetTables } from './fleet-tables.ts';
import type { ReportOptions } from './report-options.ts';

/** The files of a fleet review: HTML, Markdown, the JSON document and a CSV for each table. */
export async function fleetReports(
  fleet: Fleet,
  options: ReportOptions,
): Promise<readonly { readonly name: string; readonly text: string }[]> {
  return [
    { name: 'fleet.html', text: await fleetHtml(fleet, options) },
    { name: 'fleet.md', text: fleetMarkdown(fleet, options) },
    { name: 'fleet.json', text: fleetJson(fleet) },
    ...fleetTables(fleet),
  ];
}
