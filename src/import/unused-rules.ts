import type { NonEmpty, Notice, SourceLine } from '../vocabulary.ts';
import { readBy } from './layouts/rule-effects.ts';
import type { OwnRule, Phrasebook, UsedRules } from './phrasebook/phrasebook-rules.ts';

/** How many rules of one kind a notice names. */
const mostNamed = 5;

const kinds: readonly {
  readonly kind: OwnRule['kind'];
  readonly says: (count: number) => string;
  readonly fix: string;
}[] = [
  {
    kind: 'file',
    says: (n) => (n === 1 ? 'One rule for files matches no file' : `${n} rules for files match no file`),
    fix: 'Correct match, or ignore this if those files were not read.',
  },
  {
    kind: 'key',
    says: (n) =>
      n === 1
        ? 'One key of a rule for files has no effect on the files that it matches'
        : `${n} keys of rules for files have no effect on the files that they match`,
    fix: 'Remove it, or name the layout or the column that it is for.',
  },
  {
    kind: 'unit',
    says: (n) => (n === 1 ? 'One pattern of units matches no unit' : `${n} patterns of units match no unit`),
    fix: 'Correct the pattern; the first match counts.',
  },
  {
    kind: 'parameter',
    says: (n) => (n === 1 ? 'One parameter was in no file' : `${n} parameters were in no file`),
    fix: 'Check their spelling against the log.',
  },
  {
    kind: 'message',
    says: (n) =>
      n === 1 ? 'One rule for messages matches no message' : `${n} rules for messages match no message`,
    fix: 'Correct when or only; the first matching rule counts.',
  },
  {
    kind: 'ignore',
    says: (n) =>
      n === 1 ? 'One pattern of ignore matches nothing' : `${n} patterns of ignore match nothing`,
    fix: 'Correct or remove it.',
  },
  {
    kind: 'ignoreUnits',
    says: (n) =>
      n === 1 ? 'One pattern of ignoreUnits matches no unit' : `${n} patterns of ignoreUnits match no unit`,
    fix: 'Correct or remove it; case counts.',
  },
];

/**
 * What must be said of the rules of a phrasebook that were of no use to a whole run, one notice of each kind; none of the
 * built-in phrasebook.
 */
export function unusedRules(phrasebook: Phrasebook, used: UsedRules): readonly Notice[] {
  const own = phrasebook.ownRules();
  const shadowed = own.filter(({ shadowedBy }) => shadowedBy !== undefined);
  const idle = own.filter((rule) => rule.shadowedBy === undefined && isIdle(rule, used));
  return [
    ...notice(
      phrasebook,
      shadowed,
      shadowed.length === 1
        ? 'One rule for messages can never match: one before it has the same when and only'
        : `${shadowed.length} rules for messages can never match: one before each has the same when and only`,
      'Remove it, or give it another only.',
    ),
    ...kinds.flatMap(({ kind, says, fix }) => {
      const rules = idle.filter((rule) => rule.kind === kind);
      return notice(phrasebook, rules, says(rules.length), fix);
    }),
  ];
}

/** A key of a rule by which no file was read could have no effect. */
function isIdle({ kind, place, of }: OwnRule, used: UsedRules): boolean {
  return !used.has(place) && (kind !== 'key' || (of !== undefined && used.has(readBy(of))));
}

function notice(
  { lineOf }: Phrasebook,
  rules: readonly OwnRule[],
  says: string,
  fix: string,
): readonly Notice[] {
  const [first, ...others] = rules;
  if (first === undefined) return [];
  const named = [first, ...others].slice(0, mostNamed).map(nameOf);
  const more = rules.length - named.length;
  const what = `${says}: ${named.join(', ')}${more > 0 ? ` and ${more} more` : ''}.`;
  const lines: NonEmpty<SourceLine> = [
    lineOf(first.place),
    ...others.slice(0, mostNamed - 1).map(({ place }) => lineOf(place)),
  ];
  return [{ id: 'unused-rules', what, fix, count: rules.length, from: null, to: null, lines }];
}

const mostShown = 60;

function nameOf({ kind, place, text, shadowedBy }: OwnRule): string {
  if (kind === 'key' || kind === 'parameter')
    return place.length > mostShown ? `${place.slice(0, mostShown)}...` : place;
  const shown = text.length > mostShown ? `${text.slice(0, mostShown)}...` : text;
  return `${place} (${shown}${shadowedBy === undefined ? '' : `, as ${shadowedBy}`})`;
}
