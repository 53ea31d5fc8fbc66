import type { DraftKey, FileDraft, SeenWording } from '../../vocabulary.ts';
import { eachChunk } from '../bytes/damaged-end.ts';
import { detectEncoding, type Encoding } from '../bytes/decode.ts';
import type { FileSource } from '../bytes/file-source.ts';
import { InputError } from '../bytes/input-error.ts';
import { type RowShape, rowReader } from '../bytes/open-rows.ts';
import { readHead } from '../bytes/read-head.ts';
import type { Row } from '../bytes/row.ts';
import { noZeroBytes } from '../bytes/zero-bytes.ts';
import type { DateOrder } from '../clock/stamp.ts';
import { timeReader } from '../clock/time-reader.ts';
import { zoneOf } from '../clock/zones.ts';
import { columnsOf } from '../layouts/columns.ts';
import { unitKeys } from '../layouts/head.ts';
import { leadingStamp } from '../layouts/leading-stamp.ts';
import { type Plan, recognise, shapeOf } from '../layouts/recognise.ts';
import { columnKeys } from '../phrasebook/column-keys.ts';
import { ruleFor, withStamps } from '../phrasebook/file-subject.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { isSeverityLetter } from '../phrasebook/severity-words.ts';
import { guessOrder } from './guess-dates.ts';
import { type FileGuess, guessFile } from './guess-file.ts';
import { draftTime, type YearsKnown } from './guess-time.ts';
import { mostUnits, tallySink } from './tally-sink.ts';
import { wordingTally } from './tally-wordings.ts';
import { type Understander, understander } from './understanding.ts';

/** What the user says, and what is known of the other files. */
export interface SurveyOptions {
  readonly phrasebook: Phrasebook;
  readonly order: DateOrder | null;
  readonly year: number | null;
  readonly years: YearsKnown;
  /** The names of all files. */
  readonly names: readonly string[];
}

/** How one file may be read, and all it says. */
export interface FileSurvey {
  readonly draft: FileDraft;
  readonly units: readonly string[];
  readonly wordings: readonly SeenWording[];
}

const mostSamples = 3;
const longestSample = 200;

/**
 * Reads a file once more for what it says, understood or not: as the layout that fits, else as it is guessed. `null` for a
 * file of no text, or one in which no stamp is found.
 */
export async function surveyFile(source: FileSource, options: SurveyOptions): Promise<FileSurvey | null> {
  const head = await readHead(source);
  const encoding = detectEncoding(head);
  if (encoding === null) return null;
  const text = new TextDecoder(encoding.label).decode(head, { stream: true });
  const file: Opened = { source, encoding, text };
  const known = understander(options.phrasebook);
  const { plan, columns } = planOf(file, options);
  const read = plan === null ? null : await surveyKnown(file, plan, options, known);
  if (read !== null) return read;
  const guess = guessFile(source.name, text, columns === null ? options : { ...options, columns });
  return guess === null ? null : surveyGuess(file, guess, options, known);
}

interface Opened {
  readonly source: FileSource;
  readonly encoding: Encoding;
  readonly text: string;
}

interface Planned {
  readonly plan: Plan | null;
  readonly columns: Readonly<Record<string, string>> | null;
}

/**
 * The layout that fits; no plan where none does, or only by what the columns of a table hold: what those were taken for is then
 * what is guessed here.
 */
function planOf({ source, text }: Opened, { phrasebook }: SurveyOptions): Planned {
  try {
    const rule = ruleFor(phrasebook, source.name);
    const plan = recognise(source.name, text, rule, phrasebook);
    const own = plan.head.rule?.columns;
    if (own === undefined || rule !== undefined) return { plan, columns: null };
    return {
      plan: null,
      columns: Object.fromEntries(Object.entries(own).flatMap(([k, v]) => (v === undefined ? [] : [[k, v]]))),
    };
  } catch (error) {
    // A layout that is not known is what is guessed next.
    if (error instanceof InputError) return { plan: null, columns: null };
    throw error;
  }
}

