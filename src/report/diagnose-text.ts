import { type Diagnosis, type RankedCause, sayDuration } from '../vocabulary.ts';
import { cautions } from './cautions.ts';
import { terminal } from './escape.ts';
import { ladderOf, sayReference } from './ladder.ts';
import { causeWords, outcomeWords } from './outcome-words.ts';
import { sayWeight } from './say-weight.ts';
import { type TextOptions, wrap } from './verify-text.ts';
import { sayInstant, sayInstantBounds } from './words.ts';

/** What `diagnose` prints: the answer, the ladder, the attempts, the causes, what to check, cautions; at most 100 columns. */
export function diagnoseText(diagnosis: Diagnosis, options: TextOptions): string {
  const { zone, paint, reports } = options;
  const { chosen, sentences, healthy } = diagnosis;
  const [verdict, ...rest] = sentences;
  const lines = [
    ...wrap(terminal(verdict), '', '').map((line) => paint(line, 'verdict')),
    ...rest.flatMap((s) => wrap(terminal(s), '', '')),
    '',
    ...(chosen === null ? [] : wrap(terminal(chosen), '', '')),
    `${sayInstant(diagnosis.from, zone)} to ${sayInstant(diagnosis.to, zone)}, clock of ${zone}`,
    '',
    ...(healthy ? [] : body(diagnosis, options)),
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
    'How far it gets',
    row('stage', 'ended', 'time of the last attempt', 'attempts that worked'),
    ...ladderOf(diagnosis).map((r) =>
      row(r.stage, r.ended === 0 ? '' : String(r.ended), r.last, r.reference),
    ),
    ...wrap(sayReference(diagnosis), '  ', '  '),
    '',
  ];
}

const mostAttempts = 12;

function attemptsText({ attempts, from }: Diagnosis, { zone }: TextOptions): readonly string[] {
  if (attempts.length === 0) return ['Attempts: none is logged.', ''];
  const left = attempts.length - mostAttempts;
  return [
    'Attempts',
    ...(left > 0 ? [`  ${left} earlier`] : []),
    ...attempts.slice(-mostAttempts).flatMap((a) => {
      const stage = a.stages.at(-1)?.stage ?? 'stage not logged';
      return wrap(
        `half ${terminal(a.half)}, ${causeWords[a.cause]}, as far as ${stage}: ${outcomeWords[a.outcome]} after ${sayDuration(a.watchedSeconds)}`,
        `  ${sayInstantBounds(a.start, zone, from).padEnd(20)}  `,
        ' '.repeat(24),
      );
    }),
    '',
  ];
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
    wrap(`never logged: ${missing.join(', ')}`, `  ${id.padEnd(22)}`, ' '.repeat(24)),
  );
  return [
    ...(spoken.length === 0 ? [] : ['The logs do not speak for', ...spoken, '']),
    ...(open.length === 0 ? [] : ['Could not be judged', ...open, '']),
  ];
}
