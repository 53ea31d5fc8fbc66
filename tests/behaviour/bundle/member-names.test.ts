import { describe, expect, test } from 'vitest';
import { memberNames, safePath } from '../../../src/bundle/member-names.ts';

const book = (text: string) => ({ file: 'site.yaml', text });

describe('where a log stands in a bundle', () => {
  test.each([
    ['/home/joe/exports/ro1.csv', 'logs/ro1.csv'],
    ['C:\\Users\\joe\\ro1.csv', 'logs/ro1.csv'],
    ['../../ro1.csv', 'logs/ro1.csv'],
    ['exports.zip/deep/ro1.csv', 'logs/ro1.csv'],
    ['a/what? "now".csv', 'logs/what_ _now_.csv'],
  ])('%s is %s', (name, member) => {
    expect(memberNames([name], null)).toEqual([member]);
  });

  test('two of one name keep the folder that tells them apart, and never a person', () => {
    expect(memberNames(['x/a/poll.csv', 'x/b/poll.csv', 'x/b/notes.txt'], null)).toEqual([
      'logs/a/poll.csv',
      'logs/b/poll.csv',
      'logs/notes.txt',
    ]);
    expect(memberNames(['/home/joe/poll.csv', '/home/ann/poll.csv', 'POLL.csv'], null)).toEqual([
      'logs/poll.csv',
      'logs/poll (2).csv',
      'logs/POLL (3).csv',
    ]);
  });

  test('folders that a rule needs stay, and no more', () => {
    const rules = book(
      'files:\n  - { match: "node-a/*.log", unit: RO1-A }\n  - { match: "**", path: "(?<pair>[A-Z0-9]+)/(?<half>[AB])/" }\n',
    );
    expect(memberNames(['data/site/node-a/events.log', 'data/site/RO2/B/poll.csv'], rules)).toEqual([
      'logs/node-a/events.log',
      'logs/RO2/B/poll.csv',
    ]);
  });

  test('the path that a manifest tells has no folder of a person', () => {
    expect(safePath('/home/joe/exports/ro1.csv')).toBe('exports/ro1.csv');
    expect(safePath('D:\\data\\..\\ro1.csv')).toBe('data/ro1.csv');
  });
});
