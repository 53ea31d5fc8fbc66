import { isHappening } from '../../vocabulary.ts';
import { oppositeOf } from './opposites.ts';
import type { NamedParameter, ParameterRule } from './phrasebook-rules.ts';
import { valueMeant } from './values.ts';

/** How a flag is read: it is up, or it is down. Common practice, no source. */
const [up, down] = [
  ['1', 'yes', 'true', 'on', 'active', 'set'],
  ['0', 'no', 'false', 'off', 'inactive', 'reset'],
];

/**
 * The rule of a parameter. Where its name says a value it is a flag: up means that value, down the other one; `null` where the
 * value is not known.
 */
export function flagged({ rule, groups }: NamedParameter): ParameterRule | null {
  const { value: named } = groups;
  const { signal } = rule;
  if (named === undefined || signal === 'load' || signal === 'free-memory' || isHappening(signal))
    return rule;
  const held = valueMeant(signal, rule.values, named);
  const other = held === undefined ? null : oppositeOf(signal, held);
  if (held === undefined || other === null) return null;
  const values = Object.fromEntries([
    ...up.map((text) => [text, held] as const),
    ...down.map((text) => [text, other] as const),
  ]);
  return { ...rule, values };
}
