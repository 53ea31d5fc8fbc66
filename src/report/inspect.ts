import type { Finding, ImportedFile, PairTimeline } from '../vocabulary.ts';
import { terminal } from './escape.ts';
import { toJson } from './json.ts';
import { findingDocument } from './verify-json.ts';
import { wrap } from './verify-text.ts';
import { sayCount, sayInstant } from './words.ts';

/** The JSON document of `inspect`. Source: design.md, section 8. */
export function inspectJson(files: readonly ImportedFile[], findings: readonly Finding[]): string {
  return toJson({
    schema: 'steadypair/inspect/1',
    inputs: files.map((f) => f.input),
    findings: findings.map(findingDocument),
  });
}

const mostWordings = 10;

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
  const remarks = findings.flatMap((f) => wrap(terminal(f.statement), `  ${f.severity}: `, '    '));
  return `${[
    ...files.flatMap(fileText),
    'Pairs found',
    ...pairs,
    '',
    remarks.length === 0 ? 'Nothing else to remark.' : 'To remark',
    ...remarks,
  ].join('\n')}\n`;
}

function fileText({ input, reasons, streams }: ImportedFile): readonly string[] {
  const { file, bytes, sha256, rows, unmatched } = input;
  const units = streams.map((s) => `${terminal(s.unit)} -> ${subjectText(s.subject)}`);
  return [
    ...wrap(`${terminal(file)}, ${bytes} bytes, SHA-256 ${sha256}`, '', '  '),
    ...reasons.flatMap((reason) => wrap(terminal(reason), '  ', '    ')),
    ...wrap(`Units: ${units.length === 0 ? 'none' : units.join('; ')}.`, '  ', '    '),
    ...wrap(
      `${sayCount(rows.read, 'row')}: ${rows.used} used, ${rows.unchanged} unchanged, ${rows.ignored} ignored, ${rows.unmatched} not understood, ${rows.rejected} not readable.`,
      '  ',
      '    ',
    ),
    ...unmatched
      .slice(0, mostWordings)
      .flatMap((u) =>
        wrap(
          `"${terminal(u.wording)}", ${u.count === 1 ? 'once' : `${u.count} times`}, first in line ${u.firstLine}`,
          '    not understood: ',
          '      ',
        ),
      ),
    ...(unmatched.length > mostWordings
      ? [`    and ${sayCount(unmatched.length - mostWordings, 'further wording')}`]
      : []),
    '',
  ];
}

function subjectText({ pair, half, role }: ImportedFile['streams'][number]['subject']): string {
  if (pair === '') return 'no pair: no unit pattern fits';
  const name = terminal(pair);
  if (half !== null) return `half ${terminal(half)} of ${name}`;
  return role === null ? `pair ${name}` : `the ${role} half of ${name}`;
}
