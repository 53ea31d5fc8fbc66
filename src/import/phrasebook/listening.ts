import { digitTest } from './digit-shapes.ts';
import { fitsFile } from './file-names.ts';
import { type Noted, noted } from './noted.ts';
import type { Pattern } from './patterns.ts';
import type { OwnPatterns, ParameterRule, Phrasebook, UnitRule } from './phrasebook-rules.ts';

/** A phrasebook to read one file with, which notes what it is asked. */
export interface Listening {
  readonly phrasebook: Phrasebook;
  /** The one that it listens to. */
  readonly of: Phrasebook;
  /**
   * True if another phrasebook certainly answers all that was asked as this one did, so that the file need not be read once
   * more. False where that is not known.
   */
  answersAlike(other: Phrasebook): boolean;
}

/** Notes what the reading of the file of that name asks of a phrasebook. */
export function listening(phrasebook: Phrasebook, name: string): Listening {
  const ignored = noted<number | null>();
  const shapes = noted<null>();
  const ignoredUnits = noted<number | null>();
  const units = noted<null>();
  const parameters = noted<null>();
  const asked = { notes: false, allParameters: false };
  const heard: Heard = { name, ignored, shapes, ignoredUnits, units, parameters, asked };
  return {
    phrasebook: {
      ...phrasebook,
      units: unitsHeard(phrasebook.units, units),
      parameters: parametersHeard(phrasebook.parameters, heard),
      // A message comes here once no rule of the site's own fits it.
      ignore: {
        ...patternsHeard(phrasebook.ignore, ignored),
        digitsMatter: shapesHeard(phrasebook.ignore, shapes),
      },
      ignoreUnits: patternsHeard(phrasebook.ignoreUnits, ignoredUnits),
      notes: () => {
        asked.notes = true;
        return phrasebook.notes();
      },
    },
    of: phrasebook,
    answersAlike: (other) => answersAlike(phrasebook, other, heard),
  };
}

type Key = keyof Phrasebook['own'];

interface Heard {
  readonly name: string;
  readonly ignored: Noted<number | null>;
  /** Of one text of each of these shapes was asked, and the others were taken for the same. */
  readonly shapes: Noted<null>;
  readonly ignoredUnits: Noted<number | null>;
  /** Those that no unit pattern of the site fits. */
  readonly units: Noted<null>;
  readonly parameters: Noted<null>;
  readonly asked: { notes: boolean; allParameters: boolean };
}

function shapesHeard({ digitsMatter }: OwnPatterns, into: Noted<null>): OwnPatterns['digitsMatter'] {
  return (shape) => {
    const matter = digitsMatter(shape);
    if (!matter) into.add(shape, null);
    return matter;
  };
}

function patternsHeard(patterns: OwnPatterns, into: Noted<number | null>): OwnPatterns {
  const { count, first } = patterns;
  return {
    ...patterns,
    // Where there are none some texts are not even asked about, which would be asked about once there are.
    count: Math.max(1, count),
    first(text) {
      const found = first(text);
      into.add(text, found);
      return found;
    },
  };
}

/** What none of the site's own fits comes to the first of plain English. */
function unitsHeard(units: readonly UnitRule[], into: Noted<null>): readonly UnitRule[] {
  const first = units.findIndex(({ isBuiltIn }) => isBuiltIn === true);
  return units.map((rule, index) =>
    index === first ? { ...rule, pattern: patternHeard(rule.pattern, into) } : rule,
  );
}

function patternHeard(pattern: Pattern, into: Noted<null>): Pattern {
  return {
    source: pattern.source,
    groups: pattern.groups,
    match(text) {
      into.add(text, null);
      return pattern.match(text);
    },
  };
}

function parametersHeard(
  parameters: ReadonlyMap<string, ParameterRule>,
  { parameters: into, asked }: Heard,
): ReadonlyMap<string, ParameterRule> {
  const all = (): ReadonlyMap<string, ParameterRule> => {
    asked.allParameters = true;
    return parameters;
  };
  return {
    get(name) {
      into.add(name, null);
      return parameters.get(name);
    },
    has(name) {
      into.add(name, null);
      return parameters.has(name);
    },
    get size() {
      return all().size;
    },
    forEach: (take) => all().forEach(take),
    keys: () => all().keys(),
    values: () => all().values(),
    entries: () => all().entries(),
    [Symbol.iterator]: () => all()[Symbol.iterator](),
  };
}

