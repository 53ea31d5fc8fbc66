import { describe, expect, test } from 'vitest';
import {
  type FoundFile,
  filesToRead,
  folderChange,
  sayGone,
  sayReplaced,
} from '../../../web/followed-folder.ts';

const file = (name: string, size: number, lastModified = 1000): FoundFile => ({ name, size, lastModified });
const known = new Map([file('logs/a.log', 100), file('logs/b.log', 50)].map((f) => [f.name, f]));
const names = (files: readonly FoundFile[]): readonly string[] => files.map(({ name }) => name);

describe('a look at a folder finds', () => {
  test.each<[string, FoundFile[], Partial<Record<'fresh' | 'grown' | 'replaced' | 'gone', string[]>>]>([
    ['nothing, where size and date are the same', [file('logs/a.log', 100), file('logs/b.log', 50)], {}],
    ['what grew', [file('logs/a.log', 101, 2000), file('logs/b.log', 50)], { grown: ['logs/a.log'] }],
    ['what shrank', [file('logs/a.log', 99, 2000), file('logs/b.log', 50)], { replaced: ['logs/a.log'] }],
    [
      'what was written anew at the same length',
      [file('logs/a.log', 100, 2000), file('logs/b.log', 50)],
      { replaced: ['logs/a.log'] },
    ],
    [
      'what is new, once it has content',
      [...known.values(), file('logs/c.log', 1), file('logs/d.log', 0)],
      { fresh: ['logs/c.log'] },
    ],
    ['what is gone, which is not read again', [file('logs/a.log', 100)], { gone: ['logs/b.log'] }],
    [
      'what was emptied as gone until it is written again',
      [file('logs/a.log', 0, 2000), file('logs/b.log', 50)],
      { gone: ['logs/a.log'] },
    ],
  ])('%s', (_, found, expected) => {
    const change = folderChange(known, found);
    const { fresh = [], grown = [], replaced = [], gone = [] } = expected;
    expect([names(change.fresh), names(change.grown), names(change.replaced), change.gone]).toEqual([
      fresh,
      grown,
      replaced,
      gone,
    ]);
    expect(names(filesToRead(change))).toEqual([...fresh, ...grown, ...replaced]);
  });
});

test('what was replaced and what is gone is said, many files by their count', () => {
  expect(sayReplaced([])).toEqual([]);
  expect(sayReplaced([file('logs/a.log', 1)])).toEqual([
    'logs/a.log was replaced by other content and was read again from the start.',
  ]);
  expect(sayGone(['logs/a.log', 'logs/b.log'])).toEqual([
    'logs/a.log and logs/b.log are no longer in the folder; what was read of them still counts.',
  ]);
  expect(sayGone(['a', 'b', 'c'])).toEqual([
    '3 files are no longer in the folder; what was read of them still counts.',
  ]);
});
