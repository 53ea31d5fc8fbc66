import { type Gauge, gauges, happenings, type Signal, stateSignals, stateValues } from '../../vocabulary.ts';
import { InputError } from '../bytes/input-error.ts';
import { type DatePattern, datePattern } from '../clock/date-pattern.ts';
import { plainMessages } from './built-in-messages.ts';
import { noteMessages, plainUnits } from './built-in-phrasebook.ts';
import { compilePattern, type Pattern } from './patterns.ts';
import type { FileRule, MessageRule, ParameterRule, Phrasebook, UnitRule } from './phrasebook-rules.ts';
import { type PhrasebookText, phrasebookSchema } from './phrasebook-schema.ts';
import { builtInParameters } from './plain-parameters.ts';
import { readYaml } from './yaml-file.ts';

const hint = 'The README lists the keys of a phrasebook.';
const signals: readonly string[] = [...Object.keys(stateValues), ...gauges, ...happenings];

/**
 * Reads a phrasebook (YAML 1.2), which may name those layouts, and puts the built-in one after it; `null` gives the
 * built-in one alone. Throws InputError with the file, the place inside it and what was expected.
 */
export function parsePhrasebook(file: string, yaml: string | null, layouts: readonly string[]): Phrasebook {
  const own: PhrasebookText = yaml === null ? {} : readYaml(file, yaml, phrasebookSchema(layouts), hint);
  const parameters = Object.entries(own.parameters ?? {}).map(
    ([name, rule]): readonly [string, ParameterRule] => [name, parameterRule(file, name, rule)],
  );
  const messages = (own.messages ?? []).map((rule, i) => messageRule(file, i, rule));
  return {
    file,
    site: own.name ?? null,
    zone: own.time?.zone,
    order: own.time?.order,
    year: own.time?.year,
    pattern: own.time?.format === undefined ? undefined : stampPattern(file, own.time.format),
    files: (own.files ?? []).map((rule, index) => fileRule(file, index, rule)),
    units: [
      ...(own.units ?? []).map((r, i) => unitRule(file, i, r)),
      ...plainUnits.map((r, i) => ({ ...unitRule('', i, r), isBuiltIn: true })),
    ],
    parameters: new Map([...builtInParameters(), ...parameters]),
    messages,
    plainMessages: plainRules,
    notes: once(() => [...messages, ...builtIn(noteMessages), ...plainRules()]),
    ignore: (own.ignore ?? []).map((source, index) => pattern(file, `ignore[${index}]`, source, true)),
  };
}

/** Plain English is the same for every site, and compiled for the first that needs it. */
const plainRules = once(() => builtIn(plainMessages));

function builtIn(rules: readonly NonNullable<PhrasebookText['messages']>[number][]): readonly MessageRule[] {
  return rules.map((rule, index) => messageRule('', index, rule));
}

function once<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

function pattern(file: string, path: string, source: string, ignoreCase: boolean): Pattern {
  const compiled = compilePattern(source, ignoreCase);
  if (typeof compiled !== 'string') return compiled;
  throw new InputError(file, `${path} is not a pattern: ${compiled}.`, 'Correct the regular expression.');
}

function stampPattern(file: string, source: string): DatePattern {
  const compiled = datePattern(source);
  if (typeof compiled !== 'string') return compiled;
  throw new InputError(file, `time.format: ${compiled}.`, 'Write it like "dd/MM/yyyy HH:mm:ss.SSS".');
}

function fileRule(file: string, index: number, rule: NonNullable<PhrasebookText['files']>[number]): FileRule {
  const line = rule.line === undefined ? undefined : pattern(file, `files[${index}].line`, rule.line, false);
  for (const group of line === undefined ? [] : ['time', 'message']) {
    if (line?.groups.includes(group)) continue;
    throw new InputError(
      file,
      `files[${index}].line has no group (?<${group}>...).`,
      'Name the groups time, unit and message.',
    );
  }
  return {
    match: rule.match,
    layout: rule.layout ?? (line === undefined ? undefined : 'lines'),
    columns: rule.columns ?? {},
    line,
  };
}

function unitRule(file: string, index: number, rule: NonNullable<PhrasebookText['units']>[number]): UnitRule {
  const compiled = pattern(file, `units[${index}].pattern`, rule.pattern, false);
  if (rule.pair === undefined && !compiled.groups.includes('pair')) {
    throw new InputError(
      file,
      `units[${index}] names no pair.`,
      'Add a group (?<pair>...) to the pattern, or a key pair.',
    );
  }
  return { pattern: compiled, pair: rule.pair, half: rule.half, role: rule.role };
}

function parameterRule(
  file: string,
  name: string,
  rule: NonNullable<PhrasebookText['parameters']>[string],
): ParameterRule {
  const signal = signalNamed(file, `parameters.${name}.signal`, rule.signal);
  const values = rule.values ?? {};
  checkValues(file, `parameters.${name}.values`, signal, Object.values(values));
  return { signal, subject: rule.subject, values, scale: rule.scale ?? 1 };
}

function messageRule(
  file: string,
  index: number,
  rule: NonNullable<PhrasebookText['messages']>[number],
): MessageRule {
  const path = `messages[${index}]`;
  const compiled = pattern(file, `${path}.when`, rule.when, true);
  const signal = signalNamed(file, `${path}.signal`, rule.signal);
  if (signal === 'load' || signal === 'free-memory') {
    throw new InputError(file, `${path}.signal is a gauge.`, 'Gauges are read from polls only.');
  }
  const needsValue = signal in stateValues && rule.value === undefined && !compiled.groups.includes('value');
  if (needsValue) {
    throw new InputError(
      file,
      `${path} says no value for ${signal}.`,
      'Add a key value, or a group (?<value>...) to the pattern.',
    );
  }
  checkValues(file, `${path}.value`, signal, [
    ...(rule.value === undefined ? [] : [rule.value]),
    ...Object.values(rule.values ?? {}),
  ]);
  const { half, role, value, subject } = rule;
  return { pattern: compiled, signal, subject, half, role, value, values: rule.values ?? {} };
}

function signalNamed(file: string, path: string, name: string): Signal | Gauge {
  const state = stateSignals.find((s) => s === name);
  const found = state ?? happenings.find((s) => s === name) ?? gauges.find((s) => s === name);
  if (found !== undefined) return found;
  throw new InputError(
    file,
    `${path} is "${name}", which is no signal.`,
    `Choose one of ${signals.join(', ')}.`,
  );
}

function checkValues(file: string, path: string, signal: Signal | Gauge, values: readonly string[]): void {
  const allowed = allowedValues(signal);
  const wrong = allowed === null ? undefined : values.find((value) => !allowed.includes(value));
  if (wrong === undefined || allowed === null) return;
  throw new InputError(
    file,
    `${path} has "${wrong}", which is no value of ${signal}.`,
    `Choose one of ${allowed.join(', ')}.`,
  );
}

/** The values a signal can have; `null` where any text, or a number, may stand. */
export function allowedValues(signal: Signal | Gauge): readonly string[] | null {
  const state = stateSignals.find((s) => s === signal);
  return state === undefined ? null : stateValues[state];
}
