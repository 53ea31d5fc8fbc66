import type { Notice } from '../src/vocabulary.ts';
import type { FileModel } from './protocol.ts';

/** What a file may be wrong in though all its rows were recognised, in a word. */
const oddities: Partial<Readonly<Record<Notice['id'], string>>> = {
  'damaged-tail': 'cut off or damaged',
  'clock-step': 'its clock stepped back',
  'date-order': 'order of day and month open',
  'wrong-half': 'of another half',
  'states-not-listed': 'states not listed',
  unreadable: 'not all of it can be read',
};

/** What is odd in a file, in words; empty: nothing is. */
export function oddIn({ input: { rows }, notices }: FileModel): readonly string[] {
  return [
    ...(rows.unmatched === 0 ? [] : [`${rows.unmatched.toLocaleString('en')} not recognised`]),
    ...(rows.rejected === 0 ? [] : [`${rows.rejected.toLocaleString('en')} rejected`]),
    ...new Set(notices.flatMap(({ id }) => oddities[id] ?? [])),
  ];
}
