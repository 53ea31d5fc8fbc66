import { isHappening, type Signal, stateValues } from '../../vocabulary.ts';
import { InputError } from '../bytes/input-error.ts';
import type { Pattern } from './patterns.ts';
import type { MeaningRule, MessageRule, Place } from './phrasebook-rules.ts';
import type { PhrasebookText } from './phrasebook-schema.ts';
import { checkValues, patternAt, type RuleReading, signalNamed } from './rule-parts.ts';

export type MessageText = NonNullable<PhrasebookText['messages']>[number];
type MeaningText = NonNullable<MessageText['means']>[number];

/** A rule for messages, ready for use. Throws InputError with its place and what was expected. */
export function messageRule(
  reading: RuleReading,
  path: string,
  place: Place,
  rule: MessageText,
): MessageRule {
  const pattern = patternAt(reading, `${path}.when`, rule.when, true);
  const { only = {} } = rule;
  const unit =
    only.unit === undefined ? undefined : patternAt(reading, `${path}.only.unit`, only.unit, false);
  const means = meaningsIn(reading, path, rule).map(([at, said]) => meaningRule(reading, at, said, pattern));
  return { place, pattern, only: { file: only.file, unit }, means };
}

/** What a rule says its messages mean, with the place of each: one thing by `signal`, or several by `means`. */
function meaningsIn(
  { file }: RuleReading,
  path: string,
  rule: MessageText,
): readonly (readonly [string, MeaningText])[] {
  const { signal, means, when: _when, only: _only, ...said } = rule;
  if ((signal === undefined) === (means === undefined)) {
    const what = signal === undefined ? 'neither signal nor means' : 'both signal and means';
    throw new InputError(file, `${path} has ${what}.`, 'Give signal for one thing, or means for several.');
  }
  if (signal !== undefined) return [[path, { signal, ...said }]];
  const stray = (['value', 'values', 'off'] as const).find((key) => rule[key] !== undefined);
  if (stray !== undefined)
    throw new InputError(
      file,
      `${path}.${stray} stands beside means.`,
      `Put ${stray} into each item of means.`,
    );
  if (means === undefined || means.length === 0)
    throw new InputError(file, `${path}.means is empty.`, 'Give it at least one item with a signal.');
  const { half, role } = said;
  return means.map((item, index) => {
    // Whom it is about is said once for all of them, or by each for itself.
    const own = item.of !== undefined || item.subject !== undefined;
    const about = own ? {} : { of: said.of, subject: said.subject };
    return [`${path}.means[${index}]`, { half, role, ...item, ...about }];
  });
}

function meaningRule(reading: RuleReading, path: string, rule: MeaningText, pattern: Pattern): MeaningRule {
  const { file } = reading;
  const { half, role, value, values = {}, off, of, subject } = rule;
  const signal = signalNamed(reading, `${path}.signal`, rule.signal);
  if (signal === 'load' || signal === 'free-memory')
    throw new InputError(file, `${path}.signal is a gauge.`, 'Gauges are read from polls only.');
  if (signal in stateValues && value === undefined && !pattern.groups.includes('value'))
    throw new InputError(
      file,
      `${path} says no value for ${signal}.`,
      'Add a key value, or a group (?<value>...) to the pattern.',
    );
  if (of !== undefined && subject !== undefined)
    throw new InputError(file, `${path} has both of and subject.`, 'Keep one of them.');
  checkValues(reading, `${path}.value`, signal, [
    ...(value === undefined ? [] : [value]),
    ...Object.values(values),
  ]);
  checkOff(reading, `${path}.off`, signal, off);
  return {
    signal,
    subject: of === 'pair' ? 'pair' : subject,
    of: of === 'pair' ? undefined : of,
    half,
    role,
    value,
    values,
    off,
  };
}

/** What a condition says once it no longer stands: a value of its state, or nothing; what happened does not happen again. */
function checkOff(reading: RuleReading, path: string, signal: Signal, off: string | undefined): void {
  if (off === undefined || off === 'ignore') return;
  if (isHappening(signal) && signal !== 'note')
    throw new InputError(
      reading.file,
      `${path} is "${off}", but ${signal} is not a state.`,
      'Write off: ignore to skip rows in which the condition clears.',
    );
  checkValues(reading, path, signal, [off]);
}
