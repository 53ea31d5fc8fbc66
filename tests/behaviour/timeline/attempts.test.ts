import { describe, expect, test } from 'vitest';
import { attemptsOf } from '../../../src/timeline/attempts.ts';
import { referenceBands } from '../../../src/timeline/reference-bands.ts';
import { defaultRules } from '../../../src/timeline/rules.ts';
import type { Attempt } from '../../../src/vocabulary.ts';
import { analyseTexts, journalText } from '../../support/read-text.ts';

const begin = `10:00:00  RO1 A  role active
  10:00:00  RO1 B  role standby
  10:00:00  RO1    partner ready
  10:00:00  RO1 A  firmware 6.4.1
  10:00:00  RO1 B  firmware 6.4.1
  10:00:00  RO1 B  light steady`;

async function attempts(journal: string): Promise<readonly Attempt[]> {
  const { facts } = await analyseTexts({ 'ro1.log': journalText(`${begin}\n${journal}`) });
  return facts.flatMap((f) => attemptsOf(f.timeline, f.bringUps, defaultRules));
}

const told = ({ cause, outcome, watched }: Attempt): string => `${cause} ${outcome} ${watched.seconds}`;
const ladder = ({ stages }: Attempt): readonly string[] =>
  stages.map(({ stage, inStage }) => `${stage} ${inStage.seconds}${inStage.censored ? '+' : ''}`);

describe('attempts', () => {
  test('each sync start after a failed one is another; the wait after a loss is none of its own', async () => {
    const found = await attempts(`10:10:00  RO1    partner not ready
      10:10:00  RO1 B  light flashing
      10:11:00  RO1 B  sync start
      10:13:00  RO1 B  sync failed
      10:15:00  RO1 B  sync start
      10:16:40  RO1 B  sync failed
      10:20:00  RO1 A  light off`);
    expect(found.map(told)).toEqual(['sync failed 120', 'sync failed 100']);
    expect(found.map((a) => a.abort?.seconds)).toEqual([120, 100]);
  });
  test('a loss that nothing follows is a wait to the end of the log', async () => {
    const found = await attempts('10:10:00  RO1    partner not ready\n10:20:00  RO1 A  light off');
    expect(found.map(told)).toEqual(['loss overdue 600']);
  });
  test('a restart that another restart follows was cut short; one that became ready and held is ready', async () => {
    const found = await attempts(`10:10:00  RO1 B  module restart
      10:10:00  RO1    partner not ready
      10:12:00  RO1 B  module restart
      10:14:00  RO1    partner ready
      10:20:00  RO1 A  light off`);
    expect(found.map(told)).toEqual(['restart superseded 120', 'restart ready 120']);
  });
  test('an insertion that a reflash follows, or that is pulled within five minutes, had no fair try', async () => {
    const found = await attempts(`10:10:00  RO1 B  module removed
      10:12:00  RO1 B  module inserted
      10:13:00  RO1 B  module removed
      10:15:00  RO1 B  module inserted
      10:16:00  RO1 B  reflash start
      10:18:00  RO1 B  reflash end
      10:20:00  RO1    partner ready
      10:30:00  RO1 A  light off`);
    expect(found.map(told)).toEqual([
      'inserted superseded 60',
      'inserted superseded 60',
      'reflash ready 120',
    ]);
  });
  test('ready for less than a minute is lost', async () => {
    const found = await attempts(`10:10:00  RO1 B  module restart
      10:10:00  RO1    partner not ready
      10:12:00  RO1    partner ready
      10:12:59  RO1    partner not ready
      10:20:00  RO1 A  light off`);
    expect(found.map(told)).toEqual(['restart lost 120', 'loss overdue 421']);
  });
});

describe('the ladder of stages', () => {
  test('from absent identity to a steady light, with the time in each', async () => {
    const found = await attempts(`10:10:00  RO1 B  module removed
      10:10:00  RO1    partner not ready
      10:12:00  RO1 B  module inserted
      10:12:00  RO1 B  firmware 6.2.0
      10:12:00  RO1 B  light flashing
      10:13:00  RO1 B  reflash start
      10:15:00  RO1 B  reflash end
      10:15:05  RO1 B  firmware 6.4.1
      10:17:00  RO1    partner ready
      10:19:00  RO1 B  light steady
      10:30:00  RO1 A  light off`);
    const reflash = found.at(-1);
    if (reflash === undefined) throw new Error('There is no attempt.');
    // 10:15:00 identified with the old firmware, 10:15:05 aligned and flashing, 10:17 ready, 10:19 steady.
    expect(ladder(reflash).slice(0, 3)).toEqual(['identified 5', 'synchronising 115', 'ready 120']);
    expect(reflash.stages.at(-1)?.stage).toBe('steady');
    expect(referenceBands(found)).toEqual([
      { stage: 'identified', count: 1, shortest: 5, median: 5, longest: 5 },
      { stage: 'synchronising', count: 1, shortest: 115, median: 115, longest: 115 },
      { stage: 'ready', count: 1, shortest: 120, median: 120, longest: 120 },
    ]);
  });
  test('the last stage is watched to the end of the attempt, not longer', async () => {
    const [found] = await attempts(`10:10:00  RO1 B  module restart
      10:10:00  RO1    partner not ready
      10:11:00  RO1 B  sync start
      10:14:00  RO1 B  sync failed
      10:30:00  RO1 A  light off`);
    expect(found === undefined ? [] : ladder(found)).toEqual(['firmware-aligned 60', 'synchronising 180+']);
  });
});
