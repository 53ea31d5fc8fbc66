import { csvRows } from '../bytes/csv-rows.ts';
import { type RowShape, rowReader } from '../bytes/open-rows.ts';
import { linesBehindZeros, noZeroBytes } from '../bytes/zero-bytes.ts';
import type { FileRule, Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { guessColumns } from './guess-columns.ts';
import { type Head, headOf } from './head.ts';
import { headByContent } from './head-by-content.ts';
import type { Importer, RuleKey } from './importer.ts';
import { importers } from './importers.ts';
import { checkNumbers, type Header, headersByNumber } from './numbered-columns.ts';
import { unknownLayout } from './unknown-layout.ts';

/** How a file will be read. */
export interface Plan {
  readonly importer: Importer;
  readonly head: Head;
  /** `null` for a text. */
  readonly delimiter: string | null;
  /** The line of a table's header, or what comes before its first row where it has none; 0 for a text. */
  readonly headerLine: number;
  readonly hasHeader: boolean;
  readonly because: string;
  /** Only where no other fits. */
  readonly isLast?: boolean;
}

const decisive: readonly RuleKey[] = ['header', 'line', 'record'];

/** True for a layout in which those keys of a rule have an effect that stand for one layout, or for texts. */
function takes({ ruleKeys }: Importer, rule: FileRule | undefined): boolean {
  return decisive.every((key) => rule?.[key] === undefined || ruleKeys.includes(key));
}

/** How the file is cut into rows. */
export function shapeOf({ delimiter, head: { rule } }: Plan): RowShape {
  return { delimiter, begins: beginsOf(rule) };
}

function beginsOf(rule: FileRule | undefined): RowShape['begins'] {
  const record = rule?.record;
  return record === undefined ? undefined : (line) => record.match(line) !== null;
}

/** Tables first, and of those the one that needs more columns: it says more of a file that it fits. */
const byPrecedence = importers.toSorted((a, b) => needs(b) - needs(a));

function needs(importer: Importer): number {
  return importer.shape === 'table' ? importer.columns.required.length : -1;
}

const delimiters = [',', ';', '\t', '|'] as const;
/** A first line that says how the columns are parted, as spreadsheets write and read it. Common practice, no source. */
const declared = /^\uFEFF?"?sep=([,;\t|])"?[ \t,;|]*\r?$/i;
const mostPreamble = 60;

/**
 * Finds the importer for a file from its first text: of the layout that the phrasebook names, if it does; a table that fits
 * by the names of its columns, else, where no rule is for the file, a table that fits by what its columns hold, else a text.
 * Throws InputError if none does, saying what each one missed.
 */
export function recognise(
  name: string,
  text: string,
  rule: FileRule | undefined,
  phrasebook: Phrasebook,
): Plan {
  const allowed = byPrecedence.filter((i) =>
    rule?.layout === undefined ? takes(i, rule) : i.id === rule.layout,
  );
  const tables = headersByNumber(
    delimitersOf(text).flatMap((delimiter) => headers(text, delimiter, rule)),
    rule,
    phrasebook,
  );
  const asText = headOf([], firstLines(text, beginsOf(rule)), rule);
  const fitting = [
    ...tables.flatMap((table) =>
      allowed
        .filter((i) => i.shape === 'table')
        .flatMap((importer) => planFor(importer, table.head, phrasebook, table)),
    ),
    ...allowed
      .filter((i) => i.shape === 'text')
      .flatMap((importer) => planFor(importer, asText, phrasebook, null)),
  ];
  const best = fitting.sort((a, b) => order(a) - order(b) || a.headerLine - b.headerLine)[0];
  const isTable = best?.importer.shape === 'table';
  if (allowed.some((i) => i.shape === 'table'))
    checkNumbers(name, isTable ? best.head : widest(tables, asText));
  if (isTable) return withContent(name, best, tables, phrasebook);
  const guessed = rule !== undefined ? undefined : guess(name, tables, phrasebook);
  if (guessed !== undefined) return guessed;
  if (best !== undefined) return best;
  const forced = allowed.length === 1 ? allowed[0] : undefined;
  if (forced?.shape === 'text')
    return {
      importer: forced,
      head: asText,
      delimiter: null,
      headerLine: 0,
      hasHeader: false,
      because: 'from the phrasebook',
    };
  throw unknownLayout(name, allowed, tables, asText, phrasebook);
}

function widest(tables: readonly Header[], least: Head): Head {
  return tables.reduce((most, { head }) => (head.names.length > most.names.length ? head : most), least);
}

function order({ importer, isLast = false }: Plan): number {
  return isLast ? byPrecedence.length : byPrecedence.indexOf(importer);
}

function planFor(
  importer: Importer,
  head: Head,
  phrasebook: Phrasebook,
  table: Header | null,
): readonly Plan[] {
  const found = importer.recognise(head, phrasebook);
  if (!found.fits) return [];
  const { because, isLast = false } = found;
  const { delimiter = null, line: headerLine = 0, isRow } = table ?? {};
  const first = `it has no header, and its first row is line ${headerLine + 1}`;
  const said = isRow === true ? `from the phrasebook; ${first}` : because;
  const hasHeader = table !== null && isRow !== true;
  return [{ importer, head, delimiter, headerLine, hasHeader, because: said, isLast }];
}

/** A plan for a table whose header says nothing, by what its columns hold. */
function guess(name: string, tables: readonly Header[], phrasebook: Phrasebook): Plan | undefined {
  for (const header of tables) {
    const found = guessColumns(name, header.head.names, rowsBelow(header, tables), phrasebook);
    const importer = byPrecedence.find((i) => i.id === found?.layout);
    if (found === null || importer === undefined) continue;
    const rule: FileRule = { match: '', layout: undefined, columns: found.columns, line: undefined };
    const { delimiter, line } = header;
    const own = headOf(header.head.names, [], rule);
    return { importer, head: own, delimiter, headerLine: line, hasHeader: true, because: found.because };
  }
  return undefined;
}

/** The first rows below a header, in the same columns. */
function rowsBelow({ delimiter, line }: Header, tables: readonly Header[]): readonly (readonly string[])[] {
  return tables.filter((t) => t.delimiter === delimiter && t.line > line).map((t) => t.head.names);
}

/** The plan with what the rows say of columns that their names do not. */
function withContent(name: string, plan: Plan, tables: readonly Header[], phrasebook: Phrasebook): Plan {
  const header = tables.find((t) => t.line === plan.headerLine && t.delimiter === plan.delimiter);
  const rows = header === undefined ? [] : rowsBelow(header, tables);
  const { head, reasons } = headByContent(name, plan.importer, plan.head, rows, phrasebook);
  return { ...plan, head, because: [plan.because, ...reasons].join('; ') };
}

function delimitersOf(text: string): readonly string[] {
  const said = declared.exec(text.slice(0, 20).split('\n')[0] ?? '')?.[1];
  return said === undefined ? delimiters : [said];
}

/** Every row near the start that could be the header: what stands before it is preamble. */
function headers(text: string, delimiter: string, rule: FileRule | undefined): readonly Header[] {
  const found: Header[] = [];
  const reader = csvRows(delimiter, (row) => {
    if (row.line > mostPreamble || row.width() < 2) return;
    const names = Array.from({ length: row.width() }, (_, index) => row.cell(index));
    found.push({ head: headOf(names, [], rule), delimiter, line: row.line });
  });
  reader.push(text);
  reader.end();
  return found;
}

/** The first lines of a text that hold something, or its first records. */
function firstLines(text: string, begins: RowShape['begins']): readonly string[] {
  const all = linesBehindZeros(text, 1, 0, noZeroBytes()).split(/\r?\n/);
  // The last line may be cut off where the first text ends.
  const whole = all.length > 1 ? all.slice(0, -1) : all;
  const found: string[] = [];
  const reader = rowReader({ delimiter: null, begins }, (row) => {
    const line = row.cell(0);
    if (found.length < mostPreamble && line.replaceAll('\0', '').trim() !== '') found.push(line);
  });
  reader.push(`${whole.join('\n')}\n`);
  reader.end();
  return found;
}
