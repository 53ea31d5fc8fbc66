import { expect, test } from 'vitest';
import { messagesOf, readingsCsv, textLog } from '../../../samples/exports.ts';
import type { StampStyle } from '../../../samples/stamps.ts';
import { badSwap } from '../../../samples/stories/bad-swap.ts';
import { cleanSwap } from '../../../samples/stories/clean-swap.ts';
import { wontSync } from '../../../samples/stories/wont-sync.ts';
import type { Story } from '../../../samples/story.ts';
import { plain } from '../../../samples/wordings.ts';
import type { Finding } from '../../../src/vocabulary.ts';
import { analyseTexts } from '../../support/read-text.ts';

const stamp: StampStyle = { form: 'iso-offset', zone: 'UTC', decimals: 3 };
const log = (story: Story): string => textLog(messagesOf(story, plain), stamp);
const poll = (story: Story, spacingSeconds: number): string =>
  readingsCsv(story, { spacingSeconds, phaseSeconds: 3, stamp, delimiter: ',', wording: plain });

/** The story as a journal, as polls of three spacings, and as both at once. */
const shown = (story: Story): readonly Readonly<Record<string, string>>[] => [
  { 'story.log': log(story) },
  ...[2, 10, 60].map((spacing) => ({ 'story.csv': poll(story, spacing) })),
  { 'story.log': log(story), 'story.csv': poll(story, 10) },
];
const about = new Set([
  'sync-loop',
  'restart-loop',
  'rhythm',
  'coincidence',
  'link-flapping',
  'role-flapping',
  'links-crossed',
]);

async function findingsOf(files: Readonly<Record<string, string>>): Promise<readonly Finding[]> {
  const { answers, findings } = await analyseTexts(files);
  expect(answers.filter((a) => a.failed !== null)).toEqual([]);
  return findings;
}

test('a clean swap gets no warning, however it is exported', async () => {
  for (const files of shown(cleanSwap()))
    expect((await findingsOf(files)).filter((f) => f.severity !== 'info')).toEqual([]);
});

test('the work of a bad swap is neither loop nor rhythm, coincidence nor flapping', async () => {
  for (const files of shown(badSwap()))
    expect((await findingsOf(files)).filter((f) => about.has(f.id))).toEqual([]);
});

test('a pair that will not sync has the loop and the flapping link that were injected', async () => {
  const story = wontSync();
  const injected = (signal: string, value: string | null): number =>
    story.events.filter((e) => e.half === 'B' && e.signal === signal && e.value === value).length;
  const found = (await findingsOf({ 'story.log': log(story) })).filter((f) => about.has(f.id));
  expect(found.map(({ id, half, figures }) => ({ id, half, count: figures.count ?? figures.downs }))).toEqual(
    expect.arrayContaining([
      { id: 'sync-loop', half: 'B', count: injected('sync-failed', null) },
      { id: 'link-flapping', half: 'B', count: injected('link-a', 'down') },
    ]),
  );
  expect(found).toHaveLength(2);
});
