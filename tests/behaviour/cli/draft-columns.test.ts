import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { fileWith, steadypair } from '../../support/run-command.ts';

test.each([
  [
    'an alarm list whose rows say when each ended',
    'ended: "Cleared"',
    'Cleared,Raised,Unit,Alarm\n2026-03-14 10:04:00Z,2026-03-14 10:00:00Z,RO1,Partner not ready\n2026-03-14 10:34:00Z,2026-03-14 10:30:00Z,RO1,Partner not ready\n,2026-03-14 10:50:00Z,RO1,Partner not ready\n',
  ],
  [
    'a table of pairs whose column names say the half',
    '{ time: "time", pair: "pair" }',
    'time,pair,A role,B role,partner ready\n2026-03-14 10:00:00Z,RO1,active,standby,yes\n2026-03-14 10:00:10Z,RO1,active,absent,no\n',
  ],
])('a draft of %s reads it as none does', async (_, columns, text) => {
  const file = fileWith(text, 'site.csv');
  const path = join(mkdtempSync(join(tmpdir(), 'draft-')), 'site.yaml');
  await steadypair('inspect', file, '--draft-phrasebook', path);
  expect(readFileSync(path, 'utf8')).toContain(columns);
  const { out: before } = await steadypair('timeline', file);
  const { out: after } = await steadypair('timeline', file, '--phrasebook', path);
  expect(after).toBe(before);
  // Five events and the header.
  expect(before.trim().split('\n').length).toBe(6);
});
