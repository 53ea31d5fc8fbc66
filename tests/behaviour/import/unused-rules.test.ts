/** What of a phrasebook was of no use to a whole run. */
import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/pipeline.ts';
import { readTexts } from '../../support/read-text.ts';
import { fileWith, steadypair } from '../../support/run-command.ts';

const journal = 'time,unit,message\n2026-03-14T09:00:00Z,RO1-A,light lit\n2026-03-14T09:00:01Z,HMI,hello\n';
const poll = 'time,unit,parameter,value\n2026-03-14T09:00:00Z,RO1-A,lamp,lit\n';

async function unused(phrasebook: string): Promise<readonly string[]> {
  const { phrasebookNotices } = await readTexts({ 'a.csv': journal, 'b.csv': poll }, { phrasebook });
  return (phrasebookNotices ?? []).map(({ what, lines: [{ line }] }) => `${line}: ${what}`);
}

const whole = `files:
  - { match: a.csv, layout: journal }
  - { match: b.csv, columns: { parameter: parameter } }
units: [{ pattern: "^(?<pair>RO1)-(?<half>A)$" }]
parameters:
  lamp: { signal: light, values: { lit: steady } }
messages: [{ when: light lit, signal: light, value: steady }]
ignore: [hello]
`;

test('is nothing where every rule fits something, in whatever file', async () => {
  expect(await unused(whole)).toEqual([]);
});

describe('is told once for each kind, with its lines', () => {
  test.each([
    [whole.replace('a.csv', 'c.csv'), '2: One rule for files matches no file: files[0] (c.csv).'],
    [
      whole.replace('layout: journal', 'columns: { value: nothing }'),
      '2: One key of a rule for files has no effect on the files that it matches: files[0].columns.value.',
    ],
    [
      whole.replace('RO1)', 'RO2)'),
      '4: One pattern of units matches no unit: units[0] (^(?<pair>RO2)-(?<half>A)$).',
    ],
    [
      `${whole}ignoreUnits: ["^HMI$", "^hmi$"]\n`,
      '9: One pattern of ignoreUnits matches no unit: ignoreUnits[1] (^hmi$).',
    ],
    [
      whole.replace('[hello]', '[hello, "^bye", "^adieu"]'),
      '8: 2 patterns of ignore match nothing: ignore[1] (^bye), ignore[2] (^adieu).',
    ],
    [
      whole.replace('  lamp:', '  /^Lmp/: { signal: light }\n  lamp:'),
      '6: One parameter was in no file: parameters./^Lmp/.',
    ],
    [
      whole.replace('messages: [', 'messages: [{ when: light out, signal: light, value: "off" }, '),
      '7: One rule for messages matches no message: messages[0] (light out).',
    ],
  ])('%#', async (phrasebook, expected) => {
    expect(await unused(phrasebook)).toContain(expected);
  });

  test('with the first five of many', async () => {
    const rules = Array.from({ length: 9 }, (_, i) => `{ when: no ${i}, signal: fault }`);
    expect(await unused(`messages: [${rules.join(', ')}]\n`)).toEqual([
      '1: 9 rules for messages match no message: messages[0] (no 0), messages[1] (no 1), messages[2] (no 2), messages[3] (no 3), messages[4] (no 4) and 4 more.',
    ]);
  });
});

describe('a rule that stands behind one of the same when', () => {
  const of = (...rules: readonly string[]): string =>
    `messages:\n${rules.map((r) => `  - { ${r} }\n`).join('')}`;
  const lit = 'when: light lit, signal: light, value: steady';
  test.each([
    ['and no only', of(lit, `${lit}, only: { unit: A }`)],
    ['and the same only', of(`${lit}, only: { unit: A }`, `${lit}, only: { unit: A }`)],
  ])('%s can never fit', async (_name, phrasebook) => {
    expect(await unused(phrasebook)).toEqual([
      '3: One rule for messages can never match: one before it has the same when and only: messages[1] (light lit, as messages[0]).',
    ]);
  });

  test('and another only may: the first that applies wins, and nothing is said', async () => {
    const phrasebook = of(`${lit}, only: { unit: B }`, `${lit}, only: { file: "a.*" }`, lit);
    expect((await unused(phrasebook)).join('\n')).not.toContain('never');
  });
});

test('inspect tells it as info; what is answered about pairs does not change', async () => {
  const log = fileWith(journal, 'a.csv');
  const book = fileWith('ignore: [hello, "^bye"]\n', 'p.yaml');
  const { status, out } = await steadypair('inspect', log, '--phrasebook', book);
  expect(status).toBe(0);
  expect(out.replace(/\s+/g, ' ')).toContain(
    'p.yaml: One pattern of ignore matches nothing: ignore[1] (^bye).',
  );
  const files = { 'a.csv': journal };
  const plain = analyse(await readTexts(files, { phrasebook: 'ignore: [hello]\n' }));
  const idle = analyse(await readTexts(files, { phrasebook: 'ignore: [hello, "^bye"]\n' }));
  expect(idle.findings).toEqual(plain.findings);
  expect(idle.phrasebook.map((f) => f.severity)).toEqual(['info']);
});

test('nothing is said of the built-in phrasebook', async () => {
  expect((await readTexts({ 'a.csv': journal })).phrasebookNotices).toEqual([]);
});
