import type { Lesson } from '../src/pipeline.ts';
import { listed } from '../src/report/find-wordings.ts';
import { gauges, happenings, isStateSignal, type SeenWording, stateValues } from '../src/vocabulary.ts';
import { halfIn, literally, pairPattern } from './unit-pattern.ts';

/** What a person chose for a wording; empty where nothing was. */
export interface Choice {
  /** A signal, or `ignore`; of a unit `half`, `pair`, `pattern` or `ignore`; empty of a value whose parameter says it. */
  readonly signal: string;
  readonly value: string;
  /** Empty: as the unit and the words say. */
  readonly whose: string;
  /** The pattern that a person wrote; `null`: as it was drafted. */
  readonly pattern: string | null;
}

export const noChoice: Choice = { signal: '', value: '', whose: '', pattern: null };

/** The choices by the keys of their wordings. */
export type Choices = ReadonlyMap<string, Choice>;

/** A rule that a person made, as lessons; `key` is that of its wording, or of its file. */
export interface NamedRule {
  readonly key: string;
  readonly says: string;
  readonly lessons: readonly Lesson[];
}

/** A parameter with the values that were told apart. */
export interface ParameterGroup {
  readonly parameter: SeenWording;
  readonly values: readonly SeenWording[];
}

/** What a wording is known by. */
export function keyOf({ kind, name, pattern, value }: SeenWording): string {
  return [kind, kind === 'message' ? pattern : name, value ?? ''].join('\n');
}

/** The parameters in the order of the survey, each with its values, the most frequent first. */
export function parameterGroups(wordings: readonly SeenWording[]): readonly ParameterGroup[] {
  const values = new Map<string, SeenWording[]>();
  for (const wording of wordings) {
    if (wording.kind !== 'value') continue;
    const known = values.get(wording.name);
    if (known === undefined) values.set(wording.name, [wording]);
    else known.push(wording);
  }
  return wordings
    .filter(({ kind }) => kind === 'parameter')
    .map((parameter) => ({
      parameter,
      values: (values.get(parameter.name) ?? []).toSorted((a, b) => b.count - a.count),
    }));
}

/** Whether some of it is not recognised. */
export function isOpen({ parameter, values }: ParameterGroup): boolean {
  return parameter.understood === null || values.some(({ understood }) => understood === null);
}

/** The values that a signal takes; empty where the text itself is meant, a number, or none. */
export function valuesOf(signal: string): readonly string[] {
  return isStateSignal(signal) ? (stateValues[signal] ?? []) : [];
}

/** The signal that a parameter has: the chosen one, else the one it is read as. */
export function signalOf(parameter: SeenWording, choices: Choices): string {
  return choices.get(keyOf(parameter))?.signal ?? parameter.understood?.signal ?? '';
}

/** The pattern that stands for a message or a unit: the one a person wrote, else as it was drafted. */
export function patternOf(wording: SeenWording, choice: Choice): string {
  if (choice.pattern !== null) return choice.pattern;
  if (wording.kind === 'message') return wording.pattern;
  const half = choice.signal === 'pair' ? null : halfIn(wording.name);
  return half?.pattern ?? pairPattern(wording.name);
}

/** What a choice still lacks to be a rule, in words; `null` where it is one, or none was made. */
export function lackOf(wording: SeenWording, choice: Choice): string | null {
  const { signal, value } = choice;
  if (wording.kind !== 'message' || signal === '' || signal === 'ignore') return null;
  const hasValue = value !== '' || patternOf(wording, choice).includes('(?<value>');
  return valuesOf(signal).length > 0 && !hasValue ? `Choose the value of ${signal}.` : null;
}

