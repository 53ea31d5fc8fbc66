import { DamagedEnd, eachChunk, type FileSource, InputError } from '../pipeline.ts';
import type { Answer, BundleCase, BundleTools } from './case.ts';
import { importOptions } from './case.ts';
import { cutLog, type LineRange, linesOfTime } from './cut-log.ts';
import type { NamedYaml, Settings } from './inside.ts';
import { type LineEnds, lineEndsOf } from './line-blocks.ts';
import type { Mask } from './mask.ts';
import { memberNames } from './member-names.ts';
import { citedIn, spansOf } from './same-answer.ts';

/** A log as it goes into a bundle. */
export interface PreparedLog {
  readonly original: FileSource;
  /** Under the name of its member. */
  readonly source: FileSource;
  readonly lines: readonly LineRange[] | null;
}

/** A case as it goes into a bundle: names, logs, texts and settings are those of the bundle. */
export interface Prepared {
  readonly logs: readonly PreparedLog[];
  readonly inside: BundleCase;
  /** The names of all files, and what they are called inside. */
  readonly renamed: ReadonlyMap<string, string>;
}

/** Which lines of a log stay, and how its lines end. */
export interface Cut {
  readonly lines: readonly LineRange[];
  readonly ends: LineEnds;
}

/** The case without logs whose bytes cannot be had: they are among its failures. */
export async function withReadableLogs(one: BundleCase, answer: Answer): Promise<BundleCase> {
  const failed = new Map(answer.analysed.failures.map((failure) => [failure.where, failure]));
  const broken = new Map<FileSource, InputError>();
  for (const source of one.sources) {
    if (!failed.has(source.name)) continue;
    const wrong = await eachChunk(source, () => true).catch(asFailure);
    if (wrong instanceof InputError) broken.set(source, wrong);
  }
  return {
    ...one,
    sources: one.sources.filter((source) => !broken.has(source)),
    failures: [...one.failures, ...broken.values()],
  };
}

function asFailure(error: unknown): InputError {
  if (error instanceof InputError) return error;
  throw error;
}

/** What stays of the logs that are longer than `mostWhole` bytes, unpacked, and can be cut. */
export async function cutsOf(
  one: BundleCase,
  answer: Answer,
  tools: BundleTools,
  mostWhole: number,
): Promise<ReadonlyMap<FileSource, Cut>> {
  const spans = spansOf(answer);
  const cuts = new Map<FileSource, Cut>();
  if (spans.length === 0) return cuts;
  for (const source of one.sources) {
    // What was stored as a timeline, or could not be read, is no text with lines.
    const input = answer.analysed.files.find(({ input: { file } }) => file === source.name)?.input;
    if (input === undefined || input.bytes <= mostWhole) continue;
    const ends = lineEndsOf(input.encoding);
    const wanted = { spans, lines: citedIn(answer, source.name) };
    // One that ends too early goes in whole, and says where it is read that it does.
    const lines = await linesOfTime(source, wanted, ends, importOptions(one, tools)).catch(asWhole);
    if (lines !== null) cuts.set(source, { lines, ends });
  }
  return cuts;
}

function asWhole(error: unknown): null {
  if (error instanceof DamagedEnd) return null;
  throw error;
}

/** The case with the names of a bundle, its logs cut and masked. */
export function prepared(one: BundleCase, cuts: ReadonlyMap<FileSource, Cut>, mask: Mask | null): Prepared {
  const { sources, failures, phrasebook, job, settings } = one;
  const said = (text: string): string => mask?.text(text) ?? text;
  const places = failures.map(({ where }) => where.replace(/:\d+$/, ''));
  const names = memberNames([...sources.map(({ name }) => name), ...places], phrasebook).map(
    (name) => mask?.fileName(name) ?? name,
  );
  const logs = sources.map((original, index): PreparedLog => {
    const cut = cuts.get(original);
    const whole = cut === undefined ? original : cutLog(original, cut.lines, cut.ends);
    const source = { ...(mask?.log(whole) ?? whole), name: names[index] ?? '' };
    return { original, source, lines: cut?.lines ?? null };
  });
  const renamed = new Map(logs.map(({ original, source }) => [original.name, source.name]));
  const inside = {
    ...one,
    sources: logs.map(({ source }) => withoutContainer(source)),
    failures: failures.map(
      ({ what, fix, kind }, index) =>
        new InputError(names[sources.length + index] ?? '', said(what), said(fix), kind),
    ),
    phrasebook: inBundle(phrasebook, 'phrasebook.yaml', (text) => mask?.phrasebook(text) ?? text),
    job: inBundle(job, 'job.yaml', said),
    settings: settingsInside(settings, renamed, said),
  };
  return { logs, inside, renamed };
}

function withoutContainer({ name, bytes, open }: FileSource): FileSource {
  return { name, bytes, open };
}

function inBundle(given: NamedYaml | null, file: string, change: (text: string) => string): NamedYaml | null {
  return given === null ? null : { file, text: change(given.text) };
}

function settingsInside(
  settings: Settings,
  renamed: ReadonlyMap<string, string>,
  said: (text: string) => string,
): Settings {
  const { reference, pair } = settings;
  return {
    ...settings,
    reference: reference === null ? null : (renamed.get(reference) ?? null),
    pair: pair === null ? null : said(pair),
  };
}
