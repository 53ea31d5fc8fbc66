import type { ImportedFile } from '../vocabulary.ts';
import { eachChunk } from './bytes/damaged-end.ts';
import { detectEncoding, type Encoding, windows1252 } from './bytes/decode.ts';
import type { FileSource } from './bytes/file-source.ts';
import { InputError } from './bytes/input-error.ts';
import { readHead } from './bytes/read-head.ts';
import type { DoubtfulPair } from './changes/doubtful-pairs.ts';
import { type ChosenOrder, type OrderScan, orderScan } from './clock/choose-order.ts';
import { type ChosenZone, chooseZone } from './clock/choose-zone.ts';
import type { ClockStep } from './clock/clock-order.ts';
import type { DateOrder } from './clock/stamp.ts';
import { type TimeReader, timeReader } from './clock/time-reader.ts';
import type { Zone } from './clock/zones.ts';
import { assemble, type Parts } from './describe-file.ts';
import type { ImportOptions } from './import-options.ts';
import { type Plan, recognise, shapeOf } from './layouts/recognise.ts';
import { noteEffects } from './layouts/rule-effects.ts';
import { ruleFor, withStamps } from './phrasebook/file-subject.ts';
import { type FileRule, noteUsed, type UsedRules } from './phrasebook/phrasebook-rules.ts';
import { type Passed, type Reading, readRows } from './read-rows.ts';

/**
 * Reads one file to its changes, in one pass over its bytes and without keeping its rows. Throws InputError if nothing
 * of it can be used; anything less is a notice and a count.
 */
export async function readFile(source: FileSource, options: ImportOptions): Promise<ImportedFile> {
  const head = await readHead(source);
  const encoding = encodingOf(source, head);
  const read = await readAs(source, options, head, encoding);
  if (read.parts.isForeign && encoding.isGuess) {
    const other = await readAs(source, options, head, windows1252);
    return assemble(source, options, other.parts, other.rule);
  }
  return assemble(source, options, read.parts, read.rule);
}

/** The encoding of a file that begins with such bytes. Throws InputError where they are no text. */
export function encodingOf({ name }: FileSource, head: Uint8Array): Encoding {
  const encoding = detectEncoding(head);
  if (encoding === null)
    throw new InputError(name, 'this is a binary file, not text.', 'Export it as CSV or text.');
  return encoding;
}

/** Reads a file in one encoding. */
async function readAs(
  source: FileSource,
  given: ImportOptions,
  head: Uint8Array,
  encoding: Encoding,
): Promise<Read> {
  const way = wayOf(source, given, head, encoding);
  const { scan } = way;
  if (scan.isOpen()) {
    await eachChunk(source, (bytes) => {
      scan.push(bytes);
      return scan.isOpen();
    });
    scan.end();
  }
  const order = scan.chosen();
  const passing = (steps: readonly ClockStep[] | null, doubtful: readonly DoubtfulPair[]): Promise<Passed> =>
    readRows(way.reading(order, steps, new Set(doubtful.map((d) => d.pair))));
  const first = await passing(null, []);
  // Only the whole file tells which words name no pair; what was taken for one is read once more without it.
  const { doubtful } = first.sink;
  const told = doubtful.length > 0 ? await passing(null, doubtful) : first;
  const { steps, outOfOrder } = told.sink;
  // Only readings depend on their order; a file that has some out of order is read once more, sorted.
  const passed = outOfOrder > 0 ? await passing(steps, doubtful) : told;
  return { parts: partsOf(way, order, steps, doubtful, passed), rule: way.rule };
}

/** How a file is read in one encoding, as its first bytes and the phrasebook say. */
export interface Way {
  readonly encoding: Encoding;
  readonly rule: FileRule | undefined;
  readonly plan: Plan;
  readonly zone: ChosenZone;
  /** Must see the bytes of the file before the order of its dates is known. */
  readonly scan: OrderScan;
  /** A pass over its rows; with `steps` they are sorted. */
  reading(order: ChosenOrder, steps: readonly ClockStep[] | null, refusedPairs: ReadonlySet<string>): Reading;
}

/** The way to read a file that begins with such bytes. Throws InputError where no layout fits. */
export function wayOf(source: FileSource, given: ImportOptions, head: Uint8Array, encoding: Encoding): Way {
  const rule = ruleFor(given.phrasebook, source.name);
  const phrasebook = withStamps(given.phrasebook, rule);
  const options = { ...given, phrasebook };
  const text = new TextDecoder(encoding.label).decode(head, { stream: true });
  const used: UsedRules = options.used ?? new Set();
  noteUsed(used, rule?.place ?? null);
  const plan = recognise(source.name, text, rule, phrasebook);
  noteEffects(source.name, plan, rule, used);
  const dateText = plan.importer.dateText(plan.head, phrasebook);
  const zone = chooseZone(source.name, options);
  return {
    encoding,
    rule,
    plan,
    zone,
    scan: orderScan({ source, encoding, shape: shapeOf(plan), dateText }, options),
    reading({ order }, steps, refusedPairs) {
      const clock = (): TimeReader => timesOf(zone.zone, order, options);
      return { source, encoding, plan, clock, options, steps, refusedPairs };
    },
  };
}

/** What a pass over a file came to, with how it was read. */
export function partsOf(
  { encoding, plan, zone }: Way,
  order: ChosenOrder,
  steps: readonly ClockStep[],
  doubtful: readonly DoubtfulPair[],
  passed: Passed,
): Parts & Passed {
  const isStep = ({ line }: ClockStep): boolean => !passed.seconds.has(line);
  return { steps: steps.filter(isStep), encoding, plan, order, zone, doubtful, ...passed };
}

function timesOf(zone: Zone, order: DateOrder | undefined, options: ImportOptions): TimeReader {
  const isSaid = (options.year ?? options.phrasebook.year) !== undefined;
  const near = isSaid ? undefined : (options.neighbour ?? undefined);
  const times = timeReader(zone, order, yearOf(options), options.phrasebook.pattern, near);
  if (options.neighbour !== null) times.setDay(Math.floor(options.neighbour / dayMs) * dayMs);
  return times;
}

interface Read {
  readonly parts: Parts & Passed;
  readonly rule: FileRule | undefined;
}

const dayMs = 86_400_000;

function yearOf({ year, phrasebook, neighbour }: ImportOptions): number | undefined {
  return year ?? phrasebook.year ?? (neighbour === null ? undefined : new Date(neighbour).getUTCFullYear());
}
