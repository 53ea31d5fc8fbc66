import { describe, expect, test } from 'vitest';
import type { Signal } from '../../../src/vocabulary.ts';
import { pollText } from '../../support/clean-swap.ts';
import { eventLine, factsOfPair, type Told } from '../../support/pair-facts.ts';
import { journalText } from '../../support/read-text.ts';

const first = '10:00:00';

async function events(story: Told, ...signals: readonly Signal[]): Promise<readonly string[]> {
  return (await factsOfPair(story)).timeline.events.filter((e) => signals.includes(e.signal)).map(eventLine);
}

describe('what a log says without a half', () => {
  const roles = ['10:00:00 RO1 A role active', '10:00:00 RO1 B role standby'];
  const exchange = ['10:05:00 RO1 A role standby', '10:05:00 RO1 B role active'];
  const said = async (...lines: readonly string[]): Promise<readonly string[]> =>
    (await factsOfPair([...roles, ...lines, '10:30:00 RO1 A link a up'])).timeline.events
      .filter((e) => !['role', 'link-a', 'partner-ready'].includes(e.signal))
      .map((e) => `${e.half ?? 'pair'} ${e.signal}`);

  test('of what only a standby does is of the half that is not active at that time', async () => {
    for (const [words, signal] of [
      ['module restart', 'restart'],
      ['module inserted', 'inserted'],
      ['reflash start', 'reflash-start'],
      ['reflash end', 'reflash-end'],
      ['sync start', 'sync-start'],
      ['sync failed', 'sync-failed'],
      ['module removed', 'removed'],
    ]) {
      expect(await said(`10:02:00 RO1 ${words}`)).toEqual([`B ${signal}`]);
      expect(await said(...exchange, `10:06:00 RO1 ${words}`)).toEqual([`A ${signal}`]);
      // At the very stamp of the exchange it is of the half that was standby until then.
      expect(await said(...exchange, `10:05:00 RO1 ${words}`)).toEqual([`B ${signal}`]);
    }
  });

  test('is of the half that is standby by its own first word, though the other states its role only later', async () => {
    const story = [
      '10:00:00 RO1 B role standby',
      '10:05:00 RO1 module restart',
      '10:20:00 RO1 A role active',
      '10:30:00 RO1 A link a up',
    ];
    expect(await events(story, 'restart')).toEqual(['10:05:00 B restart - was -']);
  });

  test('of a fault is of the pair', async () => {
    expect(await said('10:02:00 RO1 fault')).toEqual(['pair fault']);
  });

  test('of a removal is of the half that then stops reporting', async () => {
    expect(
      await said('10:02:00 RO1 A serial T4-1', '10:05:00 RO1 module removed', '10:05:20 RO1 A role none'),
    ).toEqual(['A serial', 'A removed', 'A serial']);
    // What stops half a minute later, or before, does not belong to it.
    expect(await said('10:05:00 RO1 module removed', '10:05:31 RO1 A role none')).toEqual(['B removed']);
    const poll = pollText(['10:00:00', '10:10:00'], 10, [
      ['RO1-A', 'serial', [first, 'T4-1'], ['10:05:10', '']],
    ]);
    const story = {
      'ro1.log': journalText([...roles, '10:05:05 RO1 module removed'].join('\n')),
      'poll.csv': poll,
    };
    expect(await events(story, 'removed')).toEqual(['10:05:05 A removed - was -']);
  });

  test('is of the pair where nothing tells who is active', async () => {
    expect(await events(['10:00:00 RO1 A link a up', '10:02:00 RO1 module restart'], 'restart')).toEqual([
      '10:02:00 pair restart - was -',
    ]);
  });

  test('of a removal is not of a half that had stopped before, or stops only later', async () => {
    const removed = async (...values: readonly (readonly [string, string])[]): Promise<readonly string[]> =>
      events(
        {
          'poll.csv': pollText(['10:00:00', '10:10:00'], 10, [
            ['RO1-A', 'serial', [first, 'T4-1'], ...values],
          ]),
          'ro1.log': journalText(
            [...roles, '10:05:00 RO1 module removed', '10:10:00 RO1 A link a up'].join('\n'),
          ),
        },
        'removed',
      );
    expect(await removed(['10:02:00', ''], ['10:03:00', 'T4-1'])).toEqual(['10:05:00 B removed - was -']);
    // Half a minute and one spacing of the poll later at most.
    expect(await removed(['10:05:40', ''])).toEqual(['10:05:00 A removed - was -']);
    expect((await removed(['10:05:50', '']))[0]).toBe('10:05:00 B removed - was -');
  });
});
