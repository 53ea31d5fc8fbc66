import { type Gauge, pairSignals, type Signal, type Subject, stateSignals } from '../../vocabulary.ts';
import { isProgramName } from './pair-names.ts';
import type { Phrasebook } from './phrasebook-rules.ts';
import { isSeverity } from './severity-words.ts';

/** What a row says about where a value belongs: one text, or the parts in columns of their own. */
export interface UnitParts {
  readonly unit: string;
  readonly half: string;
  readonly role: string;
  /** The column or the field says that it names a pair. */
  readonly isPair?: boolean;
}

/** What a unit text stands for, and what says so. */
export interface UnitMeant {
  readonly subject: Subject;
  /**
   * `site`: a pattern of the phrasebook; `half` and `role`: a built-in form such as `RO1-A` or `RO1 standby`; `word`: nothing
   * but a word, which may be the name of a pair or any other.
   */
  readonly by: 'site' | 'half' | 'role' | 'word';
}

/** The subject a unit text stands for, and what says so; `null` if no unit pattern fits. */
export function unitMeant(phrasebook: Phrasebook, { unit, half, role }: UnitParts): UnitMeant | null {
  for (const rule of phrasebook.units) {
    const groups = rule.pattern.match(unit);
    const pair = rule.pair ?? groups?.pair;
    if (groups === null || pair === undefined || isSeverity(pair)) continue;
    if (rule.isBuiltIn === true && isProgramName(pair)) continue;
    const named = role === '' ? (rule.role ?? groups.role ?? '') : role;
    const own = rule.half ?? groups.half ?? null;
    const subject = {
      pair,
      half: half === '' ? own : half,
      role: roleNamed(named),
      ...(groups.site === undefined ? {} : { site: groups.site }),
    };
    const form = own !== null ? 'half' : rule.role !== undefined ? 'role' : 'word';
    return { subject, by: rule.isBuiltIn === true ? form : 'site' };
  }
  return null;
}

/** The subject a unit text stands for; `null` if no unit pattern fits. */
export function subjectOf(phrasebook: Phrasebook, parts: UnitParts): Subject | null {
  return unitMeant(phrasebook, parts)?.subject ?? null;
}

/** `active` or `standby` as a log spells them; `null` for anything else. */
export function roleNamed(text: string): 'active' | 'standby' | null {
  const word = text.trim().toLowerCase();
  if (word === 'active' || word === 'primary') return 'active';
  return word === 'standby' || word === 'stby' || word === 'backup' ? 'standby' : null;
}

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
