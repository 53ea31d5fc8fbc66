import { describe, expect, test } from 'vitest';
import { entryReader } from '../../../../src/import/phrasebook/entries.ts';
import { readPhrasebook } from '../../../../src/import/read-phrasebook.ts';

const plain = entryReader(readPhrasebook('phrasebook.yaml', null));

/** What half B says with a message, or the pair where `half` is null. */
function said(message: string, half: string | null = 'B'): string {
  const found = plain.read({ pair: 'RO1', half, role: null }, message);
  if (!Array.isArray(found)) return 'unknown';
  return found
    .map(({ subject, signal, value }) => `${subject.half ?? 'pair'} ${signal} ${value ?? ''}`.trim())
    .join(', ');
}

const good = ['partner ready', 'light steady', 'module removed', 'switchover', 'reflash end', 'role active'];
const bad = ['partner not ready', 'link a down', 'supply fault'];

describe('a remark takes back what plain words say', () => {
  const played = ['test', 'alarm test', 'simulation', 'false alarm', 'history', 'drill'];
  const ended = ['cleared', 'CLR', 'RTN', 'gone', 'inactive', 'ack', 'acknowledged', 'suppressed'];
  test.each([...played, ...ended])('"%s" takes back all', (remark) => {
    for (const message of [...good, ...bad, 'hardware fault'])
      for (const told of [`${message} (${remark})`, `${message}, ${remark}`, `[${remark}] ${message}`])
        expect([told, said(told)]).toEqual([told, 'unknown']);
  });
  test.each(['TEST', 'SIM', 'CLR', 'OFF', 'ack', 'not', 'history', 'false'])(
    '"%s:" before it too',
    (remark) => {
      for (const message of good) expect(said(`${remark}: ${message}`)).toBe('unknown');
    },
  );
  test.each([
    'not',
    'not executed',
    'failed',
    'failed after 10 s',
    'rejected by A',
    'was not so',
    'no',
    'now lost',
    '0',
  ])('"%s" takes back what was done and what is well', (remark) => {
    for (const message of good)
      for (const told of [`${message} (${remark})`, `${message}; ${remark}`])
        expect([told, said(told)]).toEqual([told, 'unknown']);
  });
});

describe('a remark that takes nothing back is passed over', () => {
  test.each([
    ['partner not ready (not synchronised)', 'pair partner-ready no'],
    ['partner not ready (no heartbeat)', 'pair partner-ready no'],
    ['partner lost, failed', 'pair partner-ready no'],
    ['restart (watchdog)', 'B restart'],
    ['restart (self test)', 'B restart'],
    ['restart due to failed self test', 'B restart'],
    ['supply good (normal)', 'B supply good'],
    ['[INFO] partner ready', 'pair partner-ready yes'],
    ['ALARM: partner not ready', 'pair partner-ready no'],
    ['redund[77]: light steady (after 10 s)', 'B light steady'],
    ['sync failed: partner not ready, no answer', 'B sync-failed'],
  ])('"%s" says %s', (message, expected) => {
    expect(said(message)).toBe(expected);
  });
});

describe('what was not done, or is yet to be, stands at the end too', () => {
  test.each([
    'switchover to A failed',
    'switchover on B blocked',
    'switchover to A in progress',
    'switchover at 10:00 tomorrow',
    'switchover by test',
    'reflash finished with errors',
    'restart on demand',
    'restart at next shutdown',
    'restart in 5 min',
    'switchover (and back)',
    'partner ready, lost at 10:05',
    'role active to standby',
  ])('"%s" is not known', (message) => {
    expect(said(message)).toBe('unknown');
  });
  test.each(['module removed at 10:00', 'partner ready from 10:00 to 10:05', 'switchover at 9.45'])(
    '"%s" tells of another instant than its row may',
    (message) => {
      expect(said(message)).toBe('unknown');
    },
  );
  test('a reason may have failed', () => {
    expect(said('restart after sync failed')).toBe('B restart');
    expect(said('switchover due to module failed')).toBe('B switchover');
  });
});

describe('a letter behind its place names a half', () => {
  test.each([
    ['module removed from A', 'A removed'],
    ['light steady on A', 'A light steady'],
    ['restart of A', 'A restart'],
    ['firmware 6.4.1 on B.', 'B firmware 6.4.1'],
    ['light off on A, link a down', 'A light off, A link-a down'],
    ['restart in A row', 'B restart'],
  ])('"%s" says %s', (message, expected) => {
    expect(said(message)).toBe(expected);
  });
});

describe('several statements in one message', () => {
  test.each([
    ['link a: up, link b: down', 'B link-a up, B link-b down'],
    ['partner ready (role standby)', 'pair partner-ready yes, B role standby'],
    ['module inserted, serial H4-2001, firmware 6.4.1', 'B inserted, B serial H4-2001, B firmware 6.4.1'],
    ['partner not ready (link a down, link b down)', 'pair partner-ready no, B link-a down, B link-b down'],
  ])('"%s" says %s', (message, expected) => {
    expect(said(message)).toBe(expected);
  });
  test('are each of the half that it names, else of the one that the message names', () => {
    const expected = 'A light off, B light steady';
    for (const half of ['A', 'B', null]) {
      expect(said('slot A light off, slot B light steady', half)).toBe(expected);
      expect(said('module in slot A inserted, firmware 6.4.1', half)).toBe('A inserted, A firmware 6.4.1');
    }
  });
  test('that contradict each other say nothing', () => {
    expect(said('link a down, link a up')).toBe('unknown');
  });
  test('are not taken of what was expected or was so before', () => {
    expect(said('firmware 6.2.0, expected firmware 6.4.1')).toBe('unknown');
    expect(said('light steady (was flashing)')).toBe('B light steady');
    expect(said('lamp test: light steady, light off')).toBe('unknown');
  });
});
