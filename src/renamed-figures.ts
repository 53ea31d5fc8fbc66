import type {
  FileFigures,
  Finding,
  FitnessReason,
  Input,
  NonEmpty,
  PairFigures,
  SourceLine,
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
  const lines = lineRenamer(renaming);
  const finding = (own: Finding): Finding => ({
    ...own,
    pair: own.pair === null ? null : pair,
    evidence: lines(own.evidence),
  });
  const reason = (own: FitnessReason): FitnessReason => ({ ...own, lines: lines(own.lines) });
  const { losses, fitness, bringUps, answers } = figures;
  const { now, standing, lastGap, ends, ready } = fitness;
  return {
    ...figures,
    pair,
    losses: losses.map((loss) => ({ ...loss, lines: lines(loss.lines) })),
    fitness: {
      now: now === null ? null : reason(now),
      standing: standing.map(reason),
      lastGap: lastGap === null ? null : { ...lastGap, lines: lines(lastGap.lines) },
      ends: lines(ends),
      ready: lines(ready),
    },
    bringUps: bringUps.map((own) => ({
      ...own,
      pair,
      evidence: lines(own.evidence),
      lightEvidence: lines(own.lightEvidence),
    })),
    answers: answers.map(({ analyzer, findings, questions }) => ({
      analyzer,
      findings: findings.map(finding),
      questions: questions.map((own) => ({
        ...own,
        finding: own.finding === null ? null : finding(own.finding),
      })),
    })),
  };
}

function nameIn(names: ReadonlyMap<string, string>, name: string): string {
  return names.get(name) ?? name;
}

function lineRenamer({ files }: Renaming): (lines: NonEmpty<SourceLine>) => NonEmpty<SourceLine> {
  if (files.size === 0) return (lines) => lines;
  const renamed = (line: SourceLine): SourceLine => ({ ...line, file: nameIn(files, line.file) });
  return ([first, ...rest]) => [renamed(first), ...rest.map(renamed)];
}
