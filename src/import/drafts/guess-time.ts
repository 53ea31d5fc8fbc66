import type { DraftKey } from '../../vocabulary.ts';
import type { DateOrder } from '../clock/stamp.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { guessOrder, yearInName } from './guess-dates.ts';
import type { StampGuess } from './guess-stamp.ts';

/** Which year a stamp without one may be of. */
export interface YearsKnown {
  /** The first that other files print; `null` where none does. */
  readonly ofNeighbours: number | null;
  /** The one in which the draft is written. */
  readonly now: number;
}

interface SaidOfTime {
  readonly phrasebook: Pick<Phrasebook, 'order' | 'year' | 'pattern' | 'zone'>;
  readonly order: DateOrder | null;
  readonly year: number | null;
  readonly years: YearsKnown;
}

/** The keys of `time` that the stamps of a file need, each with the stamp that it was guessed from. Empty where none is. */
export function draftTime(
  file: string,
  stamp: StampGuess,
  stamps: readonly string[],
  said: SaidOfTime,
): readonly DraftKey[] {
  const sample = stamp.sample;
  const from = `from "${sample}" in ${file}`;
  const keys: DraftKey[] = [];
  if (stamp.format !== null) keys.push({ key: 'format', value: stamp.format, because: `a guess ${from}` });
  if (stamp.epoch !== null) keys.push({ key: 'epoch', value: stamp.epoch, because: `a guess ${from}` });
  if (stamp.isSince)
    keys.push({
      key: 'since',
      value: '1970-01-01T00:00:00Z',
      because: `a stand-in: timestamps such as "${sample}" in ${file} count seconds from an instant that only you know`,
    });
  const given = said.order ?? said.phrasebook.order ?? null;
  const order = given ?? guessOrder(stamps);
  if (order !== null && stamp.format === null)
    keys.push({
      key: 'order',
      value: order,
      because: given === null ? `a guess ${from}: the other is ${other(order)}` : 'as it was given',
    });
  if (!stamp.hasYear) keys.push(yearKey(file, sample, said));
  return keys;
}

function other(order: DateOrder): DateOrder {
  return order === 'day-first' ? 'month-first' : 'day-first';
}

function yearKey(file: string, sample: string, { year, phrasebook, years }: SaidOfTime): DraftKey {
  const given = year ?? phrasebook.year;
  if (given !== undefined && given !== null) return { key: 'year', value: given, because: 'as it was given' };
  const named = yearInName(file);
  const none = `timestamps such as "${sample}" have none`;
  if (named !== null)
    return { key: 'year', value: named, because: `a guess from the name of the file: ${none}` };
  if (years.ofNeighbours !== null)
    return { key: 'year', value: years.ofNeighbours, because: `a guess from the other files: ${none}` };
  return { key: 'year', value: years.now, because: `a guess, the year of today: ${none}` };
}
