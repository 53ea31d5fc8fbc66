import { describe, expect, test } from 'vitest';
import { analyse, diagnose, fleet, verify } from '../../../src/pipeline.ts';
import { diagnoseMarkdown } from '../../../src/report/diagnose-markdown.ts';
import { fleetMarkdown } from '../../../src/report/fleet-markdown.ts';
import { verifyMarkdown } from '../../../src/report/verify-markdown.ts';
import { cleanJournal } from '../../support/clean-swap.ts';
import { journalText, readTexts } from '../../support/read-text.ts';

const options = { zone: 'UTC', version: '1' };
const clean = journalText(cleanJournal.join('\n'));
const strange = journalText('09:00:00 RO1 hatch open\n09:10:00 RO1 hatch closed');

/** The three summaries of some logs. */
async function summariesOf(logs: Readonly<Record<string, string>>): Promise<readonly string[]> {
  const analysed = analyse(await readTexts(logs));
  const verification = verify(analysed, null, { from: null, to: null }, null);
  const [swap] = verification.swaps;
  if (swap === undefined) throw new Error('There is no swap.');
  return [
    verifyMarkdown(verification, swap, options),
    diagnoseMarkdown(diagnose(analysed, null), options),
    fleetMarkdown(fleet(analysed, { by: 'firmware', swaps: 10 }), options),
  ];
}

describe('a summary in Markdown', () => {
  test('says above its verdict which rows it does not know', async () => {
    for (const text of await summariesOf({ 'ro1.log': clean, 'hatch.log': strange })) {
      const [title, notKnown, verdict] = text.split('\n\n');
      expect(title).toMatch(/^# /);
      expect(notKnown).toMatch(/^Not known: 2 of \d+ rows were not recognised /);
      expect(verdict).toMatch(/^\*\*/);
    }
  });

  test('says nothing of that where all was recognised', async () => {
    for (const text of await summariesOf({ 'ro1.log': clean })) expect(text).not.toContain('Not known:');
  });
});

describe('what was not found', () => {
  const said = async (logs: Readonly<Record<string, string>>): Promise<string> =>
    diagnose(analyse(await readTexts(logs)), null)
      .sentences.flat()
      .join(' ');
  test('is not found in the rows recognised, where some were not', async () => {
    expect(await said({ 'ro1.log': clean })).toContain('No trouble found with RO1 at the end');
    expect(await said({ 'ro1.log': clean, 'hatch.log': strange })).toContain(
      'No trouble found with RO1 in the rows recognised at the end',
    );
    expect(await said({ 'ro1.log': clean, 'scan.txt': 'no stamp\nin this text\n' })).toContain(
      'No trouble found with RO1 in the rows recognised at the end',
    );
  });
});
