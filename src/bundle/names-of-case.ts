import type { Analysed } from '../pipeline.ts';
import type { Job } from '../vocabulary.ts';
import type { Name, NameKind } from './find-names.ts';
import type { Settings } from './inside.ts';
import { wordsOf } from './ordinary-words.ts';

/** What is known of a case besides the texts of its logs. */
export interface KnownOfCase {
  readonly analysed: Analysed;
  readonly job: Job | null;
  readonly phrasebookName: string | null;
  readonly settings: Settings;
}

/** Short words and those that are ordinary ones are masked to the letter only. */
function toName(kind: NameKind, original: string, ordinary: ReadonlySet<string>): Name {
  const isWord = /^\p{L}+$/u.test(original);
  return { kind, original, isExact: isWord && (original.length < 3 || ordinary.has(original.toLowerCase())) };
}

/** Pairs, units, serials, sites and people of a case, without what is in the texts of its logs. */
export function namesOfCase(known: KnownOfCase, ordinary: ReadonlySet<string>): readonly Name[] {
  const { analysed, job, phrasebookName, settings } = known;
  const pairs = [
    ...analysed.facts.map(({ timeline }) => timeline.pair),
    ...Object.keys(job?.plan ?? {}),
    ...(settings.pair === null ? [] : [settings.pair]),
  ];
  const sites = [
    phrasebookName,
    job?.site,
    ...analysed.timelines.map(({ site }) => site),
    ...analysed.files.flatMap(({ site, streams }) => [site, ...streams.map(({ subject }) => subject.site)]),
  ].flatMap((site) => (typeof site === 'string' ? variantsOf(site) : []));
  const people = [job?.technician, job?.reviewer].flatMap((person) =>
    person === undefined ? [] : [person, ...surnames(person, ordinary)],
  );
  const all: readonly (readonly [NameKind, readonly string[]])[] = [
    ['pair', pairs],
    ['unit', unitsOf(analysed, pairs, ordinary)],
    ['serial', serialsOf(analysed)],
    ['site', sites],
    ['person', people],
    ['work order', job?.workOrder === undefined ? [] : [job.workOrder]],
  ];
  return all.flatMap(([kind, originals]) =>
    originals.map((text) => toName(kind, trimmed(text), ordinary)).filter(({ original }) => original !== ''),
  );
}

/** A name begins and ends with a letter or a digit: what stands around it may stay. */
function trimmed(text: string): string {
  return text.replace(/^[^\p{L}\p{N}]+|[^\p{L}\p{N}]+$/gu, '');
}

/** A name of several words may stand in the name of a file with other signs between. */
function variantsOf(name: string): readonly string[] {
  return [' ', '-', '_', ''].map((sign) => name.trim().replace(/[\s_-]+/g, sign));
}

/** Of a person's name the words that are no title or rank. */
function surnames(person: string, ordinary: ReadonlySet<string>): readonly string[] {
  const ranks = new Set(
    wordsOf('shift night day senior junior lead team supervisor fitter electrician contractor manager'),
  );
  return [...person.matchAll(/\p{Lu}\p{L}{3,}/gu)].flatMap(([word]) =>
    ordinary.has(word.toLowerCase()) || ranks.has(word.toLowerCase()) ? [] : [word],
  );
}

function serialsOf({ timelines }: Analysed): readonly string[] {
  const events = timelines.flatMap((timeline) => timeline.events.filter(({ signal }) => signal === 'serial'));
  return events
    .flatMap(({ value, before }) => [value, before])
    .flatMap((serial) => (serial !== null && serial.length > 2 && /\d/.test(serial) ? [serial] : []));
}

/** Units that hold more than the name of a pair, a half and ordinary words: names of hosts, of areas. */
function unitsOf(
  analysed: Analysed,
  pairs: readonly string[],
  ordinary: ReadonlySet<string>,
): readonly string[] {
  const halves = new Set(
    analysed.timelines.flatMap((timeline) => timeline.halves.map((half) => half.toLowerCase())),
  );
  const names = new Set(pairs.map((pair) => pair.toLowerCase()));
  const units = analysed.files.flatMap(({ input, streams, unknown }) => [
    ...input.units,
    ...streams.map(({ unit }) => unit),
    ...unknown.flatMap(({ kind, name }) => (kind === 'unit' ? [name] : [])),
  ]);
  return [...new Set(units)].filter((unit) => {
    const folded = unit.toLowerCase();
    const pair = [...names].find((name) => name !== '' && folded.includes(name));
    const rest = pair === undefined ? folded : folded.replaceAll(pair, ' ');
    const words = [...rest.matchAll(/[\p{L}\p{N}]+/gu)].map(([word]) => word);
    const isNamed = words.some(
      (word) => word.length > 1 && !ordinary.has(word) && !halves.has(word) && /\p{L}/u.test(word),
    );
    // A plain word in the place of a unit is more often a word than a name.
    return isNamed && (pair !== undefined || /[\p{N}\p{Lu}._-]/u.test(unit));
  });
}
