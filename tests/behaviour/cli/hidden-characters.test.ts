import { mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { hiddenIn } from '../../support/hidden-characters.ts';
import { fileWith, steadypair } from '../../support/run-command.ts';

/** An override, an isolate, a mark, a joiner, a soft hyphen, a C1 control, DEL, a tag, an annotation, and a line separator. */
const hidden = '\u202e\u2066\u200f\u200d\u00ad\u009b\u007f\u{e0041}\ufff9\u2028';
const rows = ['partner ready', 'partner not ready', 'partner ready', `firmware 6${hidden}4`].map(
  (message, minute) => `2026-03-14T10:0${minute}:00Z,RO${hidden}1,${message}`,
);
const log = `time,unit,message\n${rows.join('\n')}\n2026-03-14T10:09:00Z,RO1-A,odd ${hidden} words\n`;
const phrasebook = 'units: [{ pattern: "^(?<pair>[\\\\s\\\\S]+)$" }]\n';

const rawIn = (text: string): readonly string[] => [
  ...hiddenIn(text.replace(/[\t\r]/g, '')),
  ...(/[\u{e0000}-\u{e007f}\ufff9-\ufffb]/u.exec(text) ?? []),
];

describe('characters that are not seen', () => {
  test('stand raw in no document, and JSON gives them back', async () => {
    const args = [fileWith(log, 'x.csv'), '--phrasebook', fileWith(phrasebook, 'site.yaml')];
    for (const command of ['timeline', 'verify', 'diagnose', 'fleet', 'inspect']) {
      const { out } = await steadypair(command, ...args, '--json');
      expect([command, rawIn(out)]).toEqual([command, []]);
      expect([command, JSON.stringify(JSON.parse(out)).includes(hidden)]).toEqual([command, true]);
    }
    const lines = await steadypair('timeline', ...args, '--format', 'jsonl');
    expect(rawIn(lines.out)).toEqual([]);
    expect(JSON.parse(lines.out.split('\n')[0] ?? '').pair).toBe(`RO${hidden}1`);
    const table = await steadypair('timeline', ...args, '--format', 'csv');
    expect(rawIn(table.out)).toEqual([]);
    expect(table.out).toContain('RO‹202E›‹2066›‹200F›‹200D›‹00AD›‹009B›‹007F›‹E0041›‹FFF9›‹2028›1');
  });

  test('stand raw in no report and no draft', async () => {
    const out = mkdtempSync(join(tmpdir(), 'hidden-'));
    const args = [fileWith(log, 'x.csv'), '--phrasebook', fileWith(phrasebook, 'site.yaml')];
    for (const command of ['verify', 'diagnose', 'fleet']) await steadypair(command, ...args, '--out', out);
    await steadypair('inspect', ...args, '--draft-phrasebook', join(out, 'draft.yaml'));
    const names = readdirSync(out);
    // One for each swap, of which there is none; three of a diagnosis, ten of a fleet, and the draft.
    expect(names).toHaveLength(1 + 3 + 10 + 1);
    for (const name of names)
      expect([name, rawIn(readFileSync(join(out, name), 'utf8'))]).toEqual([name, []]);
  });
});
