import type { Found, Row } from './bench-case.ts';

const [begin, end] = ['<!-- The table of npm run bench -- SIZE --readme begins. -->', '<!-- It ends. -->'];
const heads = ['Job', 'Program', 'Time', 'Speed', 'Peak memory', 'Time by yardstick'] as const;

/** What was measured as a table in Markdown, below a line that says when and on what, and above what else there is to say. */
export function tableOf(found: readonly Found[], machine: string): string {
  const rows = found.flatMap(({ rows: own }) => own);
  const cells = rows.map((row, index) => cellsOf(row, rows[index - 1]));
  const widths = heads.map((head, place) =>
    Math.max(head.length, ...cells.map((row) => row[place]?.length ?? 0)),
  );
  const line = (row: readonly string[]): string =>
    `| ${row.map((cell, place) => (place < 2 ? cell.padEnd(widths[place] ?? 0) : cell.padStart(widths[place] ?? 0))).join(' | ')} |`;
  const rule = widths.map((width, place) => (place < 2 ? '-'.repeat(width) : `${'-'.repeat(width - 1)}:`));
  return [
    machine,
    '',
    line(heads),
    line(rule),
    ...cells.map(line),
    '',
    ...found.flatMap(({ notes, agrees }) => [...notes, ...agreement(agrees)]),
  ].join('\n');
}

function agreement(agrees: boolean | null): readonly string[] {
  if (agrees === null) return [];
  return [
    agrees
      ? 'All programs found the same changes of each poll, with the same bounds.'
      : 'THE PROGRAMS DO NOT AGREE.',
  ];
}

/** A job is named in its first row. */
function cellsOf(row: Row, before: Row | undefined): readonly string[] {
  const { job, program, seconds, amount, megabytes, yardstick } = row;
  return [
    job === before?.job ? '' : job,
    program,
    `${seconds.toFixed(2)} s`,
    amount === null ? '' : speed(amount.count / seconds, amount.unit),
    megabytes === null ? 'not measured' : `${megabytes.toFixed(0)} MB`,
    yardstick === null ? '' : `${(seconds / yardstick.seconds).toFixed(2)} × ${yardstick.name}`,
  ];
}

function speed(perSecond: number, unit: 'MB' | 'pairs'): string {
  return `${perSecond.toFixed(0)} ${unit}/s`;
}

/** A text with the table between its two markers. Throws RangeError where it has none. */
export function withTable(text: string, table: string): string {
  const [from, to] = [text.indexOf(begin), text.indexOf(end)];
  if (from < 0 || to < from) throw new RangeError(`The text has no "${begin}" and "${end}".`);
  return `${text.slice(0, from + begin.length)}\n\n${table}\n\n${text.slice(to)}`;
}
