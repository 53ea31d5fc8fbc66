import type {
  ComparedBringUp,
  ComparedPair,
  FileFigures,
  FitnessReason,
  NonEmpty,
  PairFigures,
  SiteFigures,
  SourceLine,
} from './vocabulary.ts';

/** The figures of a site as far as pairs are compared by them: no lines, no findings of pairs, nothing that only a report shows. */
export type BriefSite = Omit<SiteFigures, 'pairs'> & { readonly pairs: readonly ComparedPair[] };

/** What stands for all lines: an answer in brief cites none. */
const noLine: NonEmpty<SourceLine> = [{ file: '', line: 0, text: '' }];

/**
 * Gives the figures of sites in brief: of a hundred thousand pairs they are a fraction of the whole. Equal texts of all sites that one
 * function was given are kept once.
 */
export function briefly(): (
  site: Omit<SiteFigures, 'pairs'> & { readonly pairs: readonly BriefOrWhole[] },
) => BriefSite {
  const known = new Map<string, string>();
  const same = <T extends string | null>(text: T): T | string => {
    if (text === null) return text;
    const first = known.get(text);
    if (first === undefined) known.set(text, text);
    return first ?? text;
  };
  return (site) => ({
    ...site,
    files: site.files.map(fileInBrief),
    pairs: site.pairs.map((pair) => pairInBrief(pair, same)),
  });
}

type BriefOrWhole = PairFigures | ComparedPair;

function fileInBrief({ input, notices, ...rest }: FileFigures): FileFigures {
  return {
    ...rest,
    input: { ...input, units: [], unmatched: [] },
    notices,
    pairs: [],
    stamps: { changes: [], ends: [] },
    strays: null,
    offset: null,
  };
}

type Same = <T extends string | null>(text: T) => T | string;

function pairInBrief(figures: BriefOrWhole, same: Same): ComparedPair {
  const { from, to, observed, losses, bouts, availability, identities, activeMonths, bringUps, fitness } =
    figures;
  const reason = ({ said, isUnknown }: FitnessReason): FitnessReason => ({
    said: same(said),
    ...(isUnknown === undefined ? {} : { isUnknown }),
    lines: noLine,
  });
  const { now, standing, lastGap } = fitness;
  return {
    ...{ from, to, observed, bouts, availability, activeMonths },
    pair: same(figures.pair),
    site: same(figures.site),
    losses: losses.map(({ kind, time, earliest }) => ({ kind, time, earliest, lines: noLine })),
    identities: identities.map(({ half, signal, steps }) => ({
      half: same(half),
      signal,
      steps: steps.map(({ time, value, initial }) => ({ time, value: same(value), initial })),
    })),
    bringUps: bringUps.map((own) => bringUpInBrief(own, same)),
    fitness: {
      now: now === null ? null : reason(now),
      standing: standing.map(reason),
      lastGap: lastGap === null ? null : { to: lastGap.to, lines: noLine },
      ...{ ends: noLine, ready: noLine },
    },
  };
}

function bringUpInBrief(own: ComparedBringUp, same: Same): ComparedBringUp {
  const { cause, outcome, start, sync, held, settledSeconds, watchedTo } = own;
  const isOne = JSON.stringify(sync) === JSON.stringify(held);
  return {
    ...{ cause, outcome, start, sync, held: isOne ? sync : held, settledSeconds, watchedTo },
    pair: same(own.pair),
    half: same(own.half),
    firmware: same(own.firmware),
    model: same(own.model),
  };
}
