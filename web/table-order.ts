import { csvCell } from '../src/report/escape.ts';
import type { ShownRow, ShownTable } from '../src/report/shown-table.ts';

/** By which column a table is ordered; `null`: as it was given, the worst first. */
export type Order = { readonly column: number; readonly isDescending: boolean } | null;

/** Names with figures in them in the order a person expects: RO2 before RO10. */
const byText = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** The rows that hold all words of `filter`, in an order; what has no value stands last in both directions. */
export function arranged({ columns, rows }: ShownTable, filter: string, order: Order): readonly ShownRow[] {
  const words = filter
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  const found = rows.filter((row) => {
    const text = row.cells
      .map((c) => c.text)
      .join('\n')
      .toLowerCase();
    return words.every((word) => text.includes(word));
  });
  const column = order === null ? undefined : columns[order.column];
  if (order === null || column === undefined) return found;
  const keyed = found.map((row) => {
    const text = row.cells[order.column]?.text ?? '';
    return { row, text, value: sortValue(text, column.isNumber) };
  });
  const sign = order.isDescending ? -1 : 1;
  const hasValues = keyed.some(({ value }) => value !== null);
  return keyed
    .toSorted((a, b) => {
      if (!hasValues) return sign * byText.compare(a.text, b.text);
      if (a.value === null || b.value === null) return Number(a.value === null) - Number(b.value === null);
      return sign * (a.value - b.value);
    })
    .map(({ row }) => row);
}

/** What a press on the head of a column does: figures from the greatest, words from A; the third press gives the order back. */
export function nextOrder(order: Order, column: number, isNumber: boolean): Order {
  if (order?.column !== column) return { column, isDescending: isNumber };
  return order.isDescending === isNumber ? { column, isDescending: !isNumber } : null;
}

/** An order as an address holds it: `2d` the third column from the greatest, `0a` the first one from A; `null` for none. */
export function orderText(order: Order): string | null {
  return order === null ? null : `${order.column}${order.isDescending ? 'd' : 'a'}`;
}

/** The order that `orderText` wrote; none for anything else. */
export function orderOf(text: string | undefined): Order {
  const [, column, way] = /^(\d{1,2})([ad])$/.exec(text ?? '') ?? [];
  return column === undefined ? null : { column: Number(column), isDescending: way === 'd' };
}

const secondsOf: Readonly<Record<string, number>> = { d: 86_400, h: 3600, min: 60, s: 1 };
const duration = /^(-?\d+(?:\.\d+)?) (d|h|min|s)(?: (\d+) (min|s))?(?![\w.])/;
const instant =
  /^(?:(\d{1,2}) )?(Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec) (\d{4})(?: (\d\d):(\d\d):(\d\d))?/;
const clock = /^(\d\d):(\d\d):(\d\d)/;
const number = /^-?\d[\d,]*(?:\.\d+)?(?=$| %| \()/;
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/**
 * The value that a cell begins with, as it is written here: seconds of a duration, milliseconds of an instant or a clock, a
 * number where the column holds figures; `null` where it is words.
 */
export function sortValue(text: string, isNumber: boolean): number | null {
  const lasts = duration.exec(text.replace(/^(?:longer than|less than|about) /, ''));
  if (lasts !== null) {
    const [, whole = '', unit = '', rest = '0', small = 's'] = lasts;
    return Number(whole) * (secondsOf[unit] ?? 1) + Number(rest) * (secondsOf[small] ?? 1);
  }
  const at = instant.exec(text);
  if (at !== null) {
    const [, day = '1', month = '', year, hour = '0', minute = '0', second = '0'] = at;
    return Date.UTC(
      Number(year),
      months.indexOf(month),
      Number(day),
      Number(hour),
      Number(minute),
      Number(second),
    );
  }
  const time = clock.exec(text);
  if (time !== null) return 1000 * (Number(time[1]) * 3600 + Number(time[2]) * 60 + Number(time[3]));
  const found = isNumber ? number.exec(text.replace(/^(?:less than|more than) /, '')) : null;
  return found === null ? null : Number(found[0].replaceAll(',', ''));
}

/** Rows of a table as CSV (RFC 4180) under its titles, safe to open in a spreadsheet: what is shown, in the order shown. */
export function tableCsv({ columns }: ShownTable, rows: readonly ShownRow[]): string {
  const line = (cells: readonly string[]): string => `${cells.map(csvCell).join(',')}\r\n`;
  return [columns.map((c) => c.title), ...rows.map(({ cells }) => cells.map((c) => c.text))]
    .map(line)
    .join('');
}
