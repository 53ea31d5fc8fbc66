import { describe, expect, test } from 'vitest';
import { verifyHtml } from '../../../src/report/verify-html.ts';
import { verifyText } from '../../../src/report/verify-text.ts';
import { sayInstantBounds } from '../../../src/report/words.ts';
import { exampleVerification } from '../../support/example-verification.ts';

const options = { zone: 'UTC', version: '1' };

async function page(index: 0 | 1, verification = exampleVerification()): Promise<string> {
  const swap = verification.swaps[index];
  if (swap === undefined) throw new Error('the example has two swaps');
  return verifyHtml(verification, swap, options);
}

describe('the HTML report', () => {
  test('has its parts in the order of design.md, section 5', async () => {
    const text = await page(0);
    const ids = [...text.matchAll(/<section id="([^"]+)"/g)].map((m) => m[1]);
    expect(ids).toEqual([
      'work',
      'halves',
      'steps',
      'staff',
      'bring-ups',
      'checks',
      'exposure',
      'others',
      'findings',
      'inputs',
      'evidence',
      'cautions',
      'sign-off',
    ]);
    expect(text.indexOf('Pair RO1 is verified.')).toBeLessThan(text.indexOf('<section'));
  });
  test('gives the same bytes for the same input', async () => {
    expect(await page(1)).toBe(await page(1));
  });
  test('links only to what is there, and names each place once', async () => {
    const text = await page(1);
    const ids = [...text.matchAll(/ id="([^"]+)"/g)].map((m) => m[1]);
    const aims = [...text.matchAll(/(?:href="#|url\(#)([^")]+)/g)].map((m) => m[1]);
    expect(new Set(ids).size).toBe(ids.length);
    expect(aims.filter((aim) => !ids.includes(aim))).toEqual([]);
    expect(aims).toContain('check-light-steady');
  });
  test('says what failed in words, and leaves what was not observed to be signed for by hand', async () => {
    const text = await page(1);
    expect(text).toContain('Light steady within five minutes: fail.');
    expect(text).toContain('☐ Both links of both halves up, not crossed, checked at the cabinet');
    expect(text).toContain('This swap is not verified');
    expect(text).toContain('>B past 5 min by 5 min 00 s<');
  });
  test('leaves a line to write on where the job says nothing', async () => {
    expect(await page(0)).toContain('<dt>Reviewed by</dt><dd><span class="blank"></span></dd>');
  });
  test('gives size and SHA-256 of a file and of its archive', async () => {
    const text = await page(0);
    expect(text).toContain(`2658 bytes, <code>SHA-256 ${'a'.repeat(64)}</code>`);
    expect(text).toContain(`in archive.zip, <code>SHA-256 ${'b'.repeat(64)}</code>`);
  });
  test('numbers the evidence by file and line', async () => {
    const lines = [...(await page(0)).matchAll(/id="line-(\d+)">line (\d+) /g)].map((m) => [m[1], m[2]]);
    expect(lines).toEqual([
      ['1', '1'],
      ['2', '2'],
      ['3', '3'],
    ]);
  });
});

describe('a swap past midnight', () => {
  // Begins at 23:45, so that the removal 15 minutes later is at 00:00 of the next day.
  const late = exampleVerification('', Date.UTC(2026, 2, 14, 23, 45));
  test('names the day of what is not of the first', async () => {
    expect(await page(0, late)).toContain('<td class="clock">15 Mar 2026 00:00:00</td>');
    expect(verifyText(late, { zone: 'UTC', paint: (t) => t, reports: [] })).toContain(
      'the last until 15 Mar 2026 00:07:00.',
    );
  });
  test.each([
    ['UTC', '23:59:55 to 15 Mar 2026 00:00:05'],
    // Auckland is 13 hours ahead in March (IANA: daylight saving until April): one day there.
    ['Pacific/Auckland', '12:59:55 to 13:00:05'],
  ])('decides on the day of the zone %s', (zone, said) => {
    const midnight = Date.UTC(2026, 2, 15);
    const instant = { time: midnight + 5000, earliest: midnight - 5000 };
    expect(sayInstantBounds(instant, zone, midnight - 900_000)).toBe(said);
  });
});
