import { type Gauge, pairSignals, type Signal, type Subject, stateSignals } from '../../vocabulary.ts';
import { valueSpellings } from './built-in-phrasebook.ts';
import { isProgramName } from './pair-names.ts';
import { fitsOwn, noteUsed, type Phrasebook, type UsedRules } from './phrasebook-rules.ts';
import { isSeverity } from './severity-words.ts';
import { foldedWord } from './value-words.ts';

/** What a row says about where a value belongs: one text, or the parts in columns of their own; empty for what it does not say. */
export interface UnitParts {
  readonly unit: string;
  /** The name of a pair where it has a place of its own, and halves or roles another. */
  readonly pair?: string;
  readonly half: string;
  readonly role: string;
  /** The column or the field says that it names a pair. */
  readonly isPair?: boolean;
}

/** What a phrasebook says of units. */
export type Units = Pick<Phrasebook, 'units'> & Partial<Pick<Phrasebook, 'ignoreUnits'>>;

/** What a unit text stands for, and what says so. */
export interface UnitMeant {
  readonly subject: Subject;
  /**
   * `site`: a pattern of the phrasebook; `half` and `role`: a built-in form such as `RO1-A` or `RO1 standby`; `word`: nothing
   * but a word, which may be the name of a pair or any other.
   */
  readonly by: 'site' | 'half' | 'role' | 'word';
}

/** The subject a unit text stands for, and what says so; `null` if no unit pattern fits, or if its rows mean nothing. */
export function unitMeant(
  phrasebook: Units,
  { unit, pair: named = '', half, role }: UnitParts,
  used: UsedRules = new Set(),
): UnitMeant | null {
  if (phrasebook.ignoreUnits !== undefined && fitsOwn(phrasebook.ignoreUnits, unit, used)) return null;
  if (named !== '') return pairMeant(phrasebook, { unit, pair: named, half, role }, used);
  for (const rule of phrasebook.units) {
    const groups = rule.pattern.match(unit);
    const pair = rule.pair ?? groups?.pair;
    if (groups === null || pair === undefined || isSeverity(pair)) continue;
    if (rule.isBuiltIn === true && isProgramName(pair)) continue;
    noteUsed(used, rule.place);
    // Plain English knows units in any case as one; a site's own pattern may tell them apart.
    const asOne = (name: string): string => (rule.isBuiltIn === true ? name.toUpperCase() : name);
    const held = role === '' ? (rule.role ?? groups.role ?? '') : role;
    const own = groups.half === undefined ? (rule.half ?? null) : asOne(groups.half);
    const subject = {
      pair: asOne(pair),
      half: half === '' ? own : asOne(half),
      role: roleNamed(held),
      ...(groups.site === undefined ? {} : { site: groups.site }),
    };
    const form = own !== null ? 'half' : rule.role !== undefined ? 'role' : 'word';
    return { subject, by: rule.isBuiltIn === true ? form : 'site' };
  }
  return null;
}

/**
 * The subject of a pair that is named as such: a unit pattern may rename it, or say its site, but takes no half off its name
 * that the row does not say: INTAKE-2 is a pair where halves stand beside it.
 */
function pairMeant(
  phrasebook: Units,
  { unit, pair, half, role }: UnitParts & { readonly pair: string },
  used: UsedRules,
): UnitMeant | null {
  if (isSeverity(pair)) return null;
  const meant = unitMeant(phrasebook, { unit: pair, half: '', role: '' }, used);
  const by = meant?.by ?? 'word';
  const asOne = (name: string): string => (by === 'site' ? name : name.toUpperCase());
  const renamed = meant?.subject;
  const isSame = renamed?.role === null && (renamed.half === null || renamed.half === asOne(half));
  const named = isSame ? renamed : { pair: asOne(pair) };
  const own = unit === '' ? null : unitMeant(phrasebook, { unit, half, role }, used);
  if (own?.subject.pair === named.pair) return own;
  return { subject: { ...named, half: half === '' ? null : asOne(half), role: roleNamed(role) }, by };
}

/** The subject a unit text stands for; `null` if no unit pattern fits, or if its rows mean nothing. */
export function subjectOf(phrasebook: Units, parts: UnitParts, used?: UsedRules): Subject | null {
  return unitMeant(phrasebook, parts, used)?.subject ?? null;
}

/** `active` or `standby` as a log spells them; `null` for anything else. */
export function roleNamed(text: string): 'active' | 'standby' | null {
  const word = foldedWord(text);
  const role = Object.hasOwn(roles, word) ? roles[word] : undefined;
  return role === 'active' || role === 'standby' ? role : null;
}

const roles = valueSpellings.role ?? {};

/**
 * What a value is about, given its unit and what its rule says. Pair signals are about the pair, whichever unit states
 * them; an unaddressed light is the standby's. `null` where a value of one half names none.
 */
export function addressed(
  unit: Subject,
  signal: Signal | Gauge,
  rule: 'pair' | 'half' | 'active' | 'standby' | undefined,
): Subject | null {
  const { pair, half, role, ...site } = unit;
  const about = (one: string | null, held: Subject['role']): Subject => ({
    ...site,
    pair,
    half: one,
    role: held,
  });
  if (rule === 'pair' || pairSignals.some((s) => s === signal)) return about(null, null);
  if (rule === 'active' || rule === 'standby') return about(null, rule);
  if (half !== null) return about(half, null);
  if (role !== null) return about(null, role);
  if (signal === 'light') return about(null, 'standby');
  const isOfHalf = stateSignals.some((s) => s === signal) || signal === 'load' || signal === 'free-memory';
  return isOfHalf ? null : about(null, null);
}
