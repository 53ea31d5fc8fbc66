import type { ImportedFile } from '../vocabulary.ts';
import { detectEncoding, type Encoding, windows1252 } from './bytes/decode.ts';
import type { FileSource } from './bytes/file-source.ts';
import { InputError } from './bytes/input-error.ts';
import { readHead } from './bytes/read-head.ts';
import type { DoubtfulPair } from './changes/doubtful-pairs.ts';
import { chooseOrder } from './clock/choose-order.ts';
import { chooseZone } from './clock/choose-zone.ts';
import type { ClockStep } from './clock/clock-order.ts';
import type { DateOrder } from './clock/stamp.ts';
import { type TimeReader, timeReader } from './clock/time-reader.ts';
import type { Zone } from './clock/zones.ts';
import { assemble, type Parts } from './describe-file.ts';
import type { ImportOptions } from './import-options.ts';
import { recognise, shapeOf } from './layouts/recognise.ts';
import { noteEffects } from './layouts/rule-effects.ts';
import { ruleFor, withStamps } from './phrasebook/file-subject.ts';
import { type FileRule, noteUsed, type UsedRules } from './phrasebook/phrasebook-rules.ts';
import { type Passed, readRows } from './read-rows.ts';

/**
 * Reads one file to its changes, in one pass over its bytes and without keeping its rows. Throws InputError if nothing
 * of it can be used; anything less is a notice and a count.
 */
export async function readFile(source: FileSource, options: ImportOptions): Promise<ImportedFile> {
  const head = await readHead(source);
  const encoding = detectEncoding(head);
  if (encoding === null)
    throw new InputError(source.name, 'this is a binary file, not text.', 'Export it as CSV or text.');
  const read = await readAs(source, options, head, encoding);
  if (read.parts.isForeign && encoding.isGuess) {
    const other = await readAs(source, options, head, windows1252);
    return assemble(source, options, other.parts, other.rule);
  }
  return assemble(source, options, read.parts, read.rule);
}

/** Reads a file in one encoding. */
async function readAs(
  source: FileSource,
  given: ImportOptions,
  head: Uint8Array,
  encoding: Encoding,
): Promise<Read> {
  const rule = ruleFor(given.phrasebook, source.name);
  const phrasebook = withStamps(given.phrasebook, rule);
  const options = { ...given, phrasebook };
  const text = new TextDecoder(encoding.label).decode(head, { stream: true });
  const used: UsedRules = options.used ?? new Set();
  noteUsed(used, rule?.place ?? null);
  const plan = recognise(source.name, text, rule, phrasebook);
  noteEffects(source.name, plan, rule, used);
  const { importer, head: columns } = plan;
  const dateText = importer.dateText(columns, phrasebook);
  const order = await chooseOrder({ source, encoding, shape: shapeOf(plan), dateText }, options);
  const zone = chooseZone(source.name, options);
  const clock = (): TimeReader => timesOf(zone.zone, order.order, options);
  const passing = (
    steps: readonly ClockStep[] | null,
    doubtful: readonly DoubtfulPair[],
  ): Promise<Passed> => {
    const refusedPairs = new Set(doubtful.map((d) => d.pair));
    return readRows({ source, encoding, plan, clock, options, steps, refusedPairs });
  };
  const first = await passing(null, []);
  // Only the whole file tells which words name no pair; what was taken for one is read once more without it.
  const { doubtful } = first.sink;
  const told = doubtful.length > 0 ? await passing(null, doubtful) : first;
  const { steps, outOfOrder } = told.sink;
  // Only readings depend on their order; a file that has some out of order is read once more, sorted.
  const passed = outOfOrder > 0 ? await passing(steps, doubtful) : told;
  const isStep = ({ line }: ClockStep): boolean => !passed.seconds.has(line);
  const parts = { steps: steps.filter(isStep), encoding, plan, order, zone, doubtful, ...passed };
  return { parts, rule };
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
