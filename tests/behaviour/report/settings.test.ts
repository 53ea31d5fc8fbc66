import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { inCommand, inPage, statementInPage } from '../../../src/report/settings.ts';
import { settings } from '../../../src/vocabulary.ts';
import { steadypair } from '../../support/run-command.ts';

const option = /(?<![\w-])--[a-z]/;

describe('advice that the command has an option for', () => {
  test.each(settings)('%s: the command adds its own way, the page its control and no option', (setting) => {
    const [command, page] = [inCommand('Do it.', setting), inPage('Do it.', setting)];
    if (setting === 'wording') expect(command).toBe('Do it.');
    else
      expect(command).toMatch(setting === 'reading' ? /^Do it\. .*steadypair inspect/ : /^Do it\. .*--[a-z]/);
    expect(page).toMatch(/in Sources|Open Sources/);
    expect(page).not.toMatch(option);
    expect(page).not.toContain('steadypair ');
  });

  test('is left as it is where there is none', () => {
    expect([inCommand('Do it.', undefined), inPage('Do it.', undefined)]).toEqual(['Do it.', 'Do it.']);
  });

  test('a finding of the page ends with the advice of the page', () => {
    const finding = {
      id: 'zone-assumed',
      severity: 'info',
      pair: null,
      half: null,
      from: null,
      to: null,
      statement: 'x.csv: Read as UTC. Set time.zone in the phrasebook.',
      figures: {},
      evidence: [{ file: 'x.csv', line: 1, text: '' }],
    } as const;
    expect(statementInPage(finding)).toBe(finding.statement);
    expect(statementInPage({ ...finding, setting: 'zone', advice: 'Set time.zone in the phrasebook.' })).toBe(
      'x.csv: Read as UTC. Choose the zone under "Time zone and date format" in Sources.',
    );
  });

  test('a date that can be read both ways: the command names the key of the phrasebook and its option', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'settings-'));
    const log = join(folder, 'x.csv');
    writeFileSync(log, 'time,unit,message\n03/04/2026 10:00,RO1-A,light steady\n');
    const { err } = await steadypair('inspect', log);
    expect(err).toContain(
      'Set time.order in the phrasebook. Or pass --order day-first or --order month-first.',
    );
    const { out } = await steadypair('inspect', log, '--order', 'day-first', '--json');
    const { findings } = JSON.parse(out);
    expect(findings.map((f: { statement: string }) => f.statement).join('\n')).toContain(
      'Set time.zone in the phrasebook. Or pass --zone',
    );
  });
});

test('a zone that does not exist is said once, however many files there are', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'zone-'));
  for (const name of ['a', 'b', 'c'])
    writeFileSync(join(folder, `${name}.csv`), 'time,unit,message\n2026-03-14 10:00,RO1-A,light steady\n');
  const { status, err } = await steadypair('inspect', folder, '--zone', 'Mars/Olympus');
  expect(status).toBe(2);
  expect(err).toBe('--zone: "Mars/Olympus" is not a time zone. Give an IANA name such as Europe/Lisbon.\n');
  writeFileSync(join(folder, 'site.yaml'), 'time: { zone: Mars/Olympus }\n');
  const said = await steadypair('inspect', folder, '--phrasebook', join(folder, 'site.yaml'));
  expect(said.status).toBe(2);
  expect(said.err.split('\n')).toHaveLength(2);
  expect(said.err).toContain('site.yaml: time.zone is "Mars/Olympus", which is no time zone.');
});
