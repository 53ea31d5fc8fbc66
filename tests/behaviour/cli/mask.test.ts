import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { steadypair } from '../../support/run-command.ts';
import { membersOf, textIn } from '../../support/zip-members.ts';

const folder = join('samples', 'marrow-bay', 'clean-swap');
const args = [folder, '--phrasebook', join(folder, 'phrasebook.yaml'), '--job', join(folder, 'job.yaml')];

function newFolder(): string {
  return mkdtempSync(join(tmpdir(), 'steadypair-mask-'));
}

describe('a masked bundle', () => {
  const names = [
    'RO1',
    'Marrow Bay',
    'marrow-bay',
    'Technician 2',
    'Shift engineer 1',
    'WO-26-0314',
    'Operator 3',
    'T4-2',
    'T2-1',
  ];

  test('holds no name in any member, leads to the same verdict, and its key is beside it', async () => {
    const zip = join(newFolder(), 'case.zip');
    const plain = await steadypair('verify', ...args, '--json');
    const made = await steadypair('verify', ...args, '--json', '--bundle', zip, '--mask');
    expect([made.status, made.err]).toEqual([plain.status, '']);
    const members = await membersOf(readFileSync(zip));
    const all = [...members]
      .map(([name, bytes]) => `${name} ${new TextDecoder().decode(bytes)}`)
      .join('\n')
      .toLowerCase();
    expect(names.filter((name) => all.includes(name.toLowerCase()))).toEqual([]);
    const { names: keys } = JSON.parse(readFileSync(zip.replace('.zip', '.key.json'), 'utf8'));
    expect(keys).toContainEqual(expect.objectContaining({ kind: 'pair', original: 'RO1' }));
    expect([...members.keys()].join()).not.toContain('key');
    expect(textIn(members, 'manifest.json')).toMatch(/"sha256": null/);
    const again = await steadypair('verify', zip, '--json');
    const outline = (json: string): unknown =>
      JSON.parse(json).swaps.map((s: { verdict: string; checks: { id: string; status: string }[] }) => [
        s.verdict,
        s.checks.map((check) => [check.id, check.status]),
      ]);
    expect(outline(again.out)).toEqual(outline(plain.out));
    expect(again.status).toBe(plain.status);
  });

  test('what is left of a name is a refusal, and nothing is written', async () => {
    const logs = newFolder();
    const zip = join(newFolder(), 'case.zip');
    // The name of the pair is a word of the report itself.
    const line = (at: string, text: string): string => `2026-03-14T${at}.000Z Swap-${text}\n`;
    const log = [
      line('09:00:00', 'A role active'),
      line('09:00:00', 'B role standby'),
      line('09:00:00', 'A partner ready'),
      line('09:10:00', 'B removed'),
      line('09:12:00', 'B inserted'),
    ];
    writeFileSync(join(logs, 'one.log'), log.join(''));
    const book = join(newFolder(), 'site.yaml');
    writeFileSync(book, 'units: [{ pattern: "^(?<pair>[A-Za-z]+)-(?<half>[AB])$" }]\n');
    const { status, err } = await steadypair('verify', logs, '--phrasebook', book, '--bundle', zip, '--mask');
    expect([status, err]).toEqual([
      2,
      expect.stringMatching(
        /case\.zip: what could not be masked: "Swap" is left in .*\. Nothing was written\. /,
      ),
    ]);
    expect(() => readFileSync(zip)).toThrow('no such file');
  });
});
