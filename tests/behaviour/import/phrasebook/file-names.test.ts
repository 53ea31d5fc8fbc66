import { describe, expect, test } from 'vitest';
import { fitsFile } from '../../../../src/import/phrasebook/file-names.ts';

describe('a `match` of a rule for files', () => {
  test.each([
    // Without a slash: the base name.
    ['*.log', 'exports/node-a/events.log', true],
    ['*.LOG', 'events.log', true],
    ['node-a', 'node-a/events.log', false],
    // With a slash: the path, from any folder on.
    ['node-a/*.log', 'node-a/events.log', true],
    ['node-a/*.log', 'exports/node-a/events.log', true],
    ['node-a/*.log', './node-a/events.log', true],
    ['./node-a/*.log', 'node-a/events.log', true],
    ['node-a/*.log', 'C:\\exports\\node-a\\events.log', true],
    ['node-a\\*.log', 'exports/node-a/events.log', true],
    ['node-a/*.log', 'other-node-a/events.log', false],
    ['node-a/*.log', 'node-a/old/events.log', false],
    ['node-?/*.log', 'node-b/events.log', true],
    ['node-?/*.log', 'node-/x/events.log', false],
    // Folders in between, also none.
    ['node-a/**/*.log', 'node-a/events.log', true],
    ['node-a/**/*.log', 'node-a/2026/03/events.log', true],
    ['node-a/**', 'x/node-a/2026/03/events.log', true],
    ['**/node-a/*', 'node-a/events.log', true],
    // Members of archives.
    ['site.zip/may/*.csv', 'site.zip/may/poll.csv', true],
    ['*.zip/**/poll.csv', 'exports/site.zip/may/week-1/poll.csv', true],
    ['*.gz/*', 'poll.csv.gz/poll.csv', true],
    // A slash at the begin: the begin of the path.
    ['/data/*.log', '/data/events.log', true],
    ['/data/*.log', '/srv/data/events.log', false],
    // No mark of a regular expression means anything.
    ['node(a)/x+.log', 'node(a)/x+.log', true],
    ['node.a/*', 'node-a/events.log', false],
  ])('%s and %s: %s', (match, name, fits) => {
    expect(fitsFile(match, name)).toBe(fits);
  });

  test('of many stars does not hang on a long path', () => {
    const begin = performance.now();
    expect(fitsFile(`${'**/*a'.repeat(20)}b`, `${'a/'.repeat(5000)}c`)).toBe(false);
    // Takes well under a second.
    expect(performance.now() - begin).toBeLessThan(10_000);
  });
});
