import { describe, expect, test } from 'vitest';
import { planMisfit } from '../../../src/verify/plan-misfit.ts';
import type { Job } from '../../../src/vocabulary.ts';
import { analyseTexts, journalText } from '../../support/read-text.ts';
import { fileWith, steadypair } from '../../support/run-command.ts';

const log = journalText('08:40:00 RO1 A link a up\n08:40:00 RO1 B link a up\n08:40:00 RO2 A link a up');

async function misfit(job: Job | null): Promise<unknown> {
  return planMisfit((await analyseTexts({ 'site.log': log })).timelines, job);
}

describe('a plan', () => {
  test('fits that names pairs and halves of which the logs speak, or nothing at all', async () => {
    expect(await misfit(null)).toBeNull();
    expect(await misfit({})).toBeNull();
    expect(await misfit({ plan: {} })).toBeNull();
    expect(await misfit({ plan: { RO1: { A: {}, B: { model: 'Tern-4' } } } })).toBeNull();
  });

  test('that names a pair of which no log speaks does not', async () => {
    expect(await misfit({ file: 'job.yaml', plan: { RO1: { A: {} }, RO7: { A: {} } } })).toEqual({
      where: 'job.yaml: plan.RO7',
      what: 'no file names that pair.',
      fix: 'The files name RO1, RO2.',
    });
  });

  test('that names a half of which no log speaks does not', async () => {
    expect(await misfit({ plan: { RO1: { C: { model: 'Tern-4' } } } })).toEqual({
      where: 'the job: plan.RO1.C',
      what: 'no file names that half.',
      fix: 'The halves of RO1 are A and B.',
    });
  });

  test('that does not fit is an error of one line', async () => {
    const job = fileWith('plan: { RO1: { C: { model: Tern-4 } } }\n', 'job.yaml');
    const { status, err, out } = await steadypair('verify', fileWith(log, 'site.log'), '--job', job);
    expect([status, out]).toEqual([2, '']);
    expect(err).toBe(`${job}: plan.RO1.C: no file names that half. The halves of RO1 are A and B.\n`);
  });
});
