import { describe, expect, test } from 'vitest';
import { allChanges } from '../../../../src/changes.ts';
import { readText } from '../../../support/read-text.ts';

const at = '2026-09-14T08:00:00Z';

/** What one row says, whose value stands in a column of that name, and what of it is not known. */
async function saidInTable(column: string, message: string, value: string): Promise<string> {
  return said('log.csv', `time,unit,event,${column}\n${at},RO7-B,${message},${value}\n`);
}

async function saidInLine(fields: Readonly<Record<string, unknown>>): Promise<string> {
  return said('log.jsonl', `${JSON.stringify({ time: at, unit: 'RO7-B', ...fields })}\n`);
}

async function said(name: string, text: string): Promise<string> {
  const { changes, unknown } = await readText(name, text);
  const known = [...allChanges(changes)].map(({ signal, value }) => `${signal} ${value ?? ''}`.trim());
  return [...known, ...unknown.map((wording) => `? ${wording.name}`)].join(', ');
}

describe('a name and its value in two columns are one message', () => {
  test.each([
    ['state', 'partner ready', 'false', 'partner-ready no'],
    ['status', 'partner_ready', 'true', 'partner-ready yes'],
    ['value', 'partner ready', '0', 'partner-ready no'],
    ['new value', 'role', 'standby', 'role standby'],
    ['result', 'light', 'flashing', 'light flashing'],
    ['value', 'serial', 'H4-2001', 'serial H4-2001'],
    ['status', 'switchover', 'completed', 'switchover'],
    ['status', 'module removed', 'true', 'removed'],
    // A number, an identity or nothing says how much or which, not whether.
    ['value', 'supply fault', '23.5', 'supply fault'],
    ['value', 'module inserted', 'H4-2001', 'inserted'],
    ['value', 'module inserted', '', 'inserted'],
  ])('%s: "%s", "%s" says %s', async (column, message, value, expected) => {
    expect(await saidInTable(column, message, value)).toBe(expected);
    expect(await saidInLine({ event: message, [column]: value })).toBe(expected);
  });
});

describe('a message is not read as if what stands beside it were not there', () => {
  test.each([
    ['status', 'switchover', 'inhibited'],
    ['status', 'module removed', 'false'],
    ['state', 'light steady', 'no'],
    ['result', 'switchover', 'under way'],
    ['value', 'partner ready', '37'],
  ])('%s: "%s", "%s" is not known', async (column, message, value) => {
    const expected = `? ${message} ${value}`;
    expect(await saidInTable(column, message, value)).toBe(expected);
    expect(await saidInLine({ event: message, [column]: value })).toBe(expected);
  });
  test('nor where the column that denies it has any other name', async () => {
    expect(await saidInTable('detail', 'partner ready', 'false')).toBe('? partner ready detail=false');
    expect(await saidInTable('detail', 'switchover', 'failed')).toBe('? switchover detail=failed');
    expect(await saidInTable('detail', 'partner ready', 'by poll')).toBe('partner-ready yes');
    expect(await saidInTable('acknowledged', 'partner ready', 'no')).toBe('partner-ready yes');
    expect(await saidInLine({ event: 'partner ready', detail: false })).toContain(
      '? partner ready detail=false',
    );
    expect(await saidInLine({ event: 'partner ready', detail: false })).not.toContain('partner-ready');
  });
  test('a "no" under some other name says nothing against a statement with its own value, what undoes it does', async () => {
    expect(await saidInTable('retry', 'light steady', 'false')).toBe('light steady');
    expect(await saidInTable('retry', 'link a down', 'cancelled')).toBe('? link a down retry=cancelled');
    const row = { event: 'partner ready', state: true };
    expect(await saidInLine({ ...row, retry: false })).toMatch(/^partner-ready yes/);
    expect(await saidInLine({ ...row, outcome: 'failed' })).not.toContain('partner-ready');
  });
  test('what it was before is no value of it', async () => {
    const text = `time,unit,item,from,to\n${at},RO7,partner ready,yes,no\n${at},RO7-B,role,none,standby\n`;
    expect(await said('log.csv', `${text}${text.split('\n').slice(1).join('\n')}`)).toBe(
      'partner-ready no, role standby',
    );
  });
  test('nor are columns of two places, which no one can tell apart, a message and its value', async () => {
    const rows = ['active,standby,off,steady', 'active,missing,off,', 'active,standby,off,flashing'];
    const table = rows.map((cells, place) => `2026-09-14T0${place}:00:00Z,RO7,${cells}`).join('\n');
    expect(
      await said('log.csv', `time,pair,north status,south status,north light,south light\n${table}\n`),
    ).not.toContain('off');
  });
  test('two values of one name within a second are two messages', async () => {
    const rows = [`${at},RO7,partner ready,true`, '2026-09-14T08:00:00.500Z,RO7,partner ready,false'];
    expect(await said('log.csv', `time,unit,event,state\n${rows.join('\n')}\n`)).toBe(
      'partner-ready yes, partner-ready no',
    );
  });
});
