import { fileFigures } from './analyze/file-figures.ts';
import type { Asked } from './analyze/run-analyzers.ts';
import { pairFigures } from './fleet/pair-figures.ts';
import type { InputError } from './import/bytes/input-error.ts';
import type { Limits } from './limits.ts';
import type { PairFacts } from './timeline/facts.ts';
import { groupBy } from './timeline/groups.ts';
import type { ClockOffset, ImportedFile, SiteFigures } from './vocabulary.ts';

/** What to do about clocks that disagree; `reference` names the file whose clock counts. */
export interface Clocks {
  readonly align: boolean;
  readonly reference: string | null;
}

/** What was read together, and what the analyzers ask of it. */
export interface ReadSite {
  readonly limits: Limits;
  readonly clocks: Clocks;
  readonly files: readonly ImportedFile[];
  readonly offsets: readonly ClockOffset[];
  readonly facts: readonly PairFacts[];
  readonly asked: readonly Asked[];
  readonly failures: readonly InputError[];
}

/** The figures of all pairs and files that were read together: what a fleet review needs of them, and no more. */
export function siteFigures(read: ReadSite): SiteFigures {
  const { limits, clocks, files, offsets, facts, asked, failures } = read;
  const answers = groupBy(asked, ({ pair }) => pair);
  return {
    holdMs: limits.rules.holdMs,
    ...clocks,
    files: fileFigures(files, offsets),
    failures: failures.map(({ where, what, fix, kind, setting }) => ({ where, what, fix, kind, setting })),
    pairs: facts.map((own) => pairFigures(own, answers.get(own.timeline.pair) ?? [], limits.rules)),
  };
}
