import { type Gauge, gauges, happenings, type Signal, stateSignals, stateValues } from '../../vocabulary.ts';
import { InputError } from '../bytes/input-error.ts';
import { type PatternCompiler, patternCompiler, trustingCompiler } from './lazy-patterns.ts';
import { chooseOneOf } from './nearest-word.ts';
import type { Pattern } from './patterns.ts';

const signals: readonly string[] = [...Object.keys(stateValues), ...gauges, ...happenings];

/** What the rules of one phrasebook are read with. */
export interface RuleReading {
  readonly file: string;
  readonly compile: PatternCompiler;
}

/** The reading of a phrasebook that is named so in errors. */
export function ruleReading(file: string): RuleReading {
  return { file, compile: patternCompiler() };
}

/** The reading of what comes with the program, which is valid. */
export function builtInReading(): RuleReading {
  return { file: '', compile: trustingCompiler() };
}

/** The pattern at a place of the phrasebook. Throws InputError if it is none. */
export function patternAt(
  { file, compile }: RuleReading,
  path: string,
  source: string,
  ignoreCase: boolean,
): Pattern {
  const compiled = compile(source, ignoreCase);
  if (typeof compiled !== 'string') return compiled;
  throw new InputError(
    file,
    `${path} is not a valid pattern: ${compiled}.`,
    'Correct the regular expression.',
  );
}

/** The signal or gauge of that name. Throws InputError if there is none. */
export function signalNamed({ file }: RuleReading, path: string, name: string): Signal | Gauge {
  const state = stateSignals.find((s) => s === name);
  const found = state ?? happenings.find((s) => s === name) ?? gauges.find((s) => s === name);
  if (found !== undefined) return found;
  throw new InputError(file, `${path} is "${name}", which is not a signal.`, chooseOneOf(name, signals));
}

/** Throws InputError if one of the values is none of the signal. */
export function checkValues(
  { file }: RuleReading,
  path: string,
  signal: Signal | Gauge,
  values: readonly string[],
): void {
  const allowed = allowedValues(signal);
  const wrong = allowed === null ? undefined : values.find((value) => !allowed.includes(value));
  if (wrong === undefined || allowed === null) return;
  throw new InputError(
    file,
    `${path} has "${wrong}", which is not a value of ${signal}.`,
    chooseOneOf(wrong, allowed),
  );
}

/** The values a signal can have; `null` where any text, or a number, may stand. */
export function allowedValues(signal: Signal | Gauge): readonly string[] | null {
  const state = stateSignals.find((s) => s === signal);
  return state === undefined ? null : stateValues[state];
}
