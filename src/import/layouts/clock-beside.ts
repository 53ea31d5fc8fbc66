import { InputError } from '../bytes/input-error.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { holdsMostly, isClock, type SampleColumn, sampleColumns, stampTest } from './column-content.ts';
import { dateAndClock } from './guess-columns.ts';
import { type Head, headOf, timeColumns, unitKeys } from './head.ts';

/** A head whose time stands in two columns, and why. */
interface ClockBeside {
  readonly head: Head;
  readonly because: string;
}

/**
 * Where the one column of the time holds dates and another holds clocks, or the other way round: the head with both. `null`
 * where one column says it all, or none has the other part. Throws InputError where the phrasebook names the one column as
 * the time, since then every row would stand at midnight, and where several columns hold the other part.
 */
export function clockBeside(
  file: string,
  head: Head,
  rows: readonly (readonly string[])[],
  phrasebook: Phrasebook,
): ClockBeside | null {
  const [index, more] = timeColumns(head);
  if (index === undefined || more !== undefined || rows.length === 0) return null;
  const columns = sampleColumns(head.names, rows);
  const time = columns[index];
  if (time === undefined) return null;
  const { isDate } = stampTest(phrasebook);
  const taken = new Set(unitKeys.map((key) => head.column(key)));
  const free = columns.filter((c) => c.index !== index && c.name !== '' && !taken.has(c.index));
  if (holdsMostly(time, isDate)) {
    const clocks = free.filter((c) => holdsMostly(c, isClock));
    return clocks.length === 0 ? null : both(file, head, time, clocks);
  }
  const dates = holdsMostly(time, isClock) ? free.filter((c) => holdsMostly(c, isDate)) : [];
  const [date, other] = dates;
  return date === undefined || other !== undefined ? null : both(file, head, date, [time]);
}

function both(file: string, head: Head, date: SampleColumn, clocks: readonly SampleColumn[]): ClockBeside {
  const found = dateAndClock(file, date, clocks);
  const columns = { date: found.date ?? date.name, clock: found.clock ?? date.name };
  if (head.rule?.columns.time !== undefined) {
    const match = JSON.stringify(head.rule.match);
    throw new InputError(
      file,
      `the phrasebook names "${head.rule.columns.time}" as the time, but column "${columns.date}" has the dates and column "${columns.clock}" the clocks, such as "${clocks[0]?.cells[0] ?? ''}".`,
      `Write in the phrasebook files: [{ match: ${match}, columns: { date: ${JSON.stringify(columns.date)}, clock: ${JSON.stringify(columns.clock)} } }].`,
    );
  }
  const rule = head.rule ?? { match: '', layout: undefined, columns: {}, line: undefined };
  return {
    head: headOf(head.names, head.lines, { ...rule, columns: { ...rule.columns, ...columns } }),
    because: `by their contents "${columns.date}" was taken as the date and "${columns.clock}" as the clock`,
  };
}
