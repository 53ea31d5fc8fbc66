import type { Swap, Verification } from '../vocabulary.ts';
import { cautions } from './cautions.ts';
import { markdown } from './escape.ts';
import { evidenceOf } from './evidence.ts';
import { statusWords } from './verify-html.ts';
import type { ReportOptions } from './verify-reports.ts';
import { sayInstant, sayInstantBounds, sayMeasure } from './words.ts';

/** The report on one swap as Markdown (CommonMark with tables), for a ticket or a mail. */
export function verifyMarkdown(verification: Verification, swap: Swap, { zone, version }: ReportOptions): string {
  const { job, inputs, findings } = verification;
  const evidence = evidenceOf(swap);
  const md = (text: string | null | undefined): string => markdown(text ?? 'not known');
  const told = findings.filter((f) => f.pair === null || f.pair === swap.pair);
  const blocks = [
    `# Replacement of ${md(swap.pair)}`,
    `**${md(swap.statement)}**`,
    table(
      ['Work order', 'Site', 'Done by', 'Reviewed by', 'Period'],
      [[job?.workOrder ?? '', job?.site ?? swap.site ?? '', job?.technician ?? '', job?.reviewer ?? '', `${sayInstant(swap.from, zone)} to ${sayInstant(swap.to, zone)} (${zone})`].map(md)],
    ),
    '## Before and after',
    table(
      ['Half', 'Model before', 'after', 'Serial before', 'after', 'Firmware before', 'found', 'after'],
      swap.halves.map((h) => [h.half, h.model.before, h.model.after, h.serial.before, h.serial.after, h.firmware.before, h.firmware.found, h.firmware.after].map(md)),
    ),
    '## Steps',
    table(
      ['Time', 'What happened', 'Duration, with bounds'],
      swap.steps.map((s) => [sayInstantBounds(s, zone), md(s.statement), s.duration === null ? '' : sayMeasure(s.duration)]),
    ),
    '## Checks',
    table(
      ['What must hold', 'Outcome', 'Why'],
      swap.checks.map((c) => [md(c.title), c.status === 'pass' ? statusWords.pass : `**${statusWords[c.status]}**`, md(c.statement)]),
    ),
    `## Exposure\n\nWithout a ready partner: ${sayMeasure({ ...swap.exposure, censored: false, outcome: null })}.`,
    '## Findings and quality of the data',
    told.length === 0 ? 'Nothing to remark.' : told.map((f) => `- ${f.severity === 'info' ? '' : `${f.severity}: `}${md(f.statement)}`).join('\n'),
    '## Files',
    table(['File', 'Layout', 'Rows', 'SHA-256'], inputs.map((i) => [md(i.file), md(i.layout), String(i.rows.read), i.sha256])),
    '## Evidence',
    evidence.lines.map((l, index) => `${index + 1}. ${md(l.file)}:${l.line} ${md(l.text)}`).join('\n'),
    '## Cautions',
    cautions.map((c) => `- ${c}`).join('\n'),
    `Made by Steadypair ${md(version)}.`,
  ];
  return `${blocks.join('\n\n')}\n`;
}

function table(header: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [line(header), line(header.map(() => '---')), ...rows.map(line)].join('\n');
}
