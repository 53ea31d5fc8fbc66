import {
  type Became,
  type Finding,
  type ImportedFile,
  type Input,
  type Interval,
  type NonEmpty,
  type PairTimeline,
  sayDuration,
} from '../vocabulary.ts';
import { alikeGroups, moreText, remarksAlike } from './alike-files.ts';
import { terminal } from './escape.ts';
import { toJson } from './json.ts';
import { statementInCommand } from './settings.ts';
import { findingDocument } from './verify-json.ts';
import { wrap } from './verify-text.ts';
import { sayCount, sayInstant, sayWhen } from './words.ts';

/** The JSON document of `inspect`; `found` is what `--find` found. Source: design.md, section 8. */
export function inspectJson(
  files: readonly ImportedFile[],
  findings: readonly Finding[],
  found?: unknown,
): string {
  return toJson({
    schema: 'steadypair/inspect/1',
    inputs: files.map(inspectedDocument),
    findings: findings.map(findingDocument),
    ...(found === undefined ? {} : { found }),
  });
}

/** An input with what its parts became; instants are ISO 8601. */
function inspectedDocument({ input, reasons, columns, parameters, streams }: ImportedFile): unknown {
  return {
    ...input,
    reasons,
    columns,
    parameters,
    subjects: unitsKnown(streams).map(({ unit, subject }) => ({ unit, ...subject })),
    unobserved: gapsOf(streams).map(({ unit, from, to }) => ({ unit, from, to })),
  };
}

/** The streams of units that a pair is known for; the others stand among the wordings. */
function unitsKnown(streams: ImportedFile['streams']): ImportedFile['streams'] {
  return streams.filter(({ subject }) => subject.pair !== '');
}

interface StreamGap extends Interval {
  readonly unit: string;
}

function gapsOf(streams: ImportedFile['streams']): readonly StreamGap[] {
  return streams.flatMap(({ unit, gaps }) =>
    gaps.map(({ before, after }) => ({ unit, from: before.time, to: after.time })),
  );
}

const mostWordings = 10;
const mostNames = 20;

/** How each file was understood, as a colleague would explain it. Instants are UTC. */
export function inspectText(
  files: readonly ImportedFile[],
  timelines: readonly PairTimeline[],
  findings: readonly Finding[],
): string {
  const pairs = timelines.flatMap((t) =>
    wrap(
      `${terminal(t.pair)}: halves ${t.halves.map(terminal).join(' and ')}, ${sayCount(t.events.length, 'event')}, ${sayInstant(t.from, 'UTC')} to ${sayInstant(t.to, 'UTC')} UTC`,
      '  ',
      '    ',
    ),
  );
  const remarks = remarksAlike(findings).flatMap(({ shown, more }) => [
    ...shown.flatMap((f) =>
      wrap(`${sayWhen(f, 'UTC')}${terminal(statementInCommand(f))}`, `  ${f.severity}: `, '    '),
    ),
    ...(more > 0 ? [`    and ${more} more like it in other files (one by one with --json)`] : []),
  ]);
  return `${[
    ...alikeGroups(files).flatMap(groupText),
    'Pairs found',
    ...(pairs.length === 0 ? ['  none'] : pairs),
    '',
    remarks.length === 0 ? 'No notes.' : 'Notes',
    ...remarks,
  ].join('\n')}\n`;
}

/** A file as it was understood; for many that were understood alike the first, and what there is to say of the rest. */
function groupText([first, ...rest]: NonEmpty<ImportedFile>): readonly string[] {
  return [...fileText(first), ...(rest.length === 0 ? [] : [...moreText(rest), ''])];
}

function fileText({ input, reasons, columns, parameters, streams }: ImportedFile): readonly string[] {
  const { file, bytes, sha256, rows, unmatched } = input;
  const units = unitsKnown(streams).map((s) => `${terminal(s.unit)} -> ${subjectText(s.subject)}`);
  return [
    ...wrap(`${terminal(file)}, ${bytes} bytes, SHA-256 ${sha256}`, '', '  '),
    ...reasons.flatMap((reason) => wrap(terminal(reason), '  ', '    ')),
    ...became('Columns', columns),
    ...became('Parameters', parameters),
    ...wrap(`Units: ${units.length === 0 ? 'none recognised' : units.join('; ')}.`, '  ', '    '),
    ...wrap(
      `${sayCount(rows.read, 'row')}: ${rows.used} used, ${rows.unchanged} unchanged, ${rows.ignored} ignored, ${rows.unmatched} not recognised, ${rows.rejected} rejected.`,
      '  ',
      '    ',
    ),
    ...unmatched
      .slice(0, mostWordings)
      .flatMap((u) =>
        wrap(
          `"${terminal(u.wording)}", ${u.count === 1 ? 'once' : `${u.count} times`}, first in line ${u.firstLine}`,
          '    not recognised: ',
          '      ',
        ),
      ),
    ...(unmatched.length > mostWordings
      ? [`    and ${sayCount(unmatched.length - mostWordings, 'more wording')}`]
      : []),
    ...covered(input, streams),
    '',
  ];
}

function subjectText({ pair, half, role }: ImportedFile['streams'][number]['subject']): string {
  if (pair === '') return 'no pair: no unit pattern matches';
  const name = terminal(pair);
  if (half !== null) return `half ${terminal(half)} of ${name}`;
  return role === null ? `pair ${name}` : `the ${role} half of ${name}`;
}

/** `Columns: Stamp -> time; Node -> unit. Not used: Comment.` */
function became(title: string, all: readonly Became[]): readonly string[] {
  if (all.length === 0) return [];
  const known = all.flatMap(({ name, meaning }) =>
    meaning === null ? [] : [`${terminal(name)} -> ${meaning}`],
  );
  const unused = all
    .filter((b) => b.meaning === null)
    .map((b) => terminal(b.name === '' ? '(no name)' : b.name));
  const lines =
    known.length === 0 ? [] : [`${title}: ${known.slice(0, mostNames).join('; ')}${more(known)}.`];
  if (unused.length > 0)
    lines.push(`${title} not used: ${unused.slice(0, mostNames).join(', ')}${more(unused)}.`);
  return lines.flatMap((line) => wrap(line, '  ', '    '));
}

function more(all: readonly string[]): string {
  return all.length > mostNames ? `, and ${all.length - mostNames} more` : '';
}

function covered({ from, to }: Input, streams: ImportedFile['streams']): readonly string[] {
  if (from === null || to === null) return [];
  const gaps = [...gapsOf(streams)].sort((a, b) => b.to - b.from - (a.to - a.from));
  const [longest] = gaps;
  const spans =
    longest === undefined
      ? ''
      : ` Not observed: ${sayCount(gaps.length, 'span')}, the longest ${sayDuration((longest.to - longest.from) / 1000)} from ${sayInstant(longest.from, 'UTC')} (${terminal(longest.unit)}).`;
  return wrap(`It covers ${sayInstant(from, 'UTC')} to ${sayInstant(to, 'UTC')} UTC.${spans}`, '  ', '    ');
}
