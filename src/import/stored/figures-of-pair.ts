import type { FileFigures, NonEmpty, PairAnswer, PairFigures } from '../../vocabulary.ts';
import {
  allStored,
  bringUpRest,
  fileRest,
  findingRest,
  lossRest,
  pairRest,
  questionRest,
  type StoredPairRest,
  type StoredRow,
} from './figures-schema.ts';
import { parsedJson } from './sealed-file.ts';
import { asStored } from './stored-timeline-schema.ts';

/** The figures of a pair with places in the place of lines, and the lines themselves: file, number, text. */
export type StoredPair = PairFigures<NonEmpty<number>> & Pick<StoredPairRest, 'lines'>;

/** The figures of files by their rows; `null` where one is anything else. */
export function filesOf(rows: readonly StoredRow[]): readonly FileFigures[] | null {
  return rows.every((row) => row.kind === 'file') ? allStored(fileRest, restsOf(rows)) : null;
}

/** The figures of a pair by its rows, its own first; `null` where one is anything else. */
export function pairOf([head, ...told]: readonly StoredRow[]): StoredPair | null {
  const pair = head === undefined ? null : asStored(pairRest, parsedJson(head.rest));
  const losses = allStored(lossRest, restsOf(told, 'loss'));
  const bringUps = allStored(bringUpRest, restsOf(told, 'bring-up'));
  const answers = answersOf(told.filter(({ kind }) => kind === 'finding' || kind === 'question'));
  if (pair === null || losses === null || bringUps === null || answers === null) return null;
  const known = losses.length + bringUps.length + answers.rows;
  return known === told.length ? { ...pair, losses, bringUps, answers: answers.list } : null;
}

/** What the rests of the rows say, or of those of one kind. */
function restsOf(rows: readonly StoredRow[], kind?: StoredRow['kind']): readonly unknown[] {
  return rows.flatMap((row) => (kind === undefined || row.kind === kind ? [parsedJson(row.rest)] : []));
}

/** What each analyzer says, in the order of its first row. */
function answersOf(
  rows: readonly StoredRow[],
): { readonly list: readonly PairAnswer<NonEmpty<number>>[]; readonly rows: number } | null {
  type Answer = PairAnswer<NonEmpty<number>>;
  const answers = new Map<string, Answer>();
  for (const { kind, rest, statement } of rows) {
    const found = kind === 'finding' ? asStored(findingRest, parsedJson(rest)) : null;
    const asked = kind === 'question' ? asStored(questionRest, parsedJson(rest)) : null;
    const analyzer = found?.analyzer ?? asked?.analyzer;
    if (analyzer === undefined || (found !== null && statement === null)) return null;
    const own: Answer = answers.get(analyzer) ?? { analyzer, findings: [], questions: [] };
    if (found !== null) {
      const { analyzer: _analyzer, ...finding } = found;
      answers.set(analyzer, {
        ...own,
        findings: [...own.findings, { ...finding, statement: statement ?? '' }],
      });
    }
    if (asked !== null) {
      const { p, finding } = asked;
      answers.set(analyzer, { ...own, questions: [...own.questions, { p, finding }] });
    }
  }
  return { list: [...answers.values()], rows: rows.length };
}