function answersAlike(before: Phrasebook, after: Phrasebook, heard: Heard): boolean {
  return keys.every(
    (key) =>
      isSame(before.own[key] ?? null, after.own[key] ?? null) || isUntouched(key, before, after, heard),
  );
}

/** Whether a key of the phrasebook that changed says nothing else of what the file asked. */
function isUntouched(key: Key, before: Phrasebook, after: Phrasebook, heard: Heard): boolean {
  switch (key) {
    case 'messages': {
      const added = after.messages.slice(before.messages.length).map(({ pattern }) => pattern);
      const { ignored, shapes, asked } = heard;
      const digitsMatter = digitTest(added.map(({ source }) => source));
      // The messages that an own rule fits are read by it still: of those that fit, the first counts.
      return (
        isLonger(before.own.messages, after.own.messages) &&
        !asked.notes &&
        fitNone(added, ignored) &&
        areWhole(shapes, digitsMatter)
      );
    }
    case 'units': {
      const own = after.units.filter(({ isBuiltIn }) => isBuiltIn !== true);
      const added = own.slice(before.own.units?.length ?? 0).map(({ pattern }) => pattern);
      return (
        isLonger(before.own.units, after.own.units) &&
        !hasRule(after, heard.name) &&
        fitNone(added, heard.units)
      );
    }
    case 'ignore':
      return answersSame(after.ignore, heard.ignored) && areWhole(heard.shapes, after.ignore.digitsMatter);
    case 'ignoreUnits':
      return answersSame(after.ignoreUnits, heard.ignoredUnits);
    case 'parameters':
      return saysSame(before.own.parameters ?? {}, after.own.parameters ?? {}, heard);
    case 'files':
      return !hasRule(before, heard.name) && !hasRule(after, heard.name);
    default:
      return false;
  }
}

function hasRule({ files }: Phrasebook, name: string): boolean {
  return files.some(({ match }) => fitsFile(match, name));
}

/** True if a list is the one before with others behind it. */
function isLonger(before: List, after: List): boolean {
  const known = before ?? [];
  return isSame(known, (after ?? []).slice(0, known.length));
}

type List = readonly unknown[] | null | undefined;

function fitNone(added: readonly Pattern[], { answers, isAll }: Noted<unknown>): boolean {
  return isAll() && [...answers.keys()].every((text) => added.every(({ match }) => match(text) === null));
}

/** True if what is known of one text of each shape holds for all of it. */
function areWhole({ answers, isAll }: Noted<null>, digitsMatter: (shape: string) => boolean): boolean {
  return isAll() && [...answers.keys()].every((shape) => !digitsMatter(shape));
}

function answersSame({ first }: OwnPatterns, { answers, isAll }: Noted<number | null>): boolean {
  return isAll() && [...answers].every(([text, answer]) => first(text) === answer);
}

function saysSame(
  before: Readonly<Record<string, unknown>>,
  after: Readonly<Record<string, unknown>>,
  { parameters, asked }: Heard,
): boolean {
  const names = new Set([...Object.keys(before), ...Object.keys(after)]);
  const changed = [...names].filter((name) => !isSame(before[name], after[name]));
  // A pattern may fit any name.
  return (
    !asked.allParameters &&
    parameters.isAll() &&
    changed.every((name) => !name.startsWith('/') && !parameters.answers.has(name))
  );
}

function isSame(one: unknown, other: unknown): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

/** All keys of a phrasebook: the compiler wants each of them here. */
const keyed: Readonly<Record<Key, true>> = {
  name: true,
  time: true,
  files: true,
  units: true,
  parameters: true,
  messages: true,
  ignore: true,
  ignoreUnits: true,
};
const keys: readonly Key[] = Object.keys(keyed).filter((key): key is Key => key in keyed);
