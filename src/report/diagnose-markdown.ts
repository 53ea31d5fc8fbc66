import type { Diagnosis, Point, RankedCause } from '../vocabulary.ts';
import { cautions } from './cautions.ts';
import { evidenceOfDiagnosis } from './diagnose-evidence.ts';
import { toldOf } from './diagnose-findings.ts';
import { markdown } from './escape.ts';
import type { EvidenceList } from './evidence.ts';
import { ladderOf, sayReference } from './ladder.ts';
import { table } from './markdown-table.ts';
import { inRowsRecognised } from './not-known.ts';
import { notKnownBlocks } from './not-known-markdown.ts';
import { outcomeWords, sayCause, sayLength } from './outcome-words.ts';
import type { ReportOptions } from './report-options.ts';
import { rankingRule, sayWeight } from './say-weight.ts';
import { saySentence } from './sentences.ts';
import { cite, evidenceList, remarks } from './verify-markdown.ts';
import { sayInstant, sayInstantBounds } from './words.ts';

/** The diagnosis of one pair as Markdown (CommonMark with tables), for a ticket or a mail. */
export function diagnoseMarkdown(diagnosis: Diagnosis, options: ReportOptions): string {
  const { pair, sentences, chosen, from, to, healthy, inputs } = diagnosis;
  const evidence = evidenceOfDiagnosis(diagnosis);
  const [first = '', ...rest] = sentences.map((s) => saySentence(s, options.zone, from));
  const period = `${sayInstant(from, options.zone)} to ${sayInstant(to, options.zone)} (${options.zone}).`;
  const blocks = [
    `# Diagnosis of ${markdown(pair)}`,
    ...notKnownBlocks(diagnosis),
    `**${markdown(first)}**`,
    ...rest.map(markdown),
    markdown(chosen === null ? period : `${chosen} ${period}`),
    ...(healthy ? [] : body(diagnosis, evidence, options)),
    '## Cautions',
    cautions.map((c) => `- ${c}`).join('\n'),
    '## Findings and data quality',
    remarks(...toldOf(diagnosis), options),
    '## Files',
    table(
      ['File', 'Layout', 'Rows', 'SHA-256'],
      inputs.map((i) => [markdown(i.file), markdown(i.layout), String(i.rows.read), i.sha256]),
    ),
    ...(evidence.lines.length === 0
      ? []
      : ['## Evidence', evidenceList(evidence, 'statements: see diagnose.json')]),
    `Made by Steadypair ${markdown(options.version)}.`,
  ];
  return `${blocks.join('\n\n')}\n`;
}

function body(diagnosis: Diagnosis, evidence: EvidenceList, options: ReportOptions): readonly string[] {
  const { causes } = diagnosis;
  return [
    '## Sync stages',
    table(
      ['Stage', 'Attempts that ended here', 'Time of the last attempt', 'Successful attempts'],
      ladderOf(diagnosis).map((r) => [r.stage, r.ended === 0 ? '' : String(r.ended), r.last, r.reference]),
    ),
    sayReference(diagnosis),
    '## Attempts',
    attempts(diagnosis, options),
    '## Causes, most likely first',
    ...causes.flatMap((cause) => causeBlocks(cause, evidence)),
    rankingRule,
    ...doubtedBlocks(diagnosis, evidence),
    '## What to check, in this order',
    causes.map((c) => `${c.rank}. ${markdown(c.next)}`).join('\n'),
  ];
}

const mostAttempts = 25;

function attempts(diagnosis: Diagnosis, { zone }: ReportOptions): string {
  const { attempts: all, from } = diagnosis;
  if (all.length === 0) return `None was logged${inRowsRecognised(diagnosis)}.`;
  const rows = all
    .slice(-mostAttempts)
    .map((a) => [
      sayInstantBounds(a.start, zone, from),
      markdown(a.half ?? 'not known'),
      sayCause(a),
      a.stages.at(-1)?.stage ?? 'not logged',
      outcomeWords[a.outcome],
      sayLength(a),
    ]);
  return table(['Started', 'Half', 'Cause', 'Stage reached', 'Result', 'After'], rows);
}

function causeBlocks(cause: RankedCause, evidence: EvidenceList): readonly string[] {
  const { rank, title, id, decibans } = cause;
  const said = (points: readonly Point[], word: string): readonly string[] =>
    points.map((p) => `- ${word}: ${markdown(p.statement)}${cite(evidence, p.evidence)}`);
  return [
    `### ${rank}. ${markdown(title)} (${id}): ${sayWeight(decibans)}`,
    [...said(cause.for, 'for'), ...said(cause.against, 'against')].join('\n'),
  ];
}

function doubtedBlocks({ doubted, unjudged }: Diagnosis, evidence: EvidenceList): readonly string[] {
  const rows = [
    ...doubted.map(({ title, against }) => {
      const [first] = against;
      const why = first === undefined ? '' : `${markdown(first.statement)}${cite(evidence, first.evidence)}`;
      return [markdown(title), why];
    }),
    ...unjudged.map(({ title, missing }) => [
      markdown(title),
      `not enough data to judge; missing: ${missing.join(', ')}`,
    ]),
  ];
  return rows.length === 0 ? [] : ['## Checked and not supported', table(['Cause', 'Reason'], rows)];
}
