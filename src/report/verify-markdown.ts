import type { NonEmpty, SourceLine, Swap, Verification } from '../vocabulary.ts';
import { cautions } from './cautions.ts';
import { markdown } from './escape.ts';
import { byFile, type EvidenceList, evidenceOf } from './evidence.ts';
import { table } from './markdown-table.ts';
import { sayNoFinding } from './not-known.ts';
import { notKnownBlocks } from './not-known-markdown.ts';
import { sayOpen } from './open-words.ts';
import { questionWords } from './question-words.ts';
import type { ReportOptions } from './report-options.ts';
import { statusWords } from './status-words.ts';
import { toldFindings } from './told-findings.ts';
import { otherEvents, signOff } from './verify-markdown-annex.ts';
import { sayCount, sayInstant, sayInstantBounds, sayMeasure, sayWhen } from './words.ts';

/** The report on one swap as Markdown (CommonMark with tables), for a ticket or a mail. */
export function verifyMarkdown(verification: Verification, swap: Swap, options: ReportOptions): string {
  const evidence = byFile(evidenceOf(swap));
  const blocks = [
    `# Swap record: pair ${md(swap.pair)}`,
    ...notKnownBlocks(verification),
    `**${md(swap.statement)}**`,
    ...(swap.open === null ? [] : [sayOpen(swap.open, options.zone, swap.from)]),
    work(verification, swap, options),
    '## Before and after',
    halves(swap),
    '## Steps',
    steps(swap, evidence, options),
    '## Checks',
    table(
      ['Check', 'Result', 'Reason'],
      swap.checks.map((c) => [
        md(c.title),
        c.status === 'pass' ? statusWords.pass : `**${statusWords[c.status]}**`,
        `${md(c.statement)}${cite(evidence, c.evidence)}`,
      ]),
    ),
    exposure(swap, options),
    ...otherEvents(swap, options),
    '## Findings and data quality',
    remarks(verification, swap, options),
    '## Files',
    table(
      ['File', 'Layout', 'Rows', 'SHA-256'],
      verification.inputs.map((i) => [md(i.file), md(i.layout), String(i.rows.read), i.sha256]),
    ),
    '## Evidence',
    evidenceList(evidence),
    '## Cautions',
    cautions.map((c) => `- ${c}`).join('\n'),
    signOff(verification, swap),
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

/** The numbers of the evidence lines, as the HTML report gives them too. */
export function cite(evidence: EvidenceList, lines: NonEmpty<SourceLine>): string {
  const numbers = evidence.numbersOf(lines);
  return numbers.length === 0 ? '' : ` (${numbers.join(', ')})`;
}

/** The numbered lines; `things` says behind what they stand, and where the rest is. */
export function evidenceList(
  { lines, leftOut }: EvidenceList,
  things = 'checks and steps: see verify.json',
): string {
  const list = lines.map((l, index) => `${index + 1}. ${md(l.file)}:${l.line} ${md(l.text)}`).join('\n');
  if (leftOut === 0) return list;
  return `${list}\n\n${sayCount(leftOut, 'more line')} for the same ${things}.`;
}

function exposure({ exposure: span }: Swap, { zone }: ReportOptions): string {
  const total = sayMeasure({ ...span, censored: false, outcome: null });
  const spans = span.spans.map((s) => `- ${sayInstant(s.from, zone)} to ${sayInstant(s.to, zone)}`);
  return [
    '## Exposure',
    `Without a ready partner from the first removal to the end: ${total}.`,
    spans.join('\n'),
  ]
    .filter((block) => block !== '')
    .join('\n\n');
}

function steps(swap: Swap, evidence: EvidenceList, { zone }: ReportOptions): string {
  return table(
    ['Time', 'What happened', 'Duration, with bounds'],
    swap.steps.map((s) => [
      sayInstantBounds(s, zone, swap.from),
      `${md(s.statement)}${cite(evidence, s.evidence)}`,
      s.duration === null ? '' : sayMeasure(s.duration),
    ]),
  );
}

/** The findings of a pair in some time, and those of the files. */
export function remarks(
  verification: Pick<Verification, 'findings' | 'inputs'>,
  swap: Pick<Swap, 'pair' | 'from' | 'to'>,
  { zone }: ReportOptions,
): string {
  const told = toldFindings(verification, swap);
  const computed = questionWords(told);
  const lines = told.map(
    (f) => `- ${f.severity === 'info' ? '' : `${f.severity}: `}${sayWhen(f, zone)}${md(f.statement)}`,
  );
  if (lines.length === 0) return sayNoFinding(verification);
  return [...lines, ...(computed === '' ? [] : ['', md(computed)])].join('\n');
}
