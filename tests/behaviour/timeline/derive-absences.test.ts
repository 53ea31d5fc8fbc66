import { describe, expect, test } from 'vitest';
import { pollText } from '../../support/clean-swap.ts';
import { eventLine, factsOfPair, whenOf } from '../../support/pair-facts.ts';
import { journalText } from '../../support/read-text.ts';
import { told } from '../../support/told-events.ts';

const roles = '10:00:00 RO1 A role active\n10:00:00 RO1 B role standby';
const gone = ['10:05:00', ''] as const;
const old = ['10:00:00', 'T2-1'] as const;

describe('a removal that a poll of serials shows', () => {
  test.each(['10:11:30', '10:12:00', '10:14:00'])(
    'is not the absence before the first word of the module that is gone now, which ended at %s',
    async (back) => {
      const { timeline } = await factsOfPair([
        ...roles.split('\n'),
        '10:00:00 RO1 partner present',
        '10:00:00 RO1 B serial T2-1',
        '10:10:00 RO1 partner absent',
        `${back} RO1 partner present`,
        '10:12:00 RO1 B serial T4-2',
        '11:00:00 RO1 B serial T4-3',
        '11:30:00 RO1 A link a up',
      ]);
      // T4-2 was last heard at 10:12, T4-3 first at 11:00: it went and the other came in between.
      expect(timeline.events.filter((e) => e.signal === 'removed').map(eventLine)).toEqual([
        '10:10:00 B removed - was -',
        '10:12:00..11:00:00 B removed - was -',
      ]);
    },
  );

  test('is narrowed by a poll that missed the partner, where both tell of one absence', async () => {
    const presence = (no: string, yes: string): string =>
      pollText(['10:00:05', '10:10:05'], 10, [
        ['RO1', 'partner-present', ['10:00:00', 'yes'], [no, 'no'], [yes, 'yes']],
      ]);
    const both = async (no: string, yes: string): Promise<readonly string[]> => {
      const poll = pollText(['10:00:00', '10:10:00'], 10, [['RO1-B', 'serial', old, gone]]);
      const { timeline } = await factsOfPair({
        'poll.csv': poll,
        'presence.csv': presence(no, yes),
        'ro1.log': journalText(roles),
      });
      return timeline.events.filter((e) => e.signal === 'removed' && e.half === 'B').map(eventLine);
    };
    // Absent in (10:04:45, 10:04:55], no serial in (10:04:50, 10:05:00].
    expect(await both('10:04:55', '10:09:00')).toEqual(['10:04:50..10:04:55 B removed - was -']);
    // An absence that was over before has nothing to do with it.
    expect(await both('10:02:00', '10:03:00')).toEqual(['10:04:50..10:05:00 B removed - was -']);
  });

  test('begins where the partner was missed, if the serial was read once more after that', async () => {
    const { timeline } = await factsOfPair({
      'poll.csv': pollText(['10:00:00', '10:10:00'], 10, [['RO1-B', 'serial', old, gone]]),
      'presence.csv': pollText(['10:00:05', '10:10:05'], 10, [
        ['RO1', 'partner-present', ['10:00:00', 'yes'], ['10:04:35', 'no']],
      ]),
      'ro1.log': journalText(roles),
    });
    // Absent in (10:04:25, 10:04:35], no serial in (10:04:50, 10:05:00]: no instant is in both, and the earlier one counts.
    expect(timeline.events.filter((e) => e.signal === 'removed').map(eventLine)).toEqual([
      '10:04:25..10:04:35 B removed - was -',
    ]);
  });

  test('is not narrowed by an absence that began with a logged removal of the other half', async () => {
    const removedOf = async (half: string, clock: string): Promise<readonly string[]> => {
      const log = [
        '10:00:00 RO1 B role active',
        '10:00:00 RO1 A role standby',
        `${clock} RO1 A module removed`,
      ];
      const { timeline } = await factsOfPair({
        'poll.csv': pollText(['10:00:00', '10:10:00'], 10, [['RO1-B', 'serial', old, gone]]),
        'presence.csv': pollText(['10:00:05', '10:10:05'], 10, [
          ['RO1', 'partner-present', ['10:00:00', 'yes'], ['10:04:55', 'no']],
        ]),
        'ro1.log': journalText(log.join('\n')),
      });
      return timeline.events.filter((e) => e.signal === 'removed' && e.half === half).map(whenOf);
    };
    // Absent from (10:04:45, 10:04:55] on: up to half a minute before that, which is 10:04:15, and up to its end.
    expect(await removedOf('B', '10:04:15')).toEqual(['10:04:50..10:05:00']);
    expect(await removedOf('B', '10:04:55')).toEqual(['10:04:50..10:05:00']);
    // One from well before, or from after it, has nothing to do with it.
    expect(await removedOf('B', '10:04:14.999')).toEqual(['10:04:50..10:04:55']);
    expect(await removedOf('B', '10:04:55.001')).toEqual(['10:04:50..10:04:55']);
    expect(await removedOf('A', '10:04:15')).toEqual(['10:04:15']);
  });
});

test('a note that a module went in while a poll lost the old one comes after the removal that the poll shows', async () => {
  // The old module was read until 10:04:37 and nothing at 10:05:37; the note tells of an insertion from 10:04 to 10:05.
  const files = {
    'notes.txt': 'Pair RO1\n2026-03-14\n10:04 fitted new module in slot B\n',
    'poll.csv': pollText(['10:00:37', '10:30:37'], 60, [
      ['RO1-B', 'serial', ['10:00:37', 'T2-1'], ['10:05:37', ''], ['10:15:37', 'T4-2']],
    ]),
  };
  const moves = [...(await told(files, 'removed')), ...(await told(files, 'inserted'))];
  expect(moves.map((move) => move.split(' ').slice(0, 3).join(' '))).toEqual([
    '10:04:37..10:05:00 B removed',
    '10:04:37..10:05:00 B inserted',
  ]);
});
