import { describe, expect, test } from 'vitest';
import { questionWords } from '../../../src/report/question-words.ts';
import { analyseTexts } from '../../support/read-text.ts';

/** A loss 10 s after link a of half B went down, at each of these hours. */
const follows = (hour: string): string =>
  `2026-03-14T${hour}:20:10.000Z RO1-B link a down
2026-03-14T${hour}:20:20.000Z RO1 partner not ready
2026-03-14T${hour}:20:30.000Z RO1-B link a up
2026-03-14T${hour}:22:00.000Z RO1 partner ready
`;
const analysed = await analyseTexts({
  'ro1.log': `2026-03-14T08:00:00.000Z RO1 partner ready\n${['08', '09', '10'].map(follows).join('')}`,
});

describe('how a finding that rests on chance was computed', () => {
  test('is said of the kinds that were found, with source and promise', () => {
    const said = questionWords(analysed.findings);
    expect(said).toMatch(/^How this was computed\. Coincidence: .*Maclure.* at most 1 of 100 fleets .*Holm/);
    expect(said).not.toContain('Rhythm');
  });
  test('is not said where none was found', () => {
    expect(questionWords(analysed.findings.filter((f) => f.id !== 'coincidence'))).toBe('');
  });
});
