import { describe, expect, test } from 'vitest';
import type { Cause } from '../../src/diagnose/cause.ts';
import { defaultDiagnoseLimits } from '../../src/diagnose/limits.ts';
import { diagnose } from '../../src/pipeline.ts';
import { saySentence } from '../../src/report/sentences.ts';
import type { Diagnosis } from '../../src/vocabulary.ts';
import { analyseTexts, journalText } from './read-text.ts';

/** A pair that was ready for an hour, lost its partner at 07:00, and gave up three times after times without a pattern. */
const failingJournal: readonly string[] = [
  '06:00:00  RO1 A  role active',
  '06:00:00  RO1 B  role standby',
  '06:00:00  RO1    partner present',
  '06:00:00  RO1    partner ready',
  '06:00:00  RO1    configuration current',
  ...['A', 'B'].flatMap((half) => [
    `06:00:00  RO1 ${half}  firmware 6.4.1`,
    `06:00:00  RO1 ${half}  model Tern-4`,
    `06:00:00  RO1 ${half}  serial T4-${half}`,
    `06:00:00  RO1 ${half}  link a up`,
    `06:00:00  RO1 ${half}  link b up`,
    `06:00:00  RO1 ${half}  links straight`,
    `06:00:00  RO1 ${half}  supply good`,
  ]),
  '06:00:00  RO1 B  light steady',
  '07:00:00  RO1    partner not ready',
  '07:00:00  RO1 B  light flashing',
  '07:01:00  RO1 B  sync start',
  '07:02:10  RO1 B  sync failed',
  '07:04:00  RO1 B  sync start',
  '07:09:30  RO1 B  sync failed',
  '07:12:00  RO1 B  sync start',
  '07:12:40  RO1 B  sync failed',
  '08:00:00  RO1 A  light off',
];

export interface CauseCase {
  readonly name: string;
  /** A change of the failing journal: lines to leave out, and lines to add. */
  readonly without?: readonly string[];
  readonly plus?: readonly string[];
  /** Further files, or with `alone` the only ones. */
  readonly files?: Readonly<Record<string, string>>;
  readonly alone?: boolean;
}

/** What is said of the cause: its points for and against, and its weight in decibans; what is left out is not looked at. */
interface Told {
  readonly for?: readonly string[];
  readonly against?: readonly string[];
  readonly decibans?: number;
  /** The evidence of its first point, as lines of the journal with single blanks. */
  readonly lines?: readonly string[];
}

export interface CauseCases {
  readonly shows: CauseCase & Told;
  /** It looks like it, but something else comes first. */
  readonly lookAlike: CauseCase & Told & { readonly instead: string };
  /** `names`: what to export next must speak of it. */
  readonly tooLittle: CauseCase & Told & { readonly names: string };
}

/** Tries a cause on a story that has it, on a look-alike and on one with too little data. */
export function checkCause({ meta }: Cause, { shows, lookAlike, tooLittle }: CauseCases): void {
  describe(meta.id, () => {
    test(`comes first: ${shows.name}`, async () => {
      const { causes, healthy } = await diagnoseCase(shows);
      expect(healthy).toBe(false);
      expect(causes[0]?.id).toBe(meta.id);
      expect(causes[0]?.decibans).toBeGreaterThanOrEqual(defaultDiagnoseLimits.leadDecibans);
      expectTold(await diagnoseCase(shows), meta.id, shows);
      for (const point of causes.flatMap((c) => [...c.for, ...c.against])) {
        expect(point.statement).toMatch(/^[A-Z0-9].*[.]$/);
        expect(point.evidence.length).toBeGreaterThan(0);
      }
    });
    test(`does not come first: ${lookAlike.name}`, async () => {
      const { causes } = await diagnoseCase(lookAlike);
      expect(causes[0]?.id).toBe(lookAlike.instead);
      expect(causes.find((c) => c.id === meta.id)?.decibans ?? 0).toBeLessThan(
        defaultDiagnoseLimits.leadDecibans,
      );
      expectTold(await diagnoseCase(lookAlike), meta.id, lookAlike);
    });
    test(`too little data: ${tooLittle.name}`, async () => {
      const { causes } = await diagnoseCase(tooLittle);
      expect(causes[0]?.id).toBe('too-little-data');
      expect(causes[0]?.next).toContain(tooLittle.names);
      expectTold(await diagnoseCase(tooLittle), meta.id, tooLittle);
    });
  });
}

