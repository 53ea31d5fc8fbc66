import { stateValues } from '../../vocabulary.ts';
import { InputError } from '../bytes/input-error.ts';
import { once } from './once.ts';
import { type Pattern, patternList } from './patterns.ts';
import type { ParameterPatterns, ParameterRule, Phrasebook } from './phrasebook-rules.ts';
import type { PhrasebookText } from './phrasebook-schema.ts';
import { builtInParameters } from './plain-parameters.ts';
import { allowedValues, checkValues, patternAt, type RuleReading, signalNamed } from './rule-parts.ts';

interface Patterned {
  readonly pattern: Pattern;
  readonly rule: ParameterRule;
}

/**
 * The rules of parameters: by their names, those of plain English too, and those that a pattern between slashes names. Throws
 * InputError with the place and what was expected.
 */
export function parametersIn(
  reading: RuleReading,
  own: NonNullable<PhrasebookText['parameters']>,
): Pick<Phrasebook, 'parameters' | 'parameterPatterns'> {
  const parameters = new Map<string, ParameterRule>(builtInParameters());
  const patterned: Patterned[] = [];
  for (const [name, text] of Object.entries(own)) {
    const place = `parameters.${name}`;
    const signal = signalNamed(reading, `${place}.signal`, text.signal);
    const { values = {}, subject, scale = 1 } = text;
    checkValues(reading, `${place}.values`, signal, Object.values(values));
    const rule: ParameterRule = { place, signal, subject, values, scale };
    const source = /^\/(.+)\/$/s.exec(name)?.[1];
    if (source === undefined) parameters.set(name, rule);
    else patterned.push({ pattern: parameterPattern(reading, place, source, rule), rule });
  }
  return { parameters, parameterPatterns: patterned.length === 0 ? null : patternsOf(patterned) };
}

/** A name that says a value is a flag: without it the other value holds, which only one of two is. */
function parameterPattern(
  reading: RuleReading,
  place: string,
  source: string,
  { signal }: ParameterRule,
): Pattern {
  const pattern = patternAt(reading, place, source, false);
  if (!pattern.groups.includes('value') || allowedValues(signal)?.length === 2) return pattern;
  const two = Object.entries(stateValues).flatMap(([name, values]) => (values?.length === 2 ? [name] : []));
  throw new InputError(
    reading.file,
    `${place} has a group (?<value>...), and ${signal} has not just two values.`,
    `Say what each reading means under values; a name can say the value of ${two.join(', ')}.`,
  );
}

function patternsOf(patterned: readonly Patterned[]): ParameterPatterns {
  const list = once(() =>
    patternList(
      patterned.map(({ pattern }) => pattern),
      false,
    ),
  );
  return {
    find(name) {
      const found = list().first(name);
      const rule = found === null ? undefined : patterned[found.index]?.rule;
      return found === null || rule === undefined ? null : { rule, groups: found.groups };
    },
    nameUnits: patterned.some(
      ({ pattern: { groups } }) => groups.includes('unit') || groups.includes('pair'),
    ),
  };
}
