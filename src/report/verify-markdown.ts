import type { Swap, Verification } from '../vocabulary.ts';
import { cautions } from './cautions.ts';
import { markdown } from './escape.ts';
import { evidenceOf } from './evidence.ts';
import type { ReportOptions } from './report-options.ts';
import { statusWords } from './status-words.ts';
import { sayInstant, sayInstantBounds, sayMeasure } from './words.ts';

/** The report on one swap as Markdown (CommonMark with tables), for a ticket or a mail. */
export function verifyMarkdown(verification: Verification, swap: Swap, options: ReportOptions): string {
  const evidence = evidenceOf(swap);
  const blocks = [
    `# Replacement of ${md(swap.pair)}`,
    `**${md(swap.statement)}**`,
    work(verification, swap, options),
    '## Before and after',
    halves(swap),
    '## Steps',
    steps(swap, options),
    '## Checks',
    table(
      ['What must hold', 'Outcome', 'Why'],
      swap.checks.map((c) => [
        md(c.title),
        c.status === 'pass' ? statusWords.pass : `**${statusWords[c.status]}**`,
        md(c.statement),
      ]),
    ),
    `## Exposure\n\nWithout a ready partner: ${sayMeasure({ ...swap.exposure, censored: false, outcome: null })}.`,
    '## Findings and quality of the data',
    remarks(verification, swap),
    '## Files',
    table(
      ['File', 'Layout', 'Rows', 'SHA-256'],
      verification.inputs.map((i) => [md(i.file), md(i.layout), String(i.rows.read), i.sha256]),
    ),
    '## Evidence',
    evidence.lines.map((l, index) => `${index + 1}. ${md(l.file)}:${l.line} ${md(l.text)}`).join('\n'),
    '## Cautions',
    cautions.map((c) => `- ${c}`).join('\n'),
    `Made by Steadypair ${md(options.version)}.`,
  ];
  return `${blocks.join('\n\n')}\n`;
}

function md(text: string | null | undefined): string {
  return markdown(text ?? 'not known');
}

function work({ job }: Verification, swap: Swap, { zone }: ReportOptions): string {
  const period = `${sayInstant(swap.from, zone)} to ${sayInstant(swap.to, zone)} (${zone})`;
  const said = [job?.workOrder, job?.site ?? swap.site, job?.technician, job?.reviewer, period];
  return table(
    ['Work order', 'Site', 'Done by', 'Reviewed by', 'Period'],
    [said.map((text) => markdown(text ?? ''))],
  );
}

function halves(swap: Swap): string {
  return table(
    ['Half', 'Model before', 'after', 'Serial before', 'after', 'Firmware before', 'found', 'after'],
    swap.halves.map(({ half, model, serial, firmware }) =>
      [
        half,
        model.before,
        model.after,
        serial.before,
        serial.after,
        firmware.before,
        firmware.found,
        firmware.after,
      ].map(md),
    ),
  );
}

function steps(swap: Swap, { zone }: ReportOptions): string {
  return table(
    ['Time', 'What happened', 'Duration, with bounds'],
    swap.steps.map((s) => [
      sayInstantBounds(s, zone, swap.from),
      md(s.statement),
      s.duration === null ? '' : sayMeasure(s.duration),
    ]),
  );
}

function remarks({ findings }: Verification, swap: Swap): string {
  const told = findings.filter((f) => f.pair === null || f.pair === swap.pair);
  const lines = told.map((f) => `- ${f.severity === 'info' ? '' : `${f.severity}: `}${md(f.statement)}`);
  return lines.length === 0 ? 'Nothing to remark.' : lines.join('\n');
}

function table(header: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [line(header), line(header.map(() => '---')), ...rows.map(line)].join('\n');
}
