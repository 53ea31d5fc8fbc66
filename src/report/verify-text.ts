import {
  type CheckStatus,
  type Finding,
  type Swap,
  type SwapHalf,
  sayBounds,
  type Verification,
} from '../vocabulary.ts';
import { terminal } from './escape.ts';
import { inRowsRecognised, notKnownOf, sayNotKnown } from './not-known.ts';
import { sayOpen } from './open-words.ts';
import { statementInCommand } from './settings.ts';
import { statusWords } from './status-words.ts';
import { toldFindings } from './told-findings.ts';
import { sayCount, sayInstant, sayInstantBounds, sayMeasure, sayWhen } from './words.ts';

export interface TextOptions {
  /** IANA name of the zone the instants are shown in. */
  readonly zone: string;
  /** Colours a part for a terminal, or gives it back as it is. */
  readonly paint: (text: string, as: 'verdict' | 'critical' | 'warning') => string;
  /** Where the reports lie. */
  readonly reports: readonly string[];
}

const columns = 100;

/** What `verify` prints: for each swap verdict, before and after, steps, the checks that did not pass; at most 100 columns. */
export function verifyText(verification: Verification, options: TextOptions): string {
  const { swaps } = verification;
  const blocks = swaps.map((swap) => [...swapText(swap, options), ...onFiles(verification, swap, options)]);
  const where = inRowsRecognised(verification);
  const none = wrap(`No swap found${where}: no module was removed and replaced.`, '', '').concat('');
  const all = verification.findings.filter((f) => f.severity !== 'info').slice(0, 10);
  const found =
    swaps.length === 0
      ? [...none, ...sayAbsences(verification, options), ...sayFindings(all, options)]
      : blocks.flat();
  const reports = options.reports.map((name) => `Report: ${terminal(name)}`);
  return `${[...notKnownText(verification, options), ...found, ...reports].join('\n').trimEnd()}\n`;
}

/** So many absences are told; the fleet review counts all losses. */
const mostAbsences = 5;

/** Where there is no swap: when a partner was absent all the same. */
function sayAbsences({ absences = [] }: Verification, { zone }: TextOptions): readonly string[] {
  const lines = absences.slice(0, mostAbsences).flatMap(({ pair, from, lasted }) => {
    const length = lasted === null ? 'to the end of the log' : `for ${sayBounds(lasted.low, lasted.high)}`;
    const said = `${terminal(pair)}: the partner was absent ${length}, from ${sayInstant(from.time, zone)}; no line says that a module was removed or replaced.`;
    return wrap(said, '', '');
  });
  const more = absences.length - mostAbsences;
  const others = more > 0 ? [`${sayCount(more, 'more absence')}.`] : [];
  return lines.length === 0 ? [] : [...lines, ...others, ''];
}

/** The verdicts alone, each with what is waited for, below what they cannot know; how `watch` ends. */
export function verdictText(
  verification: Verification,
  options: Omit<TextOptions, 'reports'>,
  width = columns,
): string {
  const { swaps } = verification;
  const where = inRowsRecognised(verification);
  const none = `No swap found${where}: no module was removed and replaced.`;
  const said = swaps.flatMap((swap) => verdictLines(swap, options, width));
  const lines = swaps.length === 0 ? wrap(none, '', '', width) : said;
  return `${[...notKnownText(verification, options, width), ...lines].join('\n')}\n`;
}

function verdictLines(
  swap: Swap,
  { paint, zone }: Pick<TextOptions, 'paint' | 'zone'>,
  width = columns,
): readonly string[] {
  return [
    ...wrap(terminal(swap.statement), '', '', width).map((line) => paint(line, 'verdict')),
    ...(swap.open === null ? [] : wrap(sayOpen(swap.open, zone, swap.from), '', '', width)),
  ];
}

/** What the verdict below cannot know. */
export function notKnownText(
  of: Parameters<typeof notKnownOf>[0],
  { paint }: Pick<TextOptions, 'paint'>,
  width = columns,
): readonly string[] {
  const said = sayNotKnown(notKnownOf(of));
  const lines = said.flatMap((one) => wrap(`Not known: ${terminal(one)}`, '', '  ', width));
  return lines.length === 0 ? [] : [...lines.map((line) => paint(line, 'warning')), ''];
}

