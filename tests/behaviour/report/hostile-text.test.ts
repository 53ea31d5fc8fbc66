/** Every text that a log, a file name or a person gives, made hostile at once, in every output. */

import { HtmlValidate } from 'html-validate';
import { describe, expect, test } from 'vitest';
import { changesFrom } from '../../../src/change-columns.ts';
import { inspectText } from '../../../src/report/inspect.ts';
import { reportsOf } from '../../../src/report/verify-reports.ts';
import { verifyText } from '../../../src/report/verify-text.ts';
import type { ImportedFile } from '../../../src/vocabulary.ts';
import { exampleVerification } from '../../support/example-verification.ts';
import { hiddenIn } from '../../support/hidden-characters.ts';

const hostile = `</td><script>alert(1)</script>"' onload=x $& $' $\` clip0 [x](http://a.example) www.a.example \u001b[31m\u202e\u200b|`;
const verification = exampleVerification(hostile);
const options = { zone: 'Europe/Lisbon', version: '1' };

async function reports(ending: string): Promise<readonly string[]> {
  const all = await reportsOf(verification, options);
  return all.filter((r) => r.name.endsWith(ending)).map((r) => r.text);
}

describe('hostile text', () => {
  test('leaves the HTML valid, without markup, handler or address of its own', async () => {
    const pages = await reports('.html');
    expect(pages).toHaveLength(2);
    const validator = new HtmlValidate({
      extends: ['html-validate:standard'],
      rules: { 'no-inline-style': 'off', 'long-title': 'off', 'svg-focusable': 'off' },
    });
    for (const page of pages) {
      const { results } = await validator.validateString(page);
      expect(results.flatMap((r) => r.messages.map((m) => `${m.line}: ${m.ruleId}: ${m.message}`))).toEqual(
        [],
      );
      expect(page).not.toMatch(/<script|<[a-z][^>"]*\sonload|(?:href|src)="http/);
      expect(hiddenIn(page)).toEqual([]);
      // Two pictures, each with its own clip; a `$` is text, and so is a name that looks like a clip's.
      expect(page.match(/<svg /g)).toHaveLength(2);
      const spoken = [...page.matchAll(/<svg [^>]*aria-label="([^"]*)"/g)].map((m) => m[1] ?? '');
      expect(spoken[0]).toContain('$&amp; $&#39; $` clip0 ');
      expect(spoken.filter((text) => text.includes('<'))).toEqual([]);
      expect(page).not.toMatch(/[^=(]staff-clip0/);
    }
  });
  test('is no HTML, link or new cell in Markdown', async () => {
    const [first = ''] = await reports('.md');
    expect(first).not.toMatch(/<[a-z!/]/i);
    expect(first).not.toMatch(/\]\(|:\/\/|www\./);
    expect(hiddenIn(first)).toEqual([]);
    // An unescaped bar would be one more cell: header and rule count them.
    const halves = first.split('\n').filter((l) => l.startsWith('| B&lt;'));
    expect(halves.map((l) => l.match(/(?<!\\)\|/g)?.length)).toEqual([9]);
  });
  test('sends no control to a terminal and keeps to 100 columns', () => {
    const text = verifyText(verification, { zone: 'UTC', paint: (t) => t, reports: [] });
    expect(text).toContain('‹001B›');
    expect(hiddenIn(text)).toEqual([]);
    expect(text.split('\n').filter((line) => line.length > 100)).toEqual([]);
  });
  test('sends no control to a terminal from inspect', () => {
    const pair = `RO1${hostile}`;
    const half = `B${hostile}`;
    const file: ImportedFile = {
      input: first(),
      resolution: 0,
      site: null,
      streams: [
        {
          kind: 'entry',
          unit: `RO1-B${hostile}`,
          subject: { pair, half, role: null },
          signals: [],
          first: { time: 0, line: 1, text: '' },
          last: { time: 0, line: 1, text: '' },
          spacing: 0,
          gaps: [],
          reads: [],
          notUnderstood: [],
        },
      ],
      changes: changesFrom([]),
      gauges: [],
      notices: [],
      reasons: [`Read as lines${hostile}`],
      columns: [{ name: `Stamp${hostile}`, meaning: 'time' }],
      parameters: [{ name: `Lamp${hostile}`, meaning: 'light' }],
      unknown: [],
    };
    const text = inspectText([file], [], verification.findings);
    expect(text).toContain('not recognised: "odd');
    expect(hiddenIn(text)).toEqual([]);
    expect(text.split('\n').filter((line) => line.length > 100)).toEqual([]);
  });
});

function first(): ImportedFile['input'] {
  const [input] = verification.inputs;
  if (input === undefined) throw new Error('the example has inputs');
  return input;
}
