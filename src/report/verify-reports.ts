import type { Swap, Verification } from '../vocabulary.ts';
import { iso } from './json.ts';
import type { ReportOptions } from './report-options.ts';
import { verifyHtml } from './verify-html.ts';
import { verifyJson } from './verify-json.ts';
import { verifyMarkdown } from './verify-markdown.ts';

/** A file that is written: its name, safe everywhere, and its text. */
export interface ReportFile {
  readonly name: string;
  readonly text: string;
}

/** The files of a verification: HTML and Markdown for each swap, one JSON document for all. Names are safe everywhere. */
export async function reportsOf(
  verification: Verification,
  options: ReportOptions,
): Promise<readonly ReportFile[]> {
  const perSwap = await Promise.all(
    verification.swaps.map((swap) => reportsOfSwap(verification, swap, options)),
  );
  return [...perSwap.flat(), { name: 'verify.json', text: verifyJson(verification) }];
}

/** HTML and Markdown of one swap of a verification, under the names that they have among those of all its swaps. */
export async function reportsOfSwap(
  verification: Verification,
  swap: Swap,
  options: ReportOptions,
): Promise<readonly ReportFile[]> {
  const base = baseName(swap);
  // Some disks tell no capitals from small letters.
  const earlier = verification.swaps
    .slice(0, verification.swaps.indexOf(swap))
    .filter((s) => baseName(s).toLowerCase() === base.toLowerCase()).length;
  const name = earlier === 0 ? base : `${base}_${earlier + 1}`;
  return [
    { name: `${name}.html`, text: await verifyHtml(verification, swap, options) },
    { name: `${name}.md`, text: verifyMarkdown(verification, swap, options) },
  ];
}

function baseName({ pair, from }: Swap): string {
  return `${safeName(pair)}-swap-${iso(from).slice(0, 10)}`;
}

/** A pair's name in a file name: letters, digits and `-` only, since it comes from a log and must not lead out of the folder. */
export function safeName(pair: string): string {
  return pair.replace(/[^A-Za-z0-9-]+/g, '_').slice(0, 60) || 'pair';
}
