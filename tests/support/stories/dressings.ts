import { readFileSync } from 'node:fs';
import { type Random, seeded } from '../../../samples/random.ts';
import type { Story, StoryEvent } from '../../../samples/story.ts';
import { journalWording, pollWording } from '../../../samples/wordings.ts';
import { dressJournal, dressNotes } from './dress-journal.ts';
import { dressPoll } from './dress-poll.ts';
import { type Dressed, type Dressing, dressed } from './dressing.ts';
import { dressHalfLogs } from './half-logs.ts';

/** The phrasebook of the demo site; all stamps are UTC here. */
const sitePhrasebook = readFileSync('samples/marrow-bay/clean-swap/phrasebook.yaml', 'utf8').replace(
  'Europe/Lisbon',
  'UTC',
);

/** What a sparse journal may leave out: signals that are told, or not, together. */
const leavable: readonly (readonly StoryEvent['signal'][])[] = [
  ['light'],
  ['links'],
  ['link-a', 'link-b'],
  ['supply'],
  ['configuration'],
  ['firmware'],
  ['model'],
  ['serial'],
  ['partner-present'],
  ['partner-ready'],
  ['role'],
  ['removed', 'inserted'],
  ['reflash-start', 'reflash-end'],
  ['sync-start'],
  ['switchover'],
  ['switchover-command'],
  ['fault'],
];

/** Every way to dress a story. */
export const dressings: readonly Dressing[] = [
  dressing('journal', (story, random) => [dressJournal(story, { file: 'journal.csv' }, random)]),
  dressing('sparse-journal', (story, random) => {
    const untold = new Set(leavable.filter(() => random() < 0.3).flat());
    return [dressJournal(story, { file: 'journal.csv', untold }, random)];
  }),
  dressing('text-log', (story, random) => [dressJournal(story, { file: 'pair.log', form: 'text' }, random)]),
  dressing('poll', (story, random) => [dressPoll(story, { file: 'poll.csv' }, random)]),
  dressing('two-polls', (story, random) => [
    dressPoll(story, { file: 'poll-1.csv' }, random),
    dressPoll(story, { file: 'poll-2.csv' }, random),
  ]),
  dressing('journal-and-poll', (story, random) => [
    dressJournal(story, { file: 'journal.csv' }, random),
    dressPoll(story, { file: 'poll.csv' }, random),
  ]),
  dressing('poll-and-notes', (story, random) => [
    dressPoll(story, { file: 'poll.csv' }, random),
    dressNotes(story, 'notes.txt'),
  ]),
  dressing('half-logs', dressHalfLogs),
  {
    id: 'site-words',
    dress(story, random) {
      const columns = ['Logged at', 'Where', 'What'];
      const poll = dressPoll(
        story,
        { file: 'site-poll.csv', wording: pollWording, layout: 'readings' },
        random,
      );
      const journal = dressJournal(
        story,
        { file: 'site-journal.csv', wording: journalWording, columns },
        random,
      );
      return dressed('site-words', [poll, journal], sitePhrasebook);
    },
  },
];

function dressing(
  id: string,
  files: (story: Story, random: Random) => Parameters<typeof dressed>[1],
): Dressing {
  return { id, dress: (story, random) => dressed(id, files(story, random)) };
}

/** A story in the dressing of a seed, the same on every computer; `id` names one. */
export function dress(story: Story, seed: number, id?: string): Dressed {
  // Not the numbers that the story was drawn from.
  const random = seeded(seed ^ 0x5eed);
  const drawn = dressings[Math.floor(random() * dressings.length)];
  const chosen = id === undefined ? drawn : dressings.find((d) => d.id === id);
  if (chosen === undefined) throw new RangeError(`There is no dressing "${id}".`);
  return chosen.dress(story, random);
}
