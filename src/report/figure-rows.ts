import {
  type FileFigures,
  type Finding,
  type NonEmpty,
  type PairFigures,
  type SiteFigures,
  type SourceLine,
  withLines,
} from '../vocabulary.ts';

/**
 * One row of the figures of a site: the site, a file, a pair, or what is told of the pair before it. What a query may ask stands
 * in fields of its own; `rest` is what is read back, as JSON: lines stand in it by their places among those of the pair.
 */
export interface FigureRow {
  readonly site: string | null;
  readonly pair: string | null;
  readonly half: string | null;
  readonly kind: 'site' | 'file' | 'pair' | 'loss' | 'bring-up' | 'finding' | 'question';
  /** The name of a file, the kind of a loss, the cause of a bring-up, the id of a finding, the analyzer that asks. */
  readonly what: string | null;
  /** How a bring-up ended, how severe a finding is. */
  readonly outcome: string | null;
  readonly time: number | null;
  readonly earliest: number | null;
  readonly until: number | null;
  /** Of a pair how long it was observed; of a bring-up the time to the ready partner, with its bounds. */
  readonly seconds: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly firmware: string | null;
  readonly model: string | null;
  readonly losses: number | null;
  readonly bouts: number | null;
  readonly availability: number | null;
  readonly p: number | null;
  readonly statement: string | null;
  readonly rest: string;
}

/** The figures of a site as rows: the site, its files, then every pair with what is told of it. */
export function figureRows(site: SiteFigures): readonly FigureRow[] {
  const { files, pairs, ...made } = site;
  const names = new Map<string, number>();
  const ofPairs = pairs.flatMap((pair) => pairRows(pair, names));
  return [rowOf('site', {}, { ...made, names: [...names.keys()] }), ...files.map(fileRow), ...ofPairs];
}

type Shown = Partial<Omit<FigureRow, 'kind' | 'rest'>>;

const nothing = {
  ...{ site: null, pair: null, half: null, what: null, outcome: null },
  ...{ time: null, earliest: null, until: null, seconds: null, low: null, high: null },
  ...{ firmware: null, model: null, losses: null, bouts: null, availability: null, p: null, statement: null },
} as const satisfies Shown;

function rowOf(kind: FigureRow['kind'], shown: Shown, rest: unknown): FigureRow {
  return { ...nothing, ...shown, kind, rest: JSON.stringify(rest) };
}

function fileRow(file: FileFigures): FigureRow {
  const { file: what, from, to } = file.input;
  return rowOf('file', { what, time: from, until: to }, file);
}

function pairRows(pair: PairFigures, names: Map<string, number>): readonly FigureRow[] {
  const table = lineTable(names);
  const { losses, bringUps, answers, ...rest } = withLines(pair, table.placesOf);
  const own = { site: pair.site, pair: pair.pair };
  const observed = pair.observed.reduce((sum, { from, to }) => sum + to - from, 0);
  const told = [
    ...losses.map((loss) => {
      const { kind: what, time, earliest } = loss;
      return rowOf('loss', { ...own, what, time, earliest }, loss);
    }),
    ...bringUps.map((bringUp) => {
      const { half, cause, outcome, start, watchedTo, firmware, model, sync } = bringUp;
      const { seconds, low, high } = sync;
      const shown = { ...own, half, what: cause, outcome, ...start, until: watchedTo };
      return rowOf('bring-up', { ...shown, firmware, model, seconds, low, high }, bringUp);
    }),
    ...answers.flatMap(({ analyzer, findings, questions }) => [
      ...findings.map((finding) => findingRow(analyzer, { ...own, ...shownOf(finding) }, finding)),
      ...questions.map(({ p, finding }) =>
        rowOf('question', { ...own, what: analyzer, p }, { analyzer, p, finding }),
      ),
    ]),
  ];
  const shown = {
    ...{ time: pair.from, until: pair.to, seconds: observed / 1000, availability: pair.availability },
    ...{ losses: losses.filter((l) => l.kind === 'counted').length, bouts: pair.bouts.length },
  };
  return [rowOf('pair', { ...own, ...shown }, { ...rest, lines: table.lines }), ...told];
}

function findingRow(analyzer: string, shown: Shown, found: object): FigureRow {
  return rowOf('finding', shown, { analyzer, ...found, statement: undefined });
}

function shownOf({ half, id, severity, from, to, statement }: Omit<Finding, 'evidence'>): Shown {
  return { half, what: id, outcome: severity, time: from, until: to, statement };
}

/** Lines, each once, as the place of their file among `names`, their number and their text. */
function lineTable(names: Map<string, number>): {
  readonly lines: readonly (readonly [number, number, string])[];
  placesOf(lines: NonEmpty<SourceLine>): readonly number[];
} {
  const lines: [number, number, string][] = [];
  const places = new Map<string, number>();
  const placeOf = ({ file, line, text }: SourceLine): number => {
    const key = `${file}\n${line}\n${text}`;
    const known = places.get(key);
    if (known !== undefined) return known;
    const name = names.get(file) ?? names.size;
    names.set(file, name);
    places.set(key, lines.length);
    return lines.push([name, line, text]) - 1;
  };
  return { lines, placesOf: (cited) => cited.map(placeOf) };
}
