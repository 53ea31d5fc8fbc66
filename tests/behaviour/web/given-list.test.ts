import { describe, expect, test } from 'vitest';
import {
  changesSaid,
  filesUndone,
  followingOn,
  lessonUndone,
  livesNow,
  loading,
  nothingToRead,
  readingAgain,
  removing,
  type ToRead,
  taking,
  teaching,
} from '../../../web/given-list.ts';
import type { GivenModel, NamedFile } from '../../../web/protocol.ts';

function named(...names: readonly string[]): readonly NamedFile[] {
  return names.map((name) => ({ name, file: new File([], name) }));
}

function counter(): () => number {
  let last = 0;
  return () => {
    last += 1;
    return last;
  };
}

function says({ files }: ToRead): readonly string[] {
  return files.map(({ name, id }) => `${id} ${name}`);
}

describe('files', () => {
  test('are added behind the others, in place of those of their names, each with a number of its own', () => {
    const number = counter();
    const first = taking(nothingToRead, named('a', 'b'), 'replace', number);
    const second = taking(first, named('b', 'c'), 'add', number);
    expect(says(second)).toEqual(['1 a', '3 b', '4 c']);
    expect(says(taking(second, named('d'), 'replace', number))).toEqual(['5 d']);
  });

  test('that are removed, added or replaced come back, step by step', () => {
    const number = counter();
    const first = taking(nothingToRead, named('a', 'b'), 'replace', number);
    const removed = removing(first, 'a');
    const added = taking(removed, named('c'), 'add', number);
    const replaced = taking(added, named('d'), 'replace', number);
    expect(replaced.fileSteps.map((step) => step.says)).toEqual([
      'Removed a',
      'Added c',
      'Replaced all files by d',
    ]);
    expect(says(filesUndone(replaced))).toEqual(['2 b', '3 c']);
    expect(says(filesUndone(filesUndone(replaced)))).toEqual(['2 b']);
    expect(filesUndone(filesUndone(filesUndone(replaced))).files).toEqual(first.files);
    // Before the first there is nothing to go back to.
    expect(filesUndone(first)).toBe(first);
  });
});

describe('a phrasebook', () => {
  const own = { file: 'site.yaml', text: 'ignore: [a]' };
  test('that is taught lives through added and replaced files, and is undone lesson by lesson', () => {
    const number = counter();
    const first = taking(nothingToRead, named('a', 'site.yaml'), 'replace', number);
    const once = teaching(first, 'ignore: [a, b]', own);
    const twice = teaching(once, 'ignore: [a, b, c]', once.phrasebook?.text ?? null);
    const added = taking(twice, named('c'), 'add', number);
    expect(added.phrasebook).toBe(twice.phrasebook);
    expect(taking(twice, named('c'), 'replace', number).phrasebook).toBe(twice.phrasebook);
    expect(twice.phrasebook).toEqual({
      text: { file: 'site.yaml', text: 'ignore: [a, b, c]' },
      instead: ['site.yaml', 'site.yaml'],
    });
    expect(lessonUndone(twice).phrasebook?.text?.text).toBe('ignore: [a, b]');
    // Then it is the one among the files again.
    expect(lessonUndone(lessonUndone(twice)).phrasebook).toBeNull();
    // Files and lessons are undone each by itself.
    expect(says(filesUndone(added))).toEqual(says(twice));
    expect(filesUndone(added).phrasebook).toBe(twice.phrasebook);
  });

  test('that was taught is not lost where another is loaded', () => {
    const taught = teaching(nothingToRead, 'ignore: [b]', null);
    const loaded = loading(taught, own, taught.phrasebook?.text ?? null);
    expect(loaded.phrasebook?.text).toBe(own);
    expect(lessonUndone(loaded).phrasebook).toBe(taught.phrasebook);
  });
});

describe('of files that were given', () => {
  const model = (id: number, name: string, sha256: string, twin: string | null = null): GivenModel => ({
    id,
    name,
    size: 1,
    sha256,
    twin,
    became: '',
  });
  test('it is said which replaced another of its name, were there already, or hold what another holds', () => {
    const before = [model(1, 'a', 'aa'), model(2, 'b', 'bb'), model(3, 'c', 'cc')];
    const after = [model(3, 'c', 'cc'), model(4, 'a', 'a2'), model(5, 'b', 'bb'), model(6, 'd', 'cc', 'c')];
    expect(changesSaid(before, after)).toEqual([
      'b was given before with the same content: nothing changed.',
      'a replaces the file of that name given before: its content differs.',
      'd has the same content as c and is used once.',
    ]);
  });

  test('more than three are said by their count', () => {
    const many = [1, 2, 3, 4].map((id) => model(id, `${id}`, 'aa', '0'));
    expect(changesSaid([], many)).toEqual([
      '4 files have the same content as others and are used once: Sources lists them.',
    ]);
  });
});

describe('files of a folder that is followed', () => {
  test('keep their number while they grow, get another where they were replaced, and are no step to undo', () => {
    const number = counter();
    const first = taking(nothingToRead, named('a'), 'add', number);
    const [a, b] = named('a', 'b');
    if (a === undefined || b === undefined) throw new Error('There are two.');
    const grown = followingOn(
      first,
      [
        { ...a, hasGrown: true },
        { ...b, hasGrown: false },
      ],
      number,
    );
    expect([says(grown), grown.fileSteps]).toEqual([['1 a', '2 b'], []]);
    const replaced = followingOn(grown, [{ ...a, hasGrown: false }], number);
    expect(says(replaced)).toEqual(['2 b', '3 a']);
    const lives = livesNow(replaced, (name) => (name === 'b' ? 'gone' : 'grows'));
    expect(lives.files.map(({ life }) => life)).toEqual(['gone', 'grows']);
    expect(livesNow(first, () => 'gone').files.map(({ life }) => life)).toEqual([undefined]);
    expect(says(readingAgain(lives, number))).toEqual(['4 b', '5 a']);
  });
});
