import { eachChunk } from '../bytes/damaged-end.ts';
import type { Encoding } from '../bytes/decode.ts';
import type { FileSource } from '../bytes/file-source.ts';
import { InputError } from '../bytes/input-error.ts';
import { type RowShape, rowReader } from '../bytes/open-rows.ts';
import type { Row } from '../bytes/row.ts';
import { orderEvidence } from './date-order.ts';
import type { DatePattern } from './date-pattern.ts';
import type { DateOrder } from './stamp.ts';

const headBytes = 65_536;
const anyYear = { order: undefined, year: 2000, day: undefined } as const;

/** The order of day and month, and why; undefined where no date needs one. */
export interface ChosenOrder {
  readonly order: DateOrder | undefined;
  readonly because: string | null;
}

/** A file whose dates are looked at. */
export interface DatedFile {
  readonly source: FileSource;
  readonly encoding: Encoding;
  readonly shape: RowShape;
  /** The text of a row that begins with its date. */
  readonly dateText: (row: Row) => string;
}

/** What is said of its dates: by the user (`null`: nothing), and in the phrasebook. */
export interface SaidOfDates {
  readonly order: DateOrder | null;
  readonly phrasebook: { readonly order: DateOrder | undefined; readonly pattern: DatePattern | undefined };
}

/**
 * The day/month order: what the user or the phrasebook says, else what the dates of the whole file settle. Throws
 * InputError where they can be read both ways and nothing settles it.
 */
export async function chooseOrder(
  { source, encoding, shape, dateText }: DatedFile,
  options: SaidOfDates,
): Promise<ChosenOrder> {
  const given = options.order ?? options.phrasebook.order;
  if (given !== undefined && given !== null) {
    return { order: given, because: options.order === null ? 'the phrasebook says so' : '--order says so' };
  }
  const evidence = orderEvidence();
  const { pattern } = options.phrasebook;
  const rows = rowReader(shape, (row) => {
    const text = dateText(row);
    // What the phrasebook's own pattern reads leaves nothing open.
    if (pattern === undefined || pattern.read(text, anyYear) === 'no-date') evidence.add(text, row.line);
  });
  const decoder = new TextDecoder(encoding.label);
  let seen = 0;
  await eachChunk(source, (bytes) => {
    rows.push(decoder.decode(bytes, { stream: true }));
    seen += bytes.length;
    // Without a date that can be read both ways in the head, or once one settles it, the rest need not be read twice.
    return evidence.settled() === undefined && (seen < headBytes || evidence.isOpen());
  });
  rows.end();
  const settled = evidence.settled();
  if (settled !== undefined)
    return {
      order: settled.order,
      because: `"${settled.text}" in line ${settled.line} can be read no other way`,
    };
  const example = evidence.example();
  if (example === undefined || !evidence.isOpen()) return { order: undefined, because: null };
  const { text, line, first, second, year } = example;
  throw new InputError(
    `${source.name}:${line}`,
    `"${text}" is ${first} ${monthName(second)} ${year} if the day comes first, ${second} ${monthName(first)} ${year} if the month does, and no date in the file settles it.`,
    'Choose with --order day-first or --order month-first, or set time.order in the phrasebook.',
    'date-order',
  );
}

function monthName(month: number): string {
  return (
    ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'][month - 1] ??
    String(month)
  );
}
