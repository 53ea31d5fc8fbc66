import { InputError } from '../bytes/input-error.ts';
import type { FileRule, Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { columnNumber, type Head, hasUnit, timeColumns } from './head.ts';
import type { Importer } from './importer.ts';
import { importers } from './importers.ts';
import type { Header } from './numbered-columns.ts';

/** The refusal of a text of which no line begins a record. */
export function noRecords(name: string, rule: FileRule | undefined): InputError {
  return new InputError(
    name,
    `no line begins a record: the pattern \`record\` of the rule for "${rule?.match}" matches none.`,
    'Correct the pattern in the phrasebook, or remove it if each line is a record.',
  );
}

/** The refusal of a file that no layout fits. */
export function unknownLayout(
  name: string,
  allowed: readonly Importer[],
  tables: readonly Header[],
  asText: Head,
  phrasebook: Phrasebook,
): InputError {
  const { rule, lines } = asText;
  if (rule?.record !== undefined && lines.length === 0) return noRecords(name, rule);
  const strange = Object.entries(rule?.columns ?? {}).find(
    ([, column = '#1']) => columnNumber(column) === null && !lines.some((line) => line.includes(column)),
  );
  if (strange !== undefined)
    return new InputError(
      name,
      `columns.${strange[0]} of the rule for "${rule?.match}" is "${strange[1]}", but its header has no such column and its lines no such field.`,
      'Use the name in the file, or remove the key.',
    );
  return new InputError(
    name,
    `the layout is not known: ${lacks(allowed, tables, asText, phrasebook)}.`,
    adviceFor(name, tables, phrasebook),
    'unreadable',
    'layout',
  );
}

/** What to do about a file that no layout fits: where only the unit is missing, the line that says it. */
function adviceFor(name: string, tables: readonly Header[], phrasebook: Phrasebook): string {
  const match = `match: ${JSON.stringify(name.split(/[/\\]/).at(-1) ?? name)}`;
  const lacksUnit = tables.some(({ head }) =>
    importers.some((i) => {
      const found = i.shape === 'table' ? i.recognise(head, phrasebook) : { fits: true, because: '' };
      return !found.fits && found.because === 'no column for unit';
    }),
  );
  if (!tables.some(({ head }) => head.names.length >= leastColumns))
    return `Describe its lines under files in a phrasebook: files: [{ ${match}, line: "^(?<time>\\\\S+ \\\\S+) (?<unit>\\\\S+) (?<message>.*)$" }].`;
  return lacksUnit
    ? `Give its unit in a phrasebook: files: [{ ${match}, unit: RO1-A }], or the column of the unit: files: [{ ${match}, columns: { unit: NAME } }].`
    : `Describe the file under files in a phrasebook: files: [{ ${match}, columns: { time: NAME, unit: NAME, message: NAME } }], and add unit: RO1-A if no column names a unit.`;
}

/** What a file lacks to be read, and where: of a table the columns, of a text the times. */
function lacks(
  allowed: readonly Importer[],
  tables: readonly Header[],
  asText: Head,
  phrasebook: Phrasebook,
): string {
  const [only, ...others] = allowed;
  if (only !== undefined && others.length === 0)
    return `${only.id}: ${only.recognise(tables[0]?.head ?? asText, phrasebook).because}`;
  const [header] = tables
    .filter(({ head }) => head.names.length >= leastColumns)
    .toSorted((a, b) => missingIn(a.head).length - missingIn(b.head).length || a.line - b.line);
  if (header === undefined) {
    const texts = allowed.filter((i) => i.shape === 'text');
    return texts.map((i) => `${i.id}: ${i.recognise(asText, phrasebook).because}`).join('; ');
  }
  const { names } = header.head;
  const more = names.length > mostNamed ? ` and ${names.length - mostNamed} more` : '';
  return `its header in line ${header.line}, ${names.slice(0, mostNamed).map(shown).join(', ')}${more}, has no column for ${missingIn(header.head).join(', ')}`;
}

function missingIn(head: Head): readonly string[] {
  const saysSomething =
    head.column('message') >= 0 || (head.column('parameter') >= 0 && head.column('value') >= 0);
  return [
    ...(timeColumns(head).length > 0 ? [] : ['time']),
    ...(hasUnit(head, null) ? [] : ['unit']),
    ...(saysSomething ? [] : ['message or parameter']),
  ];
}

/** A text with a delimiter in its first line is no table yet. Chosen here. */
const leastColumns = 3;
const mostNamed = 4;
const longestShown = 40;

function shown(text: string): string {
  return `"${text.length > longestShown ? `${text.slice(0, longestShown)}...` : text}"`;
}
