import type { HoldPoint, WorkSheet, WorkStep } from '../vocabulary.ts';
import { cautions } from './cautions.ts';
import { terminal } from './escape.ts';
import { isBehind, isOfLog } from './prepare-extent.ts';
import {
  expectedCells,
  fiveMinuteRule,
  halfCells,
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
import { statementInCommand } from './settings.ts';
import { notKnownText, type TextOptions, wrap } from './verify-text.ts';
import { sayCount, sayInstant, sayWhen } from './words.ts';

const columns = 100;
const mostFindings = 10;

/** What `prepare` prints: the standby half and how old that is, fit or not, both halves, trouble, steps; at most 100 columns. */
export function prepareText(sheet: WorkSheet, options: TextOptions): string {
  const { zone, paint, reports } = options;
  const { readiness, site, pair, madeAt } = sheet;
  const isOld = sheet.standby.because === 'too-old';
  const besides = isOld ? ' To name it all the same, pass --allow-old.' : '';
  const answer = [`${sayStandby(sheet, zone)}${besides}`, sayFit(sheet, zone)];
  const lines = [
    ...notKnownText(sheet, options),
    ...answer.flatMap((said) => wrap(terminal(said), '', '').map((line) => paint(line, 'verdict'))),
    ...readiness.reasons.flatMap(({ statement }) => wrap(terminal(statement), '  ', '  ')),
    ...wrap(`Caution: ${cautions.at(-1)}`, '', '  '),
    '',
    ...wrap(
      `Work sheet of ${terminal(site === null ? pair : `${pair}, ${site}`)}, made ${sayInstant(madeAt, zone)}, clock of ${zone}`,
      '',
      '  ',
    ),
    '',
    ...halvesText(sheet),
    '',
    ...troubleText(sheet, options),
    '',
    stepRow('Steps', ['limit', 'median here', '95th percentile', 'n']),
    ...sheet.steps.flatMap((step, index) => stepText(sheet, step, index + 1)),
    ...wrap(howExpected, '  ', '  '),
    '',
    ...sheet.exposure.flatMap((one) => wrap(terminal(sayExposure(one)), '', '  ')),
    ...wrap(fiveMinuteRule, '', '  '),
    '',
    ...reports.map((name) => `Report: ${terminal(name)}`),
  ];
  return `${lines.join('\n').trimEnd()}\n`;
}

function halvesText(sheet: WorkSheet): readonly string[] {
  const { halves } = sheet;
  const rows = [
    ['half', 'role', 'light', 'model', 'serial', 'firmware'],
    ...halves.map((h) => [terminal(h.half), ...halfCells(h, sheet).map(({ said }) => terminal(said))]),
  ];
  const widths = [0, 1, 2, 3, 4].map((column) => Math.max(...rows.map((r) => (r[column] ?? '').length)));
  const table = rows.flatMap((r) => {
    const line = `  ${r.map((cell, index) => cell.padEnd(widths[index] ?? 0)).join('  ')}`.trimEnd();
    return line.length <= columns ? [line] : wrap(r.join('; '), '  ', '    ');
  });
  const wanted = halves.flatMap((h) =>
    wrap(`New module in half ${terminal(h.half)}: ${terminal(sayWanted(h))}.`, '  ', '    '),
  );
  return [...table, ...wanted];
}

function troubleText(sheet: WorkSheet, { zone, paint }: TextOptions): readonly string[] {
  const { trouble } = sheet;
  const left = trouble.length - mostFindings;
  return [
    ...wrap(sayLosses(sheet, zone), '', '  '),
    ...trouble.slice(0, mostFindings).flatMap((f) => {
      const said = `${f.severity}: ${sayWhen(f, zone)}${terminal(statementInCommand(f))}`;
      return wrap(said, '  ', '    ').map((l) =>
        paint(l, f.severity === 'critical' ? 'critical' : 'warning'),
      );
    }),
    ...(left > 0 ? [`  and ${sayCount(left, 'more finding')}: print them with --json`] : []),
  ];
}

function stepText(sheet: WorkSheet, step: WorkStep, number: number): readonly string[] {
  const [first = '', ...rest] = wrap(terminal(sayStep(step)), '', '', titleWidth);
  const row = stepRow(numbered(number, first), [shortLimit(step.limitSeconds), ...expectedCells(step)]);
  const lines = [row, ...rest.map((line) => `      ${line}`)];
  if (step.holdPoint === null) return lines;
  const hold = holdText(step.holdPoint, isOfLog(step, sheet));
  return isBehind(step) ? [...lines, ...hold] : [...hold, ...lines];
}

const titleWidth = 47;

function numbered(number: number, title: string): string {
  return `  ${String(number).padStart(2)}  ${title}`;
}

/** A row of the table of steps: what comes first, then limit, median, 95th percentile and n. */
function stepRow(lead: string, cells: readonly string[]): string {
  const padded = cells.map((cell, index) => cell.padStart([8, 13, 17, 5][index] ?? 0));
  return `${lead.padEnd(titleWidth + 6)}${padded.join('')}`.trimEnd();
}

/** A hold point; of the one that the log tells of also what is not met. */
function holdText({ id, status, conditions }: HoldPoint, isByLog: boolean): readonly string[] {
  const point = `      Hold point ${holdPointWords[id]}`;
  const count = sayCount(conditions.length, 'condition');
  if (!isByLog) return [`${point}: ${count}, on the sheet`];
  const open = conditions.filter((c) => c.status !== 'met');
  return [
    `${point}: ${status} by the log, ${conditions.length - open.length} of ${count} met`,
    ...open.flatMap((c) => wrap(`${c.status}: ${terminal(c.statement)}`, '        ', '          ')),
  ];
}
