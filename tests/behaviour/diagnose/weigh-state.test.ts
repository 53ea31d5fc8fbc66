/** What a state weighs where it was not so at failures, was not told then, or did not hinder this pair before. */
import { describe, expect, test } from 'vitest';
import { toldOf as told } from '../../support/check-cause.ts';
import { journalText } from '../../support/read-text.ts';

describe('a state that is so as the log ends', () => {
  test('brought no attempt that failed without it, however often a partner was ready without', async () => {
    expect(await told({ plus: ['07:50:00  RO1 B  links crossed'] }, 'links-crossed')).toEqual([
      'doubted',
      'Attempts failed without crossed links: 3 times.',
      'The links of half B are crossed. This was so at 0 of 3 failed attempts and at 0 of 1 time with a ready partner.',
    ]);
  });
  test('stands for the attempts that failed where no line tells how it was then', async () => {
    const variant = { without: ['links straight'], plus: ['07:50:00  RO1 B  links crossed'] };
    // (1.5 / 2) to (0.5 / 1) is 1.5 to 1: 1.8 decibans and 9.
    expect((await told(variant, 'links-crossed')).slice(0, 2)).toEqual([
      10.8,
      'The links of half B are crossed. The state when attempts failed was not logged; whether this was so with a ready partner was not logged.',
    ]);
  });
});

describe('a state in spite of which this very pair was ready', () => {
  test('hinders at most, whatever other pairs were ready without', async () => {
    const other = (pair: string): string =>
      journalText(`06:00:00  ${pair} A  role active
        06:00:00  ${pair} B  role standby
        06:00:00  ${pair} A  firmware 6.4.1
        06:00:00  ${pair} B  firmware 6.4.1
        06:00:00  ${pair}    partner ready
        08:00:00  ${pair} A  light off`);
    const variant = {
      without: ['RO1 B  firmware'],
      plus: ['06:00:00  RO1 B  firmware 6.2.0'],
      files: { 'ro2.log': other('RO2'), 'ro3.log': other('RO3') },
    };
    // (3.5 / 4) to (1.5 / 2), its own, is 1.17 to 1: 0.7 decibans and 6; of all three, 2.3 to 1.
    expect((await told(variant, 'firmware-differs')).slice(0, 2)).toEqual([
      6.7,
      'Half B reports firmware 6.2.0, half A 6.4.1. This was so at 3 of 3 failed attempts and at 1 of 3 times with a ready partner.',
    ]);
  });
});
