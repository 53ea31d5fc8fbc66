import type { OwnRule } from './phrasebook-rules.ts';
import type { PhrasebookText } from './phrasebook-schema.ts';

/** All rules of a phrasebook in their order, and the keys of its rules for files, as they are named where they are of no use. */
export function ownRulesOf(own: PhrasebookText): readonly OwnRule[] {
  const shadowed = shadowedRules(own);
  const listed = (kind: OwnRule['kind'], key: string, texts: readonly string[]): readonly OwnRule[] =>
    texts.map((text, index) => ({ kind, place: `${key}[${index}]`, text }));
  return [
    ...listed(
      'file',
      'files',
      (own.files ?? []).map((rule) => rule.match),
    ),
    ...(own.files ?? []).flatMap((rule, index) => keysOf(`files[${index}]`, rule)),
    ...listed(
      'unit',
      'units',
      (own.units ?? []).map((rule) => rule.pattern),
    ),
    ...Object.keys(own.parameters ?? {}).map(
      (name): OwnRule => ({ kind: 'parameter', place: `parameters.${name}`, text: name }),
    ),
    ...listed(
      'message',
      'messages',
      (own.messages ?? []).map((rule) => rule.when),
    ).map((rule) => ({ ...rule, shadowedBy: shadowed.get(rule.place) })),
    ...listed('ignore', 'ignore', own.ignore ?? []),
    ...listed('ignoreUnits', 'ignoreUnits', own.ignoreUnits ?? []),
  ];
}

/** The keys whose effect depends on the layout of the file. */
function keysOf(of: string, rule: NonNullable<PhrasebookText['files']>[number]): readonly OwnRule[] {
  const columns = Object.entries(rule.columns ?? {}).flatMap(([key, name]) =>
    name === undefined ? [] : [`columns.${key}`],
  );
  // That states or good has no effect changes what rows say: it is told with the file.
  const others = rule.line === undefined ? [] : ['line'];
  return [...columns, ...others].map((text) => ({ kind: 'key', place: `${of}.${text}`, text, of }));
}

/** Rules for messages that can never fit, since one before them has the same pattern for the same rows: each with that one. */
function shadowedRules(own: PhrasebookText): ReadonlyMap<string, string> {
  const seen = new Map<string, number>();
  const shadowed = new Map<string, string>();
  for (const [index, { when, only }] of (own.messages ?? []).entries()) {
    const bare = JSON.stringify([when, null, null]);
    const same = JSON.stringify([when, only?.file ?? null, only?.unit ?? null]);
    const before = seen.get(bare) ?? seen.get(same);
    if (before === undefined) seen.set(same, index);
    else shadowed.set(`messages[${index}]`, `messages[${before}]`);
  }
  return shadowed;
}
