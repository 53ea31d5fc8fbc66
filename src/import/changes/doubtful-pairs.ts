import { pairHappenings, pairSignals, type Signal, type SourceLine } from '../../vocabulary.ts';
import { isPlantName, mayNamePair } from '../phrasebook/pair-names.ts';
import { countsOf, type SinkState } from './sink-state.ts';
import type { Unit } from './units.ts';

/** A name that was taken for one of a pair, and that cannot be one. */
export interface DoubtfulPair {
  readonly pair: string;
  /** `word`: nothing but a word says so; `halves`: it has more than two halves; `numbers`: every row has another. */
  readonly why: 'word' | 'halves' | 'numbers';
  /** The texts that name it, in the order of their coming. */
  readonly units: readonly string[];
  /** Where it first stands. */
  readonly first: Omit<SourceLine, 'file'>;
}

/** Fewer rows may well be one of each unit. Chosen here. */
const leastRows = 20;

/**
 * The names of which a whole file shows that they are none of a pair: a word without a figure of which neither a half nor both roles are
 * named, unless it is in capitals and all that is said of it is of pairs; a name of more than two halves; names without a half of which every row has another at another time.
 */
export function doubtfulPairs(state: SinkState): readonly DoubtfulPair[] {
  const byPair = new Map<string, Unit[]>();
  for (const unit of state.unitList) {
    const { subject, by } = unit;
    if (subject === null || by === 'site') continue;
    byPair.set(subject.pair, [...(byPair.get(subject.pair) ?? []), unit]);
  }
  const numbers = areNumbers(state);
  return [...byPair].flatMap(([pair, units]) => {
    const why = doubtOf(pair, units, state.knownPairs) ?? (numbers && units.every(isBare) ? 'numbers' : null);
    const first = units.map((u) => u.first ?? u.notUnderstood?.first).find((place) => place !== undefined);
    if (why === null || first === undefined) return [];
    return [{ pair, why, units: units.map((u) => u.text), first: { line: first.line, text: first.text } }];
  });
}

function doubtOf(
  pair: string,
  units: readonly Unit[],
  known: ReadonlySet<string>,
): DoubtfulPair['why'] | null {
  const halves = new Set(units.flatMap(({ by, subject }) => (by === 'half' ? [subject?.half] : [])));
  if (halves.size > 2) return 'halves';
  const roles = new Set(units.flatMap(({ by, subject }) => (by === 'role' ? [subject?.role] : [])));
  const isSure = halves.size > 0 || roles.size > 1 || isPlantName(pair) || known.has(pair);
  if (isSure || units.some((u) => u.by === 'column')) return null;
  return mayNamePair(pair) && units.every(saysOfPairs) ? null : 'word';
}

/** True if all that was said of a name is said of pairs as a whole, and was understood. */
function saysOfPairs({ text, signals, notUnderstood }: Unit): boolean {
  const isOfPairs = signals.size > 0 && [...signals].every((signal) => ofPairs.has(signal));
  return isOfPairs && notUnderstood === null && text === text.toUpperCase();
}

const ofPairs: ReadonlySet<Signal> = new Set([...pairSignals, ...pairHappenings]);

function isBare({ by }: Unit): boolean {
  return by === 'word';
}

/** Numbers of rows, of processes or of errors: as many units as rows, and not all at one time, as a dump of all pairs is. */
function areNumbers(state: SinkState): boolean {
  const units = state.unitList.filter((u) => u.subject !== null && isBare(u));
  const times = new Set(units.flatMap((u) => (u.first === undefined ? [] : [u.first.time])));
  const { read } = countsOf(state);
  return read >= leastRows && times.size > 1 && units.length >= read * 0.9;
}
