import { describe, expect, test } from 'vitest';
import {
  notKnownOf,
  sayLeftOut,
  sayNoFinding,
  sayNotKnown,
  sayShare,
} from '../../../src/report/not-known.ts';
import type { Finding, Input } from '../../../src/vocabulary.ts';

function input(file: string, read: number, unmatched: number, rejected: number): Input {
  const rows = { read, used: read - unmatched - rejected, unchanged: 0, ignored: 0, unmatched, rejected };
  const about = { sha256: '', bytes: 1, layout: 'journal', encoding: 'utf-8', delimiter: ',', zone: 'UTC' };
  return { file, ...about, rows, from: 0, to: 1, units: [], unmatched: [] };
}

function finding(id: string, file: string): Finding {
  const when = { half: null, from: null, to: null };
  return {
    id,
    severity: 'warning',
    pair: null,
    ...when,
    statement: `${file}: said.`,
    figures: {},
    evidence: [{ file, line: 1, text: '' }],
  };
}

describe('what is not known', () => {
  test('is said of all files together, each kind in its sentence', () => {
    const inputs = [input('a.csv', 1000, 250, 1), input('b.csv', 1000, 0, 0)];
    const findings = [
      finding('unreadable', 'c.csv'),
      finding('date-order', 'd.csv'),
      finding('date-order', 'a.csv'),
    ];
    expect(sayNotKnown(notKnownOf({ inputs, findings }))).toEqual([
      '250 of 2,000 rows were not recognised (13 %).',
      '1 of 2,000 rows was rejected (less than 0.1 %).',
      '2 files were left out: c.csv, d.csv.',
    ]);
  });
  test('is nothing where all was recognised; only then there is no finding without more words', () => {
    const all = { inputs: [input('a.csv', 10, 0, 0)], findings: [finding('zone-assumed', 'a.csv')] };
    expect(sayNotKnown(notKnownOf(all))).toEqual([]);
    expect(sayNoFinding(all)).toBe('No finding.');
    const part = { ...all, inputs: [input('a.csv', 10, 1, 0)] };
    expect(sayNoFinding(part)).toBe('No finding in the rows recognised.');
  });
  test('names three files and how many more there are', () => {
    expect(sayLeftOut(['a'])).toBe('One file was left out: a.');
    expect(sayLeftOut(['a', 'b', 'c', 'd', 'e'])).toBe('5 files were left out: a, b, c and 2 more.');
  });
  test.each([
    [1, 3, '33 %'],
    [1, 20, '5 %'],
    [1, 15, '6.7 %'],
    [1, 5000, 'less than 0.1 %'],
    [4999, 5000, 'more than 99.9 %'],
    [995, 1000, '99.5 %'],
    [5, 5, '100 %'],
  ])('of %i in %i is %3$s', (part, whole, said) => {
    expect(sayShare(part, whole)).toBe(said);
  });
});