async function surveyKnown(
  file: Opened,
  plan: Plan,
  options: SurveyOptions,
  known: Understander,
): Promise<FileSurvey | null> {
  const phrasebook = withStamps(options.phrasebook, plan.head.rule);
  const guess = guessFile(file.source.name, file.text, options);
  const order = options.order ?? phrasebook.order ?? guessOrder(guess?.stamps ?? []) ?? undefined;
  const times = timeReader(
    zoneOf('UTC', ''),
    order,
    options.year ?? phrasebook.year ?? 2000,
    phrasebook.pattern,
  );
  times.setDay(0);
  const tally = wordingTally();
  const take = plan.importer.open(plan.head, phrasebook, times);
  const units = new Set<string>();
  const counts = { taken: 0, rejected: 0 };
  const into = tallySink(tally, units, counts);
  await eachRow(file, shapeOf(plan), plan.headerLine, (row) => take(row, into(row)));
  if (counts.taken === 0 || isOtherUnit(plan, guess, units, counts.taken)) return null;
  const columns = columnsOf(plan, phrasebook).flatMap(
    ({ name, meaning }, place): readonly [string, string][] => {
      const key = columnKeys.find((k) => k === meaning);
      // A parameter may be called as a key is: the role of half B is no column of roles.
      const isSignal = unitKeys.some((k) => k === key && plan.head.column(k) !== place);
      return key === undefined || isSignal ? [] : [[key, name]];
    },
  );
  const keys: DraftKey[] = [
    { key: 'layout', value: plan.importer.id, because: null },
    ...(columns.length === 0 ? [] : [{ key: 'columns', value: Object.fromEntries(columns), because: null }]),
  ];
  const time = guess === null ? [] : draftTime(file.source.name, guess.stamp, guess.stamps, options);
  return {
    draft: draftOf(
      file,
      keys,
      time.filter(({ key }) => key !== 'format'),
      { isGuess: false, isZoneOpen: times.usedZone(), stamps: guess?.stamps ?? [] },
    ),
    units: [...units],
    wordings: tally.result(file.source.name, known),
  };
}

/** Whether what was taken for the unit is none: each line names another, it is a number or a letter of severity, or it is not where a unit is found. */
function isOtherUnit(plan: Plan, guess: FileGuess | null, units: ReadonlySet<string>, rows: number): boolean {
  const names = [...units];
  if (rows < leastRows || names.length === 0) return false;
  if (names.every(isSeverityLetter)) return true;
  if (plan.because !== `its lines are ${leadingStamp.title}`) return false;
  if (units.size > rows / 2 || names.every((name) => /^\W*\d*\W*$/.test(name))) return true;
  return guess?.units?.some((unit) => !units.has(unit)) ?? false;
}

const leastRows = 10;

async function surveyGuess(
  file: Opened,
  guess: FileGuess,
  options: SurveyOptions,
  known: Understander,
): Promise<FileSurvey> {
  const tally = wordingTally();
  const units = new Set<string>(guess.unit === null ? [] : [guess.unit]);
  await eachRow(file, { delimiter: guess.delimiter, begins: undefined }, guess.headerLine, (row) => {
    const said = guess.take(Array.from({ length: row.width() }, (_, i) => row.cell(i)));
    if (said === null) {
      tally.goOn();
      return;
    }
    const { unit = guess.unit ?? '', message, parameter, value = '' } = said.keys;
    const tallied = { line: row.line, unit, text: () => row.text() };
    if (unit !== '' && guess.unit === null) {
      if (units.size < mostUnits) units.add(unit);
      tally.unit(unit, tallied);
    }
    if (message !== undefined) tally.message(message, tallied);
    if (parameter !== undefined) tally.reading(parameter, value, tallied);
    for (const [name, cell] of said.others) tally.reading(name, cell, tallied);
  });
  const time = draftTime(file.source.name, guess.stamp, guess.stamps, options);
  const isZoneOpen = !guess.stamps.some((stamp) => /(?:Z|[+-]\d{2}:?\d{2})$|^\d{10,}/.test(stamp.trim()));
  return {
    draft: draftOf(file, guess.keys, time, { isGuess: true, isZoneOpen, stamps: guess.stamps }),
    units: [...units],
    wordings: tally.result(file.source.name, known),
  };
}

function draftOf(
  { source, text }: Opened,
  keys: FileDraft['keys'],
  time: FileDraft['time'],
  { isGuess, isZoneOpen, stamps }: Pick<FileDraft, 'isGuess' | 'isZoneOpen' | 'stamps'>,
): FileDraft {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== '');
  const samples = lines.slice(0, mostSamples).map((line) => line.slice(0, longestSample));
  return {
    file: source.name,
    keys,
    time,
    isZoneOpen,
    isGuess,
    samples,
    stamps: stamps.slice(0, mostSamples),
  };
}

/** Hands on the rows of a file that hold data. */
async function eachRow(
  { source, encoding }: Opened,
  shape: RowShape,
  headerLine: number,
  take: (row: Row) => void,
): Promise<void> {
  const onRow = (row: Row): void => {
    if (row.line > headerLine && row.text().trim() !== '') take(row);
  };
  const rows = rowReader(shape, onRow, noZeroBytes());
  const decoder = new TextDecoder(encoding.label);
  await eachChunk(source, (chunk) => {
    rows.push(decoder.decode(chunk, { stream: true }));
    return true;
  });
  rows.push(decoder.decode());
  rows.end();
}
