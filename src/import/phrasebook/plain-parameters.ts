import { type Gauge, gauges, type Signal, stateSignals } from '../../vocabulary.ts';
import { parameterSpellings, valueSpellings } from './built-in-phrasebook.ts';
import type { NamedParameter, ParameterRule, Phrasebook } from './phrasebook-rules.ts';

/** Plain-English parameter names are compared without case, and with spaces, `-` and `_` as one. */
export function folded(name: string): string {
  return name
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
    .trim();
}

/** A name whose words are joined, `partnerReady`, with a blank before each capital that begins one. */
export function wordsApart(name: string): string {
  return name.replace(/(?<=[a-z0-9])(?=[A-Z])/g, ' ');
}

const foldedMark = '\u0000';

/** The rule of a parameter as a log names it, and what the name says besides. */
export function parameterFound(
  { parameters, parameterPatterns }: Phrasebook,
  name: string,
): NamedParameter | undefined {
  const own = parameters.get(name);
  if (own !== undefined) return { rule: own, groups: noGroups };
  const patterned = parameterPatterns?.find(name) ?? null;
  if (patterned !== null) return patterned;
  const plain =
    parameters.get(foldedMark + folded(name)) ?? parameters.get(foldedMark + folded(wordsApart(name)));
  return plain === undefined ? undefined : { rule: plain, groups: noGroups };
}

const noGroups: NamedParameter['groups'] = {};

/** The rule of a parameter as a log names it: the site's own spelling to the letter, its patterns, else plain English. */
export function parameterNamed(phrasebook: Phrasebook, name: string): ParameterRule | undefined {
  return parameterFound(phrasebook, name)?.rule;
}

/** The parameters that plain English names: every signal and gauge, by itself or with a role before it. */
export function builtInParameters(): readonly (readonly [string, ParameterRule])[] {
  const plain = (signal: Signal | Gauge): ParameterRule => ({
    place: null,
    signal,
    subject: undefined,
    values: valueSpellings[signal] ?? {},
    scale: 1,
  });
  const own = [...stateSignals, ...gauges].map(
    (signal) => [foldedMark + folded(signal), plain(signal)] as const,
  );
  const others = Object.entries(parameterSpellings).flatMap(([name, word]) => {
    const signal = [...stateSignals, ...gauges].find((s) => s === word);
    return signal === undefined ? [] : [[foldedMark + folded(name), plain(signal)] as const];
  });
  // "active firmware", "standby light": the role may stand before the signal.
  const byRole = [...own, ...others].flatMap(([name, rule]) =>
    (['active', 'standby'] as const).flatMap((role) => {
      const spelt = `${foldedMark}${role} ${name.slice(1)}`;
      return [...own, ...others].some(([other]) => other === spelt)
        ? []
        : [[spelt, { ...rule, subject: role }] as const];
    }),
  );
  return [...byRole, ...own, ...others];
}
