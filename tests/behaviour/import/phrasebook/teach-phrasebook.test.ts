import { describe, expect, test } from 'vitest';
import { allChanges } from '../../../../src/changes.ts';
import { exactPattern, type Lesson } from '../../../../src/import/phrasebook/teach-phrasebook.ts';
import { previewOf, teachPhrasebook } from '../../../../src/import/read-phrasebook.ts';
import type { SeenWording, UnknownWording } from '../../../../src/vocabulary.ts';
import { readText } from '../../../support/read-text.ts';

const journal = `time,unit,message
2026-03-14T09:00:00Z,RO1-A,bay door (left) opened
2026-03-14T09:00:05Z,RO1-A,bay door (left) opened by 3
2026-03-14T09:00:10Z,RO1-B,mirror image complete
2026-03-14T09:00:20Z,RO1-B,mirror image complete
2026-03-14T09:00:30Z,RO1-B,mirror image broken
`;
const poll = `time,unit,parameter,value
2026-03-14T09:00:00Z,RO1-A,Net left,plugged
2026-03-14T09:00:10Z,RO1-A,Net left,plugged
2026-03-14T09:00:20Z,RO1-A,Net left,out
`;

function asSeen({ kind, name, count, firstLine, values }: UnknownWording): SeenWording {
  const first = { file: 'x.csv', line: firstLine, text: name };
  const value = kind === 'value' ? (values[0] ?? '') : null;
  return {
    kind,
    name,
    value,
    pattern: '',
    count,
    first,
    unit: 'RO1-A',
    isOfRedundancy: false,
    understood: null,
  };
}

/** Rows that a lesson is said to use, and those that are understood once it is taught. */
async function taught(text: string, lesson: Lesson): Promise<{ said: number; fewer: number; yaml: string }> {
  const before = await readText('x.csv', text);
  const yaml = teachPhrasebook('p.yaml', null, lesson);
  const after = await readText('x.csv', text, { phrasebook: yaml });
  return {
    said: previewOf(null, [lesson], before.unknown.map(asSeen))[0]?.rows ?? Number.NaN,
    fewer: before.input.rows.unmatched - after.input.rows.unmatched,
    yaml,
  };
}

describe('teaching the phrasebook', () => {
  test('counts the rows that a pattern would use: those that are understood once it is there', async () => {
    const lesson = {
      kind: 'message',
      when: 'mirror image complete',
      signal: 'partner-ready',
      value: 'yes',
    } as const;
    const { said, fewer } = await taught(journal, lesson);
    expect([said, fewer]).toEqual([2, 2]);
  });
  test('counts every wording that a looser pattern fits', async () => {
    const lesson: Lesson = {
      kind: 'message',
      when: 'mirror image (?<value>complete|broken)',
      signal: 'note',
      value: null,
    };
    const { said, fewer } = await taught(journal, lesson);
    expect([said, fewer]).toEqual([3, 3]);
  });
  test('makes a pattern that fits one wording and nothing else', async () => {
    const pattern = exactPattern('bay door (left) opened');
    const { said, fewer } = await taught(journal, { kind: 'ignore', pattern });
    expect([said, fewer]).toEqual([1, 1]);
  });
  test('counts the rows that name a parameter', async () => {
    const values = { plugged: 'up', out: 'down' };
    const lesson = { kind: 'parameter', name: 'Net left', signal: 'link-a', values } as const;
    const { said, fewer } = await taught(poll, lesson);
    expect([said, fewer]).toEqual([3, 3]);
  });
  test('counts the rows of a unit that no pattern fits', async () => {
    const text =
      'time,unit,message\n2026-03-14T09:00:00Z,P.7.left,module removed\n2026-03-14T09:00:09Z,RO1-A,module removed\n';
    const pattern = '^(?<pair>P\\.7)\\.(?<half>left|right)$';
    const { said, fewer } = await taught(text, { kind: 'unit', pattern });
    expect([said, fewer]).toEqual([1, 1]);
  });
  test('reads a file whose columns it was told', async () => {
    const text = 'When it was;Box;Words\n2026-03-14T09:00:00Z;RO1-A;module removed\n';
    await expect(readText('odd.csv', text)).rejects.toThrow('odd.csv');
    const columns = { time: 'When it was', unit: 'Box', message: 'Words' };
    const yaml = teachPhrasebook('p.yaml', null, {
      kind: 'columns',
      match: 'odd.csv',
      layout: 'journal',
      columns,
    });
    const { changes } = await readText('odd.csv', text, { phrasebook: yaml });
    expect(allChanges(changes).map((c) => c.signal)).toEqual(['removed']);
  });
  test('keeps the comments and the rules that were there', () => {
    const before = '# of the works\nname: Marrow Bay\nmessages:\n  # first\n  - { when: a, signal: note }\n';
    const after = teachPhrasebook('p.yaml', before, {
      kind: 'message',
      when: 'b',
      signal: 'fault',
      value: null,
    });
    expect(after).toContain('# of the works');
    expect(after).toContain('# first');
    expect(after.indexOf('when: a')).toBeLessThan(after.indexOf('when: b'));
  });
  test('refuses a pattern that is none, a value that a signal can not have, and a text that is no YAML', () => {
    const bad =
      (lesson: Lesson, yaml: string | null = null) =>
      () =>
        teachPhrasebook('p.yaml', yaml, lesson);
    expect(bad({ kind: 'message', when: '(', signal: 'note', value: null })).toThrow(
      'is not a valid pattern',
    );
    expect(bad({ kind: 'message', when: 'x', signal: 'light', value: 'green' })).toThrow(
      'not a value of light',
    );
    expect(bad({ kind: 'ignore', pattern: 'x' }, 'a: [')).toThrow('p.yaml');
  });

  test('says how stamps are read, and leaves what was not said', async () => {
    const text = 'time,unit,message\n03/04/2026 09:00:00,RO1-A,light steady\n';
    await expect(readText('x.csv', text)).rejects.toThrow('Set time.order in the phrasebook');
    const lesson = { kind: 'time', zone: 'Europe/Lisbon', order: 'day-first', year: null } as const;
    const phrasebook = teachPhrasebook('p.yaml', 'time: { year: 2024 }\n', lesson);
    const { changes } = await readText('x.csv', text, { phrasebook });
    // 3 April: Lisbon is an hour ahead of UTC.
    expect(allChanges(changes).map((c) => c.time)).toEqual([Date.UTC(2026, 3, 3, 8)]);
    expect(phrasebook).toContain('year: 2024');
  });

  test('refuses a zone that is none', () => {
    const lesson = { kind: 'time', zone: 'Mars/Olympus', order: null, year: null } as const;
    expect(() => teachPhrasebook('p.yaml', null, lesson)).toThrow('"Mars/Olympus" is not a time zone.');
  });
});
