import { describe, expect, test } from 'vitest';
import { verify } from '../../../src/pipeline.ts';
import { reportsOf } from '../../../src/report/verify-reports.ts';
import { verifyText } from '../../../src/report/verify-text.ts';
import type { Verification } from '../../../src/vocabulary.ts';
import { analyseTexts, journalText } from '../../support/read-text.ts';

/** Half B was taken out at 09:00, and nothing was put in by 09:05. */
const journal = [
  '08:40:00 RO1 A role active',
  '08:40:00 RO1 B role standby',
  '08:40:00 RO1   partner ready',
  '08:40:00 RO1 A model Tern-2',
  '08:40:00 RO1 B model Tern-2',
  '08:40:00 RO1 B serial T2-1',
  '09:00:00 RO1 B module removed',
  '09:00:00 RO1   partner not ready',
  '09:05:00 RO1 A link a up',
].join('\n');

const sentence =
  'The swap of pair RO1 is still open: half B was removed. Waiting for a module in half B: 5 min 00 s so far, the limit is 15 min 00 s.';
const waiting = 'Waiting since 09:00:00; the limit is 09:15:00.';

async function begun(): Promise<Verification> {
  return verify(
    await analyseTexts({ 'ro1.log': journalText(journal) }),
    null,
    { from: null, to: null },
    null,
  );
}
/** A report by the end of its name, without its marks and line breaks. */
async function report(end: string): Promise<string> {
  const reports = await reportsOf(await begun(), { zone: 'UTC', version: '1' });
  const found = reports.find((r) => r.name.endsWith(end));
  if (found === undefined) throw new Error(`There is no report ${end}.`);
  return end === '.json' ? found.text : found.text.replaceAll(/<[^>]*>|[*\\]/g, ' ').replaceAll(/\s+/g, ' ');
}

describe('a swap that has begun', () => {
  test('is told in the terminal with what is awaited, and what came in as not known', async () => {
    const text = verifyText(await begun(), { zone: 'UTC', paint: (t) => t, reports: [] });
    const flat = text.replaceAll(/\s+/g, ' ');
    expect(flat).toContain(sentence);
    expect(flat).toContain(waiting);
    expect(flat).toContain('B Tern-2 T2-1 not known not known, not known, not known');
    expect(flat).toContain('Steps 09:00:00 Module removed, half B Checks');
  });

  test.each(['.md', '.html'])(
    'is reported as %s with the same, and asks for no signature yet',
    async (end) => {
      const text = await report(end);
      expect(text).toContain(sentence);
      expect(text).toContain(waiting);
      expect(text).toContain('No module was put into half B within the 5 min 00 s observed.');
      expect(text).toContain('The swap is still open: do not sign yet.');
      expect(text).not.toMatch(/Invalid|NaN|undefined|1970/);
    },
  );

  test('has no insertion in JSON, and says what it waits for', async () => {
    expect(JSON.parse(await report('.json'))).toMatchObject({
      schema: 'steadypair/verify/2',
      swaps: [
        {
          verdict: 'inconclusive',
          open: {
            awaits: 'in',
            half: 'B',
            since: { time: '2026-03-14T09:00:00.000Z', earliest: '2026-03-14T09:00:00.000Z' },
            limitSeconds: 900,
            holdPoint: 'waiting',
            conditions: [{ id: 'in', half: 'B', status: 'waiting' }],
          },
          halves: [
            {
              half: 'B',
              removedAt: { time: '2026-03-14T09:00:00.000Z', earliest: '2026-03-14T09:00:00.000Z' },
              insertedAt: null,
              model: { before: 'Tern-2', after: null },
              serial: { before: 'T2-1', after: null },
              firmware: { before: null, found: null, after: null },
            },
          ],
          bringUps: [],
        },
      ],
    });
  });
});
