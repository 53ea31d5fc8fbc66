import {
  type ComparedPair,
  type FileFigures,
  type Finding,
  type Input,
  type NonEmpty,
  type PairFigures,
  type SourceLine,
  withLines,
} from './vocabulary.ts';

/** Files and pairs that get another name, by the one that they have. */
export interface Renaming {
  readonly files: ReadonlyMap<string, string>;
  readonly pairs: ReadonlyMap<string, string>;
}

/** The name of a file without that of what it was read from. */
export function bareFile({ file, container }: Pick<Input, 'file' | 'container'>): string {
  const prefix = `${container?.file ?? ''}/`;
  return container !== undefined && file.startsWith(prefix) ? file.slice(prefix.length) : file;
}

/** The figures of a file, and all that names it or a pair, under other names. */
export function renamedFile(figures: FileFigures, renaming: Renaming): FileFigures {
  const { input, pairs, notices, offset } = figures;
  const lines = lineRenamer(renaming);
  return {
    ...figures,
    input: { ...input, file: nameIn(renaming.files, input.file) },
    pairs: pairs.map((pair) => nameIn(renaming.pairs, pair)),
    notices: notices.map((notice) => ({ ...notice, lines: lines(notice.lines) })),
    offset:
      offset === null
        ? null
        : {
            ...offset,
            file: nameIn(renaming.files, offset.file),
            reference: nameIn(renaming.files, offset.reference),
            evidence: lines(offset.evidence),
          },
  };
}

/** The figures of a pair under another name, with the lines of files that have one. */
export function renamedPair(figures: PairFigures, renaming: Renaming): PairFigures {
  const pair = nameIn(renaming.pairs, figures.pair);
  const cited = renaming.files.size === 0 ? figures : withLines(figures, lineRenamer(renaming));
  const renamed = (own: Finding): Finding => ({ ...own, pair: own.pair === null ? null : pair });
  return {
    ...cited,
    pair,
    bringUps: cited.bringUps.map((own) => ({ ...own, pair })),
    answers: cited.answers.map(({ analyzer, findings, questions }) => ({
      analyzer,
      findings: findings.map(renamed),
      questions: questions.map(({ p, finding }) => ({
        p,
        finding: finding === null ? null : renamed(finding),
      })),
    })),
  };
}

/** The figures of a pair in brief under another name: they cite no file. */
export function renamedBrief(figures: ComparedPair, { pairs }: Renaming): ComparedPair {
  const pair = nameIn(pairs, figures.pair);
  return { ...figures, pair, bringUps: figures.bringUps.map((own) => ({ ...own, pair })) };
}

function nameIn(names: ReadonlyMap<string, string>, name: string): string {
  return names.get(name) ?? name;
}

function lineRenamer({ files }: Renaming): (lines: NonEmpty<SourceLine>) => NonEmpty<SourceLine> {
  if (files.size === 0) return (lines) => lines;
  const renamed = (line: SourceLine): SourceLine => ({ ...line, file: nameIn(files, line.file) });
  return ([first, ...rest]) => [renamed(first), ...rest.map(renamed)];
}
