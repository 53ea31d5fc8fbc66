import { InputError } from '../bytes/input-error.ts';
import { plainMessages } from './built-in-messages.ts';
import { noteMessages, plainUnits } from './built-in-phrasebook.ts';
import { fileRule, stampRules } from './file-rules.ts';
import { once } from './once.ts';
import { ownRulesOf } from './own-rules.ts';
import { patternList } from './patterns.ts';
import type { MessageRule, OwnPatterns, Phrasebook, Place, UnitRule } from './phrasebook-rules.ts';
import { type PhrasebookText, phrasebookSchema } from './phrasebook-schema.ts';
import { type MessageText, messageRule } from './read-messages.ts';
import { parametersIn } from './read-parameters.ts';
import { builtInReading, patternAt, type RuleReading, ruleReading } from './rule-parts.ts';
import { readYamlPlaces, type YamlPlaces } from './yaml-file.ts';

const hint = 'The README lists the keys of a phrasebook.';

/**
 * Reads a phrasebook (YAML 1.2), which may name those layouts, and puts the built-in one after it; `null` gives the
 * built-in one alone. Throws InputError with the file, the place inside it and what was expected.
 */
export function parsePhrasebook(file: string, yaml: string | null, layouts: readonly string[]): Phrasebook {
  const read: YamlPlaces<PhrasebookText> =
    yaml === null
      ? { value: {}, lineOf: () => ({ file, line: 1, text: '' }) }
      : readYamlPlaces(file, yaml, phrasebookSchema(layouts), hint);
  const own = read.value;
  const reading = ruleReading(file);
  const messages = (own.messages ?? []).map((rule, i) =>
    messageRule(reading, `messages[${i}]`, `messages[${i}]`, rule),
  );
  const units = [
    ...(own.units ?? []).map((rule, i) => unitRule(reading, `units[${i}]`, `units[${i}]`, rule)),
    ...plainUnits.map((rule, i) => ({
      ...unitRule(builtInReading(), `units[${i}]`, null, rule),
      isBuiltIn: true,
    })),
  ];
  return {
    file,
    own,
    site: own.name ?? null,
    ...stampRules(file, 'time', own.time ?? {}),
    files: (own.files ?? []).map((rule, index) => fileRule({ reading, index, units }, rule)),
    units,
    ...parametersIn(reading, own.parameters ?? {}),
    messages,
    plainMessages: plainRules,
    notes: once(() => [...messages, ...builtIn(noteMessages), ...plainRules()]),
    ignore: ownPatterns(reading, 'ignore', own.ignore ?? [], true),
    ignoreUnits: ownPatterns(reading, 'ignoreUnits', own.ignoreUnits ?? [], false),
    ownRules: once(() => ownRulesOf(own)),
    lineOf: read.lineOf,
  };
}

/** Plain English is the same for every site, and compiled for the first that needs it. */
const plainRules = once(() => builtIn(plainMessages));

function builtIn(rules: readonly MessageText[]): readonly MessageRule[] {
  const reading = builtInReading();
  return rules.map((rule, index) => messageRule(reading, `messages[${index}]`, null, rule));
}

function ownPatterns(
  reading: RuleReading,
  key: string,
  sources: readonly string[],
  ignoreCase: boolean,
): OwnPatterns {
  const patterns = sources.map((source, i) => patternAt(reading, `${key}[${i}]`, source, ignoreCase));
  const list = once(() => patternList(patterns, ignoreCase));
  const count = patterns.length;
  return {
    key,
    count,
    first: (text) => (count === 0 ? null : (list().first(text)?.index ?? null)),
    digitsMatter: (shape) => count > 0 && list().digitsMatter(shape),
  };
}

function unitRule(
  reading: RuleReading,
  path: string,
  place: Place,
  rule: NonNullable<PhrasebookText['units']>[number],
): UnitRule {
  const compiled = patternAt(reading, `${path}.pattern`, rule.pattern, false);
  if (rule.pair === undefined && !compiled.groups.includes('pair')) {
    throw new InputError(
      reading.file,
      `${path} names no pair.`,
      'Add a group (?<pair>...) to the pattern, or a key pair.',
    );
  }
  return { place, pattern: compiled, pair: rule.pair, half: rule.half, role: rule.role };
}
