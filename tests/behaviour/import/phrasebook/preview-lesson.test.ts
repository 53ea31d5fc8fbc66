import { expect, test } from 'vitest';
import { type Lesson, previewOf } from '../../../../src/pipeline.ts';
import type { SeenWording } from '../../../../src/vocabulary.ts';

const message = (name: string, count: number, isKnown = false): SeenWording => ({
  kind: 'message',
  name,
  value: null,
  pattern: `^${name}$`,
  count,
  first: { file: 'x.csv', line: 2, text: name },
  unit: 'RO1-A',
  isOfRedundancy: false,
  understood: isKnown ? { by: 'messages[0]', signal: 'restart', value: null } : null,
});
const seen = [message('mirror broken', 5), message('mirror whole', 3), message('told before', 2, true)];
const lesson = (when: string): Lesson => ({ kind: 'message', when, signal: 'partner-ready', value: 'no' });

test('each of several rules says what it would take: the first that matches does', () => {
  const [broken, all, none] = previewOf(null, ['broken', 'mirror', 'absent'].map(lesson), seen);
  expect(broken).toMatchObject({ rows: 5, fits: 5, isBehind: false, problem: null });
  expect(broken?.lines).toEqual([
    { at: { file: 'x.csv', line: 2, text: 'mirror broken' }, says: 'pair RO1: partner-ready no' },
  ]);
  expect(all).toMatchObject({ rows: 3, fits: 3, isBehind: false });
  expect(none).toMatchObject({ rows: 0, fits: 0, isBehind: false });
});

test('a rule behind one that takes all its rows says so', () => {
  const yaml = 'messages: [{ when: mirror, signal: restart }]\n';
  expect(previewOf(yaml, [lesson('broken')], seen)).toMatchObject([{ rows: 0, fits: 5, isBehind: true }]);
});

test('one that is no pattern says why, and does not stand in the way of the others', () => {
  const [wrong, good] = previewOf(null, [lesson('mirror ('), lesson('broken')], seen);
  expect(wrong?.problem?.what).toContain('is not a valid pattern');
  expect(good).toMatchObject({ rows: 5, problem: null });
});

test('what is about files and stamps matches no wordings, and is not judged by them', () => {
  const file: Lesson = { kind: 'file', match: 'x.csv', keys: { layout: 'journal' } };
  expect(previewOf(null, [file], seen)).toMatchObject([{ fits: null, isBehind: false }]);
});
