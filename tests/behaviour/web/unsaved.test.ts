import { expect, test } from 'vitest';
import { afterSaving, nothingUnsaved, wouldLose } from '../../../web/unsaved.ts';

const typed = { jobs: new Set(['RO1', 'RO2']), lessons: true };
const shown = { pair: 'RO1', phrasebook: 'site.yaml' };

test('nothing would be lost where nothing was typed or taught', () => {
  expect(wouldLose(nothingUnsaved)).toBe(false);
  expect(wouldLose({ jobs: new Set(['RO1']), lessons: false })).toBe(true);
  expect(wouldLose({ jobs: new Set(), lessons: true })).toBe(true);
});

test.each([
  { file: 'bay-2026-03-14.steadypair-session.json', jobs: [], lessons: false },
  { file: 'site.yaml', jobs: ['RO1', 'RO2'], lessons: false },
  { file: 'draft.yaml', jobs: ['RO1', 'RO2'], lessons: true },
  { file: 'swap-records.zip', jobs: [], lessons: true },
  { file: 'RO1-swap-2026-03-14.html', jobs: ['RO2'], lessons: true },
  { file: 'RO1-swap-2026-03-14_2.md', jobs: ['RO2'], lessons: true },
  { file: 'fleet.html', jobs: ['RO1', 'RO2'], lessons: true },
  { file: 'losses.csv', jobs: ['RO1', 'RO2'], lessons: true },
])('saving $file leaves unsaved jobs of $jobs, lessons: $lessons', ({ file, jobs, lessons }) => {
  const left = afterSaving(typed, file, shown);
  expect([[...left.jobs], left.lessons]).toEqual([jobs, lessons]);
});
