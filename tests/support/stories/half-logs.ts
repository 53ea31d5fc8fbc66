import type { Message } from '../../../samples/exports.ts';
import type { Random } from '../../../samples/random.ts';
import type { HalfName, Story } from '../../../samples/story.ts';
import { plain } from '../../../samples/wordings.ts';
import { dressJournal } from './dress-journal.ts';
import type { DressedFile } from './dressing.ts';
import { spellsOf, valueAt } from './history.ts';
import { otherThan } from './plan.ts';

/**
 * A log of each half: what its own module says of itself and of the pair while it is in; of a half whose module says
 * nothing, the other tells. Nobody tells of a half while both are out.
 */
export function dressHalfLogs(story: Story, random: Random): readonly DressedFile[] {
  const serials = { A: spellsOf(story, 'A', 'serial'), B: spellsOf(story, 'B', 'serial') };
  const isIn = (half: HalfName, time: number): boolean => valueAt(serials[half], time) !== '';
  return (['A', 'B'] as const).map((half) => {
    const name = plain.unit(story.pair, half);
    const other = plain.unit(story.pair, otherThan(half));
    const own = (message: Message): readonly Message[] => {
      if (!isIn(half, message.time)) return [];
      if (message.unit === other && isIn(otherThan(half), message.time)) return [];
      return [message.unit === other ? message : { ...message, unit: name }];
    };
    const style = { file: `half-${half.toLowerCase()}.log`, form: 'text' } as const;
    const { text, source } = dressJournal(
      story,
      { ...style, of: (messages) => messages.flatMap(own) },
      random,
    );
    return { text, source: { ...source, isPart: true } };
  });
}
