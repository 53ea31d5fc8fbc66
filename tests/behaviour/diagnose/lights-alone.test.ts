import { describe, expect, test } from 'vitest';
import { diagnose } from '../../../src/pipeline.ts';
import { answerOf } from '../../support/check-cause.ts';
import { pollText } from '../../support/clean-swap.ts';
import { analyseTexts, journalText } from '../../support/read-text.ts';

const roles = ['10:00:00 RO1 A role active', '10:00:00 RO1 B role standby'];
const end = '10:30:00 RO1 A light off';

describe('a light is told where readiness was never logged', () => {
  const second = async (files: Readonly<Record<string, string>>): Promise<string | undefined> =>
    answerOf(diagnose(await analyseTexts(files), null))[1];
  test('since when it shows what it shows, restated or not', async () => {
    const lines = [
      '10:00:00 RO1 B light steady',
      '10:12:00 RO1 B light flashing',
      '10:20:00 RO1 B light flashing',
      end,
    ];
    expect(await second({ 'a.log': journalText(lines.join('\n')) })).toBe(
      'The light of half B has been flashing since 10:12:00.',
    );
  });
  test('or since before the log began', async () => {
    const poll = pollText(['10:00:00', '10:10:00'], 60, [['RO1-B', 'light', ['10:00:00', 'flashing']]]);
    expect(await second({ 'poll.csv': poll })).toBe(
      'The light of half B has been flashing since before its log began.',
    );
  });
  test('and not where there is none', async () => {
    expect(await second({ 'a.log': journalText([...roles, end].join('\n')) })).toBe(
      'The logs do not show whether anything is wrong now.',
    );
  });
});