/** What must be known of the files that a swap is told by: the rest of what was found is in its steps and checks. */
function onFiles(verification: Verification, swap: Swap, options: TextOptions): readonly string[] {
  const told = toldFindings(verification, swap).filter((f) => f.pair === null && f.severity !== 'info');
  return told.length === 0 ? [] : [...sayFindings(told.slice(0, 10), options), ''];
}

function sayFindings(findings: readonly Finding[], { paint, zone }: TextOptions): readonly string[] {
  return findings.flatMap((f) =>
    wrap(
      `${f.severity}: ${f.pair === null ? '' : `${terminal(f.pair)}: `}${sayWhen(f, zone)}${terminal(statementInCommand(f))}`,
      '',
      '  ',
    ).map((l) => paint(l, f.severity === 'critical' ? 'critical' : 'warning')),
  );
}

function swapText(swap: Swap, options: TextOptions): readonly string[] {
  const { paint, zone } = options;
  const open = swap.checks.filter((c) => c.status !== 'pass');
  const passed = swap.checks.length - open.length;
  return [
    ...verdictLines(swap, options),
    '',
    `${sayInstant(swap.from, zone)} to ${sayInstant(swap.to, zone)}, clock of ${zone}`,
    '',
    ...table(swap.halves),
    '',
    'Steps',
    ...swap.steps.flatMap((step) => {
      const took = step.duration === null ? '' : `: ${sayMeasure(step.duration)}`;
      return wrap(
        `${terminal(step.statement)}${took}`,
        `  ${sayInstantBounds(step, zone, swap.from).padEnd(20)}  `,
        ' '.repeat(24),
      );
    }),
    '',
    `Checks: ${passed} of ${swap.checks.length} pass${open.length === 0 ? '.' : '; the others:'}`,
    ...open.flatMap((check) =>
      wrap(
        `${check.title}. ${terminal(check.statement)}`,
        `  ${statusWords[check.status].padEnd(14)}`,
        ' '.repeat(16),
      ).map((line) => painted(line, check.status, paint)),
    ),
    '',
    `Without a ready partner: ${sayMeasure({ ...swap.exposure, censored: false, outcome: null })} in ${sayCount(swap.exposure.spans.length, 'period')}${lastSpan(swap, zone)}.`,
    '',
  ];
}

function painted(line: string, status: CheckStatus, paint: TextOptions['paint']): string {
  if (status === 'fail') return paint(line, 'critical');
  return status === 'inconclusive' ? paint(line, 'warning') : line;
}

function lastSpan({ exposure, from }: Swap, zone: string): string {
  const last = exposure.spans.at(-1);
  if (last === undefined) return '';
  return `, the last until ${sayInstantBounds({ time: last.to, earliest: last.to }, zone, from)}`;
}

function table(halves: readonly SwapHalf[]): readonly string[] {
  const rows = [
    ['half', 'module before', 'module after', 'firmware before, found, after'],
    ...halves.map((h) => [
      terminal(h.half),
      moduleOf(h, 'before'),
      moduleOf(h, 'after'),
      [h.firmware.before, h.firmware.found, h.firmware.after]
        .map((t) => terminal(t ?? 'not known'))
        .join(', '),
    ]),
  ];
  const widths = [0, 1, 2].map((column) => Math.max(...rows.map((r) => (r[column] ?? '').length)));
  return rows.flatMap((r) => {
    const line = `  ${r.map((cell, index) => cell.padEnd(widths[index] ?? 0)).join('  ')}`.trimEnd();
    return line.length <= columns ? [line] : wrap(r.join('; '), '  ', '    ');
  });
}

function moduleOf({ model, serial }: SwapHalf, when: 'before' | 'after'): string {
  return terminal([model[when], serial[when]].filter((part) => part !== null).join(' ') || 'not known');
}

/**
 * Breaks a text at spaces, and a word that is longer than a line where the line ends, to the width of the page, or another; the first
 * line begins with `first`, the others with `next`.
 */
export function wrap(text: string, first: string, next: string, width = columns): readonly string[] {
  const room = width - Math.max(first.length, next.length);
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (const word of text.split(' ').flatMap((w) => pieces(w, room))) {
    if (!empty && line.length + 1 + word.length > width) {
      lines.push(line);
      line = next;
      empty = true;
    }
    line += empty ? word : ` ${word}`;
    empty = false;
  }
  return [...lines, line];
}

function pieces(word: string, longest: number): readonly string[] {
  if (word.length <= longest) return [word];
  return Array.from({ length: Math.ceil(word.length / longest) }, (_, index) =>
    word.slice(index * longest, (index + 1) * longest),
  );
}
