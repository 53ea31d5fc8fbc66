import { type Gauge, pairSignals, type Signal, type Subject, stateSignals } from '../../vocabulary.ts';
import { valueSpellings } from './built-in-phrasebook.ts';
import type { Phrasebook } from './phrasebook-rules.ts';
import { isSeverity } from './severity-words.ts';
import { foldedWord } from './value-words.ts';

/** What a row says about where a value belongs: one text, or the parts in columns of their own. */
export interface UnitParts {
  readonly unit: string;
  readonly half: string;
  readonly role: string;
}

/** The subject a unit text stands for; `null` if no unit pattern fits. */
export function subjectOf(phrasebook: Phrasebook, { unit, half, role }: UnitParts): Subject | null {
  for (const rule of phrasebook.units) {
    const groups = rule.pattern.match(unit);
    const pair = rule.pair ?? groups?.pair;
    if (groups === null || pair === undefined || isSeverity(pair)) continue;
    // Plain English knows units in any case as one; a site's own pattern may tell them apart.
    const asOne = (name: string): string => (rule.isPlain ? name.toUpperCase() : name);
    const named = role === '' ? (rule.role ?? groups.role ?? '') : role;
    return {
      pair: asOne(pair),
      half: half !== '' ? asOne(half) : groups.half === undefined ? (rule.half ?? null) : asOne(groups.half),
      role: roleNamed(named),
      ...(groups.site === undefined ? {} : { site: groups.site }),
    };
  }
  return null;
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
