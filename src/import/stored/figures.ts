import {
  type NonEmpty,
  type PairFigures,
  type SiteFigures,
  type SourceLine,
  withLines,
} from '../../vocabulary.ts';
import type { FileSource } from '../bytes/file-source.ts';
import type { InputError } from '../bytes/input-error.ts';
import { filesOf, pairOf, type StoredPair } from './figures-of-pair.ts';
import { figureRows, figuresHead, type StoredRow, siteRest } from './figures-schema.ts';
import { foreignFigures } from './parquet-file.ts';
import { parsedJson, readSealed, type SealedOptions } from './sealed-file.ts';
import { asStored } from './stored-timeline-schema.ts';

/** The columns of a row that are read back. */
const columns = ['kind', 'statement', 'rest'] as const;

/**
 * Reads figures of a fleet back, a site at a time and in the order in which they were written. Throws InputError if the file is
 * damaged, or is anything else than figures that this version writes.
 */
export async function readFigures(
  source: FileSource,
  options: SealedOptions,
  onSite: (site: SiteFigures) => void,
): Promise<void> {
  const { parquet, text } = await readSealed(source, options, 'figures');
  const foreign = foreignFigures(source.name);
  if (text === null || asStored(figuresHead, parsedJson(text)) === null) throw foreign;
  for (let group = 0; group < parquet.groups; group += 1) {
    const rows = asStored(figureRows, await parquet.groupRows(group, columns));
    if (rows === null) throw foreign;
    onSite(siteOf(rows, foreign));
  }
}

/** The figures of one site: its own row, those of its files, and each pair with the rows that follow it. */
function siteOf(rows: readonly StoredRow[], foreign: InputError): SiteFigures {
  const [head, ...others] = rows;
  const site = head?.kind === 'site' ? asStored(siteRest, parsedJson(head.rest)) : null;
  const firstPair = others.findIndex((row) => row.kind === 'pair');
  const ofFiles = firstPair < 0 ? others : others.slice(0, firstPair);
  const files = filesOf(ofFiles);
  if (site === null || files === null) throw foreign;
  const { names, ...made } = site;
  const pairs = (firstPair < 0 ? [] : inPairs(others.slice(firstPair))).map((own) => {
    const pair = pairOf(own);
    const cited = pair === null ? null : withItsLines(pair, names);
    if (cited === null) throw foreign;
    return cited;
  });
  return { ...made, files, pairs };
}

/** The rows of each pair, that of the pair itself first. */
function inPairs(rows: readonly StoredRow[]): readonly (readonly StoredRow[])[] {
  const begins = [...rows.keys()].filter((index) => rows[index]?.kind === 'pair');
  return begins.map((begin, index) => rows.slice(begin, begins[index + 1]));
}

/** The figures with the lines that they name; `null` where they name one that is not there. */
function withItsLines({ lines, ...pair }: StoredPair, names: readonly string[]): PairFigures | null {
  const table = lines.flatMap(([file, line, text]): readonly SourceLine[] => {
    const name = names[file];
    return name === undefined ? [] : [{ file: name, line, text }];
  });
  let isWhole = table.length === lines.length;
  const missing: SourceLine = { file: '', line: 0, text: '' };
  const cited = withLines(pair, ([first, ...rest]: NonEmpty<number>): NonEmpty<SourceLine> => {
    const at = (place: number): SourceLine => {
      const found = table[place];
      if (found === undefined) isWhole = false;
      return found ?? missing;
    };
    return [at(first), ...rest.map(at)];
  });
  return isWhole ? cited : null;
}
