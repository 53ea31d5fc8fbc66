import type { NonEmpty, SourceLine, WorkSheet, WorkStep } from '../vocabulary.ts';
import { cautions } from './cautions.ts';
import { markdown } from './escape.ts';
import type { EvidenceList } from './evidence.ts';
import { table } from './markdown-table.ts';
import { notKnownBlocks } from './not-known-markdown.ts';
import { isBehind, isOfLog, sheetEvidence } from './prepare-extent.ts';
import {
  expectedCells,
  fiveMinuteRule,
  halfCells,
  holdPointRule,
  holdPointWords,
  howExpected,
  sayExposure,
  sayFit,
  sayLosses,
  sayStandby,
  sayStep,
  sayWanted,
  shortLimit,
} from './prepare-words.ts';
import type { ReportOptions } from './report-options.ts';
import { statementInCommand } from './settings.ts';
import { cite, evidenceList } from './verify-markdown.ts';
import { sayInstant, sayWhen } from './words.ts';

/** The work sheet as Markdown (CommonMark with tables), for a ticket or a mail. */
export function prepareMarkdown(sheet: WorkSheet, options: ReportOptions): string {
  const evidence = sheetEvidence(sheet);
  const { zone, version } = options;
  const blocks = [
    `# Work sheet: pair ${markdown(sheet.pair)}`,
    ...notKnownBlocks(sheet),
    `**${markdown(sayStandby(sheet, zone))}**${cite(evidence, sheet.standby.evidence)}`,
    `**${markdown(sayFit(sheet, zone))}**`,
    ...listed(sheet.readiness.reasons.map((r) => `${markdown(r.statement)}${cite(evidence, r.evidence)}`)),
    '## Cautions',
    ...listed(cautions),
    work(sheet, options),
    '## Both halves as of the last line',
    halves(sheet, evidence),
    '## Trouble',
    trouble(sheet, evidence, options),
    '## Steps',
    table(
      ['', 'Step', 'Limit', 'Median here', '95th percentile', 'n', 'Clock', 'Initials'],
      sheet.steps.flatMap((s, index) => stepRows(sheet, s, index + 1, evidence)),
    ),
    `**${fiveMinuteRule}**`,
    holdPointRule,
    '## Exposure to expect',
    ...sheet.exposure.map((one) => markdown(sayExposure(one))),
    howExpected,
    ...annex(sheet, evidence),
    `Made by Steadypair ${markdown(version)}.`,
  ];
  return `${blocks.join('\n\n')}\n`;
}

/** Files, evidence and blanks to sign on. */
function annex({ inputs, job }: WorkSheet, evidence: EvidenceList): readonly string[] {
  return [
    '## Files',
    table(
      ['File', 'Rows', 'SHA-256'],
      inputs.map((i) => [markdown(i.file), String(i.rows.read), i.sha256]),
    ),
    '## Evidence',
    evidenceList(evidence, 'answers: see prepare.json'),
    '## Sign-off',
    table(
      ['', 'Name', 'Signature', 'Date'],
      [
        ['Done by', markdown(job?.technician ?? ''), '', ''],
        ['Reviewed by', markdown(job?.reviewer ?? ''), '', ''],
      ],
    ),
  ];
}

function listed(items: readonly string[]): readonly string[] {
  return items.length === 0 ? [] : [items.map((item) => `- ${item}`).join('\n')];
}

function work({ job, site, asOf, madeAt }: WorkSheet, { zone }: ReportOptions): string {
  const said = [
    job?.workOrder,
    job?.site ?? site,
    job?.technician,
    job?.reviewer,
    `${sayInstant(asOf.time, zone)} (${zone})`,
    sayInstant(madeAt, zone),
  ];
  return table(
    ['Work order', 'Site', 'Done by', 'Reviewed by', 'Last line of the pair', 'Sheet made'],
    [said.map((text) => markdown(text ?? ''))],
  );
}

function halves(sheet: WorkSheet, evidence: EvidenceList): string {
  return table(
    ['Half', 'Role', 'Light', 'Model', 'Serial', 'Firmware', 'The new module must come to'],
    sheet.halves.map((h) => [
      markdown(h.half),
      ...halfCells(h, sheet).map((c) => `${markdown(c.said)}${citeAny(evidence, c.evidence)}`),
      markdown(sayWanted(h)),
    ]),
  );
}

function citeAny(evidence: EvidenceList, lines: readonly SourceLine[]): string {
  const [first, ...rest] = lines;
  const some: NonEmpty<SourceLine> | null = first === undefined ? null : [first, ...rest];
  return some === null ? '' : cite(evidence, some);
}

function trouble(sheet: WorkSheet, evidence: EvidenceList, { zone }: ReportOptions): string {
  const [newest] = sheet.losses;
  const losses = `${markdown(sayLosses(sheet, zone))}${newest === undefined ? '' : cite(evidence, newest.evidence)}`;
  const items = sheet.trouble.map(
    (f) =>
      `${f.severity}: ${sayWhen(f, zone)}${markdown(statementInCommand(f))}${cite(evidence, f.evidence)}`,
  );
  return [losses, ...listed(items)].join('\n\n');
}

function stepRows(
  sheet: WorkSheet,
  step: WorkStep,
  number: number,
  evidence: EvidenceList,
): readonly (readonly string[])[] {
  const { limitSeconds, holdPoint } = step;
  const row = [
    String(number),
    markdown(sayStep(step)),
    shortLimit(limitSeconds),
    ...expectedCells(step),
    '',
    '',
  ];
  if (holdPoint === null) return [row];
  const isByLog = isOfLog(step, sheet);
  const conditions = holdPoint.conditions.map(
    (c) => `\\[ \\] ${markdown(c.statement)}${isByLog ? cite(evidence, c.evidence) : ''}`,
  );
  const status = isByLog ? `, by the log: ${holdPoint.status}` : '';
  const said = `**Hold point ${holdPointWords[holdPoint.id]}**${status}. ${conditions.join(' ')}`;
  const hold = ['', said, '', '', '', '', '', ''];
  return isBehind(step) ? [row, hold] : [hold, row];
}