/** The rules that the choices make, in the order of the survey; a choice that lacks something makes none. */
export function rulesOf(wordings: readonly SeenWording[], choices: Choices): readonly NamedRule[] {
  const groups = parameterGroups(wordings).flatMap((group) => parameterRules(group, choices));
  const others = wordings.flatMap((wording): readonly NamedRule[] => {
    const choice = choices.get(keyOf(wording));
    if (choice === undefined || choice.signal === '') return [];
    if (wording.kind === 'message') return messageRule(wording, choice);
    return wording.kind === 'unit' ? [unitRule(wording, choice)] : [];
  });
  const all = [...groups, ...others];
  // Two units of one pair may be named by one pattern: that is one rule.
  const seen = new Map(all.map((rule) => [JSON.stringify(rule.lessons), rule.key]));
  return all.filter(({ lessons, key }) => seen.get(JSON.stringify(lessons)) === key);
}

function messageRule(wording: SeenWording, choice: Choice): readonly NamedRule[] {
  if (lackOf(wording, choice) !== null) return [];
  const pattern = patternOf(wording, choice);
  const key = keyOf(wording);
  const name = listed(wording);
  if (choice.signal === 'ignore')
    return [{ key, says: `${name}: ignored`, lessons: [{ kind: 'ignore', pattern }] }];
  const { signal } = choice;
  const value = choice.value === '' ? null : choice.value;
  const whose = owners.find((o) => o === choice.whose) ?? null;
  const says = [signal, value, whose].filter((w) => w !== null).join(', ');
  return [
    {
      key,
      says: `${name}: ${says}`,
      lessons: [{ kind: 'message', when: pattern, signal, value, whose }],
    },
  ];
}

const owners = ['pair', 'active', 'standby', 'other'] as const;

function unitRule(wording: SeenWording, choice: Choice): NamedRule {
  const key = keyOf(wording);
  if (choice.signal === 'ignore')
    return { key, says: `${listed(wording)}: ignored`, lessons: [exactly(wording)] };
  const pattern = patternOf(wording, choice);
  return { key, says: `unit ${pattern}`, lessons: [{ kind: 'unit', pattern }] };
}

/** A parameter and its values are one rule; each value that is ignored is one of its own. */
function parameterRules({ parameter, values }: ParameterGroup, choices: Choices): readonly NamedRule[] {
  const key = keyOf(parameter);
  const signal = signalOf(parameter, choices);
  const isChosen = choices.has(key) && signal !== (parameter.understood?.signal ?? '');
  const ignored = values
    .filter((v) => choices.get(keyOf(v))?.value === 'ignore')
    .map((v) => ({ key: keyOf(v), says: `${listed(v)}: ignored`, lessons: [exactly(v)] }));
  if (signal === '') return ignored;
  const { name } = parameter;
  if (signal === 'ignore')
    return isChosen ? [{ key, says: `${name}: ignored`, lessons: [exactly(parameter)] }] : [];
  const meant = values.flatMap((v): readonly Lesson[] => {
    const meaning = choices.get(keyOf(v))?.value ?? '';
    if (!valuesOf(signal).includes(meaning)) return [];
    return [{ kind: 'value', name, text: v.value ?? '', signal, meaning }];
  });
  const lessons: readonly Lesson[] =
    isChosen && meant.length === 0 ? [{ kind: 'parameter', name, signal, values: {} }] : meant;
  return lessons.length === 0 ? ignored : [{ key, says: `${name}: ${signal}`, lessons }, ...ignored];
}

function exactly(wording: SeenWording): Lesson {
  return { kind: 'ignore', pattern: `^${literally(listed(wording))}$` };
}

/** The signals that a wording may mean besides a state: a message happens, a parameter may be measured. */
export function othersFor(kind: SeenWording['kind']): readonly string[] {
  return kind === 'message' ? happenings : gauges;
}

/** The choices that are left when some rules were applied: what lacked something, or matched nothing, is not lost. */
export function leftOver(choices: Choices, applied: readonly NamedRule[]): Choices {
  const keys = applied.map(({ key }) => key);
  const ofValues = keys
    .filter((key) => key.startsWith('parameter\n'))
    .map((key) => key.replace(/^parameter/, 'value').slice(0, -1));
  return new Map(
    [...choices].filter(
      ([key]) => !keys.includes(key) && !ofValues.some((start) => key.startsWith(`${start}\n`)),
    ),
  );
}
