import type { Attempt, Diagnosis, RankedCause } from '../vocabulary.ts';
import { cautions } from './cautions.ts';
import { warningsOf } from './diagnose-findings.ts';
import { terminal } from './escape.ts';
import { ladderOf, sayReference } from './ladder.ts';
import { inRowsRecognised } from './not-known.ts';
import { outcomeWords, sayCause, sayLength } from './outcome-words.ts';
import { sayWeight } from './say-weight.ts';
import { saySentence } from './sentences.ts';
import { statementInCommand } from './settings.ts';
import { notKnownText, type TextOptions, wrap } from './verify-text.ts';
import { sayInstant, sayInstantBounds, sayWhen } from './words.ts';

/** What `diagnose` prints: the answer, the ladder, the attempts, the causes, what to check, cautions; at most 100 columns. */
export function diagnoseText(diagnosis: Diagnosis, options: TextOptions): string {
  const { zone, paint, reports } = options;
  const { chosen, sentences, healthy, from } = diagnosis;
  const said = sentences.flatMap((s, index) =>
    wrap(terminal(saySentence(s, zone, from)), '', '').map((l) => (index === 0 ? paint(l, 'verdict') : l)),
  );
  const lines = [
    ...notKnownText(diagnosis, options),
    ...said,
    '',
    ...(chosen === null ? [] : wrap(terminal(chosen), '', '')),
    `${sayInstant(diagnosis.from, zone)} to ${sayInstant(diagnosis.to, zone)}, clock of ${zone}`,
    '',
    ...(healthy ? findingsText(diagnosis, options) : body(diagnosis, options)),
    ...reports.map((name) => `Report: ${terminal(name)}`),
  ];
  return `${lines.join('\n').trimEnd()}\n`;
}

function body(diagnosis: Diagnosis, options: TextOptions): readonly string[] {
  return [
    ...ladderText(diagnosis),
    ...attemptsText(diagnosis, options),
    ...diagnosis.causes.flatMap((cause) => causeText(cause, options)),
    ...doubtedText(diagnosis),
    ...findingsText(diagnosis, options),
    'Check in this order',
    ...diagnosis.causes.flatMap((c) => wrap(terminal(c.next), `  ${String(c.rank).padStart(2)}  `, '      ')),
    '',
    'Cautions',
    ...cautions.flatMap((c) => wrap(c, '  ', '  ')),
    '',
  ];
}

function ladderText(diagnosis: Diagnosis): readonly string[] {
  const row = (stage: string, ended: string, last: string, reference: string): string =>
    `  ${stage.padEnd(17)} ${ended.padStart(5)}  ${last.padEnd(24)}  ${reference}`.trimEnd();
  return [
    'Sync stages',
    row('stage', 'ended', 'time of the last attempt', 'successful attempts'),
    ...ladderOf(diagnosis).map((r) =>
      row(r.stage, r.ended === 0 ? '' : String(r.ended), r.last, r.reference),
    ),
    ...wrap(sayReference(diagnosis), '  ', '  '),
    '',
  ];
}

const mostAttempts = 12;

function attemptsText(diagnosis: Diagnosis, { zone }: TextOptions): readonly string[] {
  const { attempts, from } = diagnosis;
  if (attempts.length === 0) return [`Attempts: none was logged${inRowsRecognised(diagnosis)}.`, ''];
  const left = attempts.length - mostAttempts;
  return [
    'Attempts',
    ...(left > 0 ? [`  ${left} earlier`] : []),
    ...attempts.slice(-mostAttempts).flatMap((a) => {
      const stage = a.stages.at(-1)?.stage ?? 'a stage not logged';
      return wrap(
        `half ${terminal(a.half ?? 'not known')}, ${sayCause(a)}, reached ${stage}: ${sayEnd(a)}`,
        `  ${sayInstantBounds(a.start, zone, from).padEnd(20)}  `,
        ' '.repeat(24),
      );
    }),
    '',
  ];
}

/** `sync failed after 1 min 43 s`; a reason comes last. */
function sayEnd(attempt: Attempt): string {
  const [end = '', reason] = outcomeWords[attempt.outcome].split(': ');
  const length = sayLength(attempt);
  const after = length === '' ? '' : ` after ${length}`;
  return `${end}${after}${reason === undefined ? '' : `, ${reason}`}`;
}

function causeText(cause: RankedCause, { paint }: TextOptions): readonly string[] {
  const { rank, id, title, decibans } = cause;
  const head = wrap(`${title} (${id}): ${sayWeight(decibans)}`, `${rank}  `, '   ');
  return [
    ...head.map((line) => (rank === 1 ? paint(line, 'warning') : line)),
    ...cause.for.flatMap((p) => wrap(terminal(p.statement), '   for      ', ' '.repeat(12))),
    ...cause.for
      .slice(0, 1)
      .flatMap((p) => p.evidence.slice(0, 3))
      .flatMap((l) =>
        wrap(`${terminal(l.file)}:${l.line}  ${terminal(l.text)}`, ' '.repeat(12), ' '.repeat(14)),
      ),
    ...cause.against.flatMap((p) => wrap(terminal(p.statement), '   against  ', ' '.repeat(12))),
    '',
  ];
}

function doubtedText({ doubted, unjudged }: Diagnosis): readonly string[] {
  const spoken = doubted.flatMap(({ id, against }) =>
    wrap(terminal(against[0]?.statement ?? ''), `  ${id.padEnd(22)}`, ' '.repeat(24)),
  );
  const open = unjudged.flatMap(({ id, missing }) =>
    wrap(`missing: ${missing.join(', ')}`, `  ${id.padEnd(22)}`, ' '.repeat(24)),
  );
  return [
    ...(spoken.length === 0 ? [] : ['Checked and not supported', ...spoken, '']),
    ...(open.length === 0 ? [] : ['Not enough data to judge', ...open, '']),
  ];
}

/** The findings that make the exit status, the worst first. */
function findingsText(diagnosis: Diagnosis, { zone, paint }: TextOptions): readonly string[] {
  const { told, leftOut } = warningsOf(diagnosis);
  if (told.length === 0) return [];
  const lines = told.flatMap((f) =>
    wrap(`${f.severity}: ${sayWhen(f, zone)}${terminal(statementInCommand(f))}`, '  ', '    ').map((line) =>
      paint(line, f.severity === 'critical' ? 'critical' : 'warning'),
    ),
  );
  return ['Findings', ...lines, ...(leftOut === 0 ? [] : [`  ${leftOut} more: see diagnose.json`]), ''];
}
