/**
 * The words that must not come back: in what the program says (its string literals, read by the parser of swc), in the
 * README, and in all that the demo prints and writes.
 */
import { mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, sep } from 'node:path';
import { describe, expect, test } from 'vitest';
import { steadypair } from '../../support/run-command.ts';
import { bannedWords, patternOf } from './banned-words.ts';
import { textsOf } from './texts-of.ts';

const folders = ['src', 'web'];

/** They hold the words of logs, not ours. */
const wordsOfLogs = ['value-words.ts', 'built-in-phrasebook.ts', 'built-in-messages.ts', 'severity-words.ts'];

/** The entries that a text breaks, each with the better word. */
function brokenBy(text: string): readonly string[] {
  return bannedWords.flatMap(([word, better]) => {
    const found = patternOf(word).exec(text);
    return found === null ? [] : [`"${found[0]}", better: ${better}; in: ${text.slice(0, 120)}`];
  });
}

function filesIn(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !name.endsWith('.d.ts'))
    .filter((name) => !wordsOfLogs.some((own) => name.endsWith(own)))
    .map((name) => join(folder, name).replaceAll(sep, '/'));
}

function hitsIn(file: string): readonly string[] {
  return textsOf(file).flatMap((text) => brokenBy(text).map((hit) => `${file}: ${hit}`));
}

describe('what the program says', () => {
  test.each(folders)('in %s has none of the words that must not come back', (folder) => {
    expect(filesIn(folder).flatMap(hitsIn)).toEqual([]);
  });

  test.each(['README.md', join('samples', 'README.md')])('in %s has none of them', (file) => {
    const lines = readFileSync(file, 'utf8')
      .replaceAll(/`[^`\n]*`|time: Stamp,/g, '')
      .split('\n');
    expect(
      lines.flatMap((line, index) => brokenBy(line).map((hit) => `${file}:${index + 1}: ${hit}`)),
    ).toEqual([]);
  });
});

const demo = join('samples', 'marrow-bay');
const phrased = (name: string): readonly string[] => [
  join(demo, name),
  '--phrasebook',
  join(demo, name, 'phrasebook.yaml'),
];

/** What the logs of the demo say themselves is no word of ours. */
const logs = readdirSync(demo, { recursive: true, encoding: 'utf8' })
  .filter((name) => /\.(?:csv|log|txt|yaml)$/.test(name))
  .map((name) => readFileSync(join(demo, name), 'utf8'))
  .join('\n');

describe('what the demo prints and writes', () => {
  test.each([
    ['prepare', join('samples', 'marrow-bay-before'), ...phrased('clean-swap').slice(1), '--allow-old'],
    ['verify', ...phrased('clean-swap')],
    ['verify', ...phrased('bad-swap')],
    ['diagnose', ...phrased('wont-sync')],
    ['diagnose', ...phrased('clean-swap')],
    ['fleet', join('samples', 'marrow-bay-fleet')],
    ['inspect', ...phrased('bad-swap')],
    ['inspect', join(demo, 'clean-swap')],
    ['--help'],
  ])('%s %s has none of them', async (...args) => {
    const out = mkdtempSync(join(tmpdir(), 'voice-'));
    const writes = ['prepare', 'verify', 'diagnose', 'fleet'].includes(args[0] ?? '');
    const printed = await steadypair(...args, ...(writes ? ['--out', out] : []));
    const written = readdirSync(out).map((name) => readFileSync(join(out, name), 'utf8'));
    const texts = [printed.out, printed.err, ...written].map((text) =>
      text.replace(/<style>[\s\S]*?<\/style>/g, ''),
    );
    expect(printed.out.length).toBeGreaterThan(200);
    expect(
      bannedWords.flatMap(([word]) => {
        const pattern = patternOf(word);
        if (pattern.test(logs)) return [];
        return texts.flatMap((text) => pattern.exec(text)?.[0] ?? []);
      }),
    ).toEqual([]);
  });
});

describe('the list of words', () => {
  test.each([
    ['Rows not understood', 1],
    ['What must hold', 1],
    ['The half gave up after 1 min', 1],
    ['less than 0.0 s', 1],
    ['a remarks-section, a remarkable week', 0],
    ['95th percentile 1 min 41 s', 0],
  ])('finds in "%s" %i', (text, count) => expect(brokenBy(text).length).toBe(count));
});
