/**
 * The way of a new user from an unknown log to a right timeline, on logs of three general trades: a draft, the wordings that count
 * found in it, a word filled in for each, the timeline. The sources of the lines stand in tests/support/public-logs.ts.
 */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { fillIn } from '../support/odd-log.ts';
import { publicLogs } from '../support/public-logs.ts';
import { steadypair } from '../support/run-command.ts';

/** What a user fills in: a few words of the wording, the signal and the value that it means. */
const meanings: Readonly<Record<string, readonly (readonly [string, string, string?])[]>> = {
  'routing daemon': [
    ['Entering BACKUP STATE', 'role', 'standby'],
    ['Entering MASTER STATE', 'role', 'active'],
  ],
  'file server': [
    ['repl\\\\( Off -> Established', 'partner-ready', 'yes'],
    ['repl\\\\( Established -> Off', 'partner-ready', 'no'],
  ],
  'message broker': [
    ['to be down', 'partner-ready', 'no'],
    ['Promoting mirror', 'role', 'active'],
    ['Adding mirror', 'partner-present', 'yes'],
    ['messages to synchronise', 'sync-start'],
  ],
};

const paths: string[] = [];
afterAll(() => console.log(`From an unknown log of 1,000 lines to a right timeline:\n${paths.join('\n')}`));

test.each(publicLogs)('a $trade', async ({ trade, files, truth }) => {
  const folder = mkdtempSync(join(tmpdir(), 'public-'));
  const logs = Object.entries(files).map(([name, text]) => {
    expect(text.trimEnd().split('\n')).toHaveLength(1000);
    writeFileSync(join(folder, name), text);
    return join(folder, name);
  });
  let commands = 0;
  const run = async (...args: readonly string[]): Promise<string> => {
    commands += 1;
    const { status, out, err } = await steadypair(...args);
    expect([status, err]).toEqual([status === 2 ? `not 2: ${err}` : status, err]);
    return out;
  };
  const path = join(folder, 'site.yaml');
  await run('inspect', ...logs, '--draft-phrasebook', path);
  const edits = meanings[trade] ?? [];
  const [most = ['']] = edits;
  expect(await run('inspect', ...logs, '--find', most[0].replaceAll('\\', ''))).toContain('- { when: ');
  const draft = readFileSync(path, 'utf8');
  const filled = edits.reduce((text, [words, signal, value]) => fillIn(text, words, signal, value), draft);
  writeFileSync(path, filled);
  const told = await run('timeline', ...logs, '--phrasebook', path, '--format', 'csv');
  const events = told
    .trim()
    .split(/\r?\n/)
    .slice(1)
    .map((line) => line.split(','))
    .map(([time = '', , , half, signal, value]) =>
      [time.slice(11, 19), half === '' ? '-' : half?.toUpperCase(), signal, value]
        .filter((w) => w !== '')
        .join(' '),
    );
  expect(events).toEqual(truth);
  paths.push(`${trade}: ${commands} commands, ${edits.length} edits`);
});
