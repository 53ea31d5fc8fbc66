import { type Gauge, pairSignals, type Signal, type Subject, stateSignals } from '../../vocabulary.ts';
import { fitsOwn, noteUsed, type Phrasebook, type UsedRules } from './phrasebook-rules.ts';
import { isSeverity } from './severity-words.ts';

/** What a row says about where a value belongs: one text, or the parts in columns of their own. */
export interface UnitParts {
  readonly unit: string;
  readonly half: string;
  readonly role: string;
}

/** The subject a unit text stands for; `null` if no unit pattern fits, or if its rows mean nothing. */
export function subjectOf(
  phrasebook: Phrasebook,
  { unit, half, role }: UnitParts,
  used: UsedRules = new Set(),
): Subject | null {
  if (fitsOwn(phrasebook.ignoreUnits, unit, used)) return null;
  for (const rule of phrasebook.units) {
    const groups = rule.pattern.match(unit);
    const pair = rule.pair ?? groups?.pair;
    if (groups === null || pair === undefined || isSeverity(pair)) continue;
    noteUsed(used, rule.place);
    const named = role === '' ? (rule.role ?? groups.role ?? '') : role;
    return {
      pair,
      half: half === '' ? (rule.half ?? groups.half ?? null) : half,
      role: roleNamed(named),
      ...(groups.site === undefined ? {} : { site: groups.site }),
    };
  }
  return null;
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
