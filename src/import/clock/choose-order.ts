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
  /** The date that can be read both ways, where the order is that of another file. */
  readonly borrowed: { readonly line: number; readonly text: string } | null;
}

/** The order that files named alike settle, and one of them; `null` where none does, or two differ. */
export type OrderOfAlike = (file: string) => { readonly order: DateOrder; readonly file: string } | null;

/** A file whose dates are looked at. */
export interface DatedFile {
  readonly source: Pick<FileSource, 'name'>;
  readonly encoding: Encoding;
  readonly shape: RowShape;
  /** The text of a row that begins with its date. */
  readonly dateText: (row: Row) => string;
}

/** What is said of its dates: by the user (`null`: nothing), and in the phrasebook. */
export interface SaidOfDates {
  readonly order: DateOrder | null;
  readonly orderOfAlike?: OrderOfAlike;
  /** Told of an order that the dates of a file settle. */
  readonly onOrder?: (file: string, order: DateOrder) => void;
  readonly phrasebook: { readonly order: DateOrder | undefined; readonly pattern: DatePattern | undefined };
}

/** Looks for what settles the day/month order, over the bytes of a file from its beginning. */
export interface OrderScan {
  /** True while what follows may tell more. */
  isOpen(): boolean;
  push(bytes: Uint8Array): void;
  /** No byte follows. */
  end(): void;
  /** The order by the bytes so far. Throws InputError where they can be read both ways and nothing settles it. */
  chosen(): ChosenOrder;
}

/** The day/month order: what the user or the phrasebook says, else what the dates of the whole file settle. */
export function orderScan(file: DatedFile, options: SaidOfDates): OrderScan {
  const given = options.order ?? options.phrasebook.order ?? null;
  if (given === null) return scanDates(file, options);
  const because = options.order === null ? 'from the phrasebook' : 'from --order';
  return {
    isOpen: () => false,
    push: () => undefined,
    end: () => undefined,
    chosen: () => ({ order: given, because, borrowed: null }),
  };
}

function scanDates({ source, encoding, shape, dateText }: DatedFile, options: SaidOfDates): OrderScan {
  const evidence = orderEvidence();
  const { pattern } = options.phrasebook;
  const rows = rowReader(shape, (row) => {
    const text = dateText(row);
    // What the phrasebook's own pattern reads leaves nothing open.
    if (pattern === undefined || pattern.read(text, anyYear) === 'no-date') evidence.add(text, row.line);
  });
  const decoder = new TextDecoder(encoding.label);
  let seen = 0;
  return {
    // Without a date of two numbers and a year in the head, or once one settles it, the rest need not be read twice.
    isOpen: () => evidence.settled() === undefined && (seen < headBytes || evidence.goesOn()),
    push(bytes) {
      rows.push(decoder.decode(bytes, { stream: true }));
      seen += bytes.length;
    },
    end: rows.end,
    chosen() {
      const settled = evidence.settled();
      if (settled !== undefined) {
        const { order, text, line } = settled;
        options.onOrder?.(source.name, order);
        return { order, because: `"${text}" in line ${line} can only be read so`, borrowed: null };
      }
      const example = evidence.example();
      if (example === undefined) return { order: undefined, because: null, borrowed: null };
      return borrowedOrder(source.name, example, options);
    },
  };
}

type Example = NonNullable<ReturnType<ReturnType<typeof orderEvidence>['example']>>;

/** The order of files named alike. Throws InputError where they settle none either. */
function borrowedOrder(name: string, example: Example, { orderOfAlike }: SaidOfDates): ChosenOrder {
  const { text, line, first, second, year } = example;
  const alike = orderOfAlike?.(name) ?? null;
  if (alike !== null) {
    const because = `no date in the file decides; ${alike.file}, which has a similar name, is ${alike.order}`;
    return { order: alike.order, because, borrowed: { line, text } };
  }
  throw new InputError(
    `${name}:${line}`,
    `"${text}" is ${first} ${monthName(second)} ${year} if the day comes first, ${second} ${monthName(first)} ${year} if the month does, and no date in the file decides which.`,
    'Set time.order in the phrasebook.',
    'date-order',
    'order',
  );
}

function monthName(month: number): string {
  return (
    ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'][month - 1] ??
    String(month)
  );
}