/** What a diagnosis says of a cause, whether it is listed or doubted. */
function expectTold({ causes, doubted }: Diagnosis, id: string, told: Told): void {
  const listed = causes.find((c) => c.id === id);
  const against = (listed ?? doubted.find((d) => d.id === id))?.against ?? [];
  const points = [...(listed?.for ?? []), ...against];
  if (told.for !== undefined) expect(listed?.for.map((p) => p.statement)).toEqual(told.for);
  if (told.against !== undefined) expect(against.map((p) => p.statement)).toEqual(told.against);
  if (told.decibans !== undefined) expect(listed?.decibans).toBe(told.decibans);
  if (told.lines !== undefined)
    expect(points[0]?.evidence.map(({ text }) => shortLine(text))).toEqual(told.lines);
}

export type Variant = Omit<CauseCase, 'name'>;

/** What is said of a cause: its weight or `doubted`, and then its points, those for it first. */
export async function toldOf(variant: Variant, id: string): Promise<readonly unknown[]> {
  const { causes, doubted } = await diagnoseCase({ name: '', ...variant });
  const listed = causes.find((c) => c.id === id);
  const points =
    listed === undefined ? doubted.find((d) => d.id === id)?.against : [...listed.for, ...listed.against];
  return [listed?.decibans ?? 'doubted', ...(points ?? []).map((p) => p.statement)];
}

/** The sentences of an answer as the command prints them, by the clock of UTC. */
export function answerOf({ sentences, from }: Diagnosis): readonly string[] {
  return sentences.map((sentence) => saySentence(sentence, 'UTC', from));
}

/** A line of a journal in its short form: clock, pair, half, words. */
export function shortLine(text: string): string {
  return text.replace(/^\S+T(\S+?)(?:\.000)?Z (\w+)(?:-([AB]))?/, (_, clock, pair, half) =>
    [clock, pair, half].filter(Boolean).join(' '),
  );
}

/** Diagnoses a variant of the failing journal, or a site of its own. */
export async function diagnoseCase(variant: CauseCase): Promise<Diagnosis> {
  const { without = [], plus = [], files = {}, alone = false } = variant;
  const unknown = without.filter((part) => !failingJournal.some((line) => line.includes(part)));
  if (unknown.length > 0) throw new Error(`The failing journal has no line with ${unknown.join(', ')}.`);
  const kept = failingJournal.filter((line) => !without.some((part) => line.includes(part)));
  const journal = { 'ro1.log': journalText([...kept, ...plus].sort().join('\n')) };
  return diagnose(await analyseTexts(alone ? files : { ...journal, ...files }), alone ? 'PRETREAT' : 'RO1');
}

/** A poll of one parameter every five minutes from six to eight: each value from its minute on. */
export function pollOf(
  unit: string,
  parameter: string,
  values: readonly (readonly [number, number])[],
): readonly string[] {
  return Array.from({ length: 24 }, (_, index) => {
    const minute = index * 5;
    const value = values.findLast(([from]) => from <= minute)?.[1] ?? 0;
    const clock = `${String(6 + Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
    return `2026-03-14T${clock}:00Z,${unit},${parameter},${value}`;
  });
}

export function pollFile(...polls: readonly (readonly string[])[]): Readonly<Record<string, string>> {
  return { 'gauges.csv': `time,unit,parameter,value\n${polls.flat().sort().join('\n')}\n` };
}
