import { journalCsv, type Message, messagesOf, readingsCsv } from './exports.ts';
import type { Story } from './story.ts';
import { journalWording, pollWording } from './wordings.ts';

/** The exports of the days before a swap: a poll every half hour and the journal, with the daily self-tests in it. */
export function beforeFiles(
  story: Story,
  zone: string,
): readonly { readonly name: string; readonly text: string }[] {
  const day = 86_400_000;
  const tests: Message[] = [];
  for (let time = story.from + day; time < story.to; time += day)
    tests.push({ time, unit: `${story.pair} pair`, text: 'daily self-test passed' });
  tests.push({ time: story.to, unit: `${story.pair} pair`, text: 'user Operator 3 logged off' });
  return [
    {
      name: 'ro1-poll.csv',
      text: readingsCsv(story, {
        spacingSeconds: 1800,
        phaseSeconds: 4,
        stamp: { form: 'day-first', zone, decimals: 0 },
        delimiter: ',',
        wording: pollWording,
      }),
    },
    {
      name: 'ro1-journal.csv',
      text: journalCsv(messagesOf(story, journalWording, tests), ['Logged at', 'Where', 'What'], ';', {
        form: 'iso',
        zone,
        decimals: 3,
      }),
    },
  ];
}
