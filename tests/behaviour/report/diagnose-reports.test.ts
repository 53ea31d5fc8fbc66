/** The outputs of a diagnosis: valid, in order, harmless whatever a log holds. */
import { HtmlValidate } from 'html-validate';
import { describe, expect, test } from 'vitest';
import { diagnose } from '../../../src/pipeline.ts';
import { diagnoseReports } from '../../../src/report/diagnose-reports.ts';
import { diagnoseText } from '../../../src/report/diagnose-text.ts';
import type { Diagnosis } from '../../../src/vocabulary.ts';
import { diagnoseCase } from '../../support/check-cause.ts';
import { analyseTexts } from '../../support/read-text.ts';
import { filesOf, healthyPair } from '../../support/trouble-stories.ts';

const hostile = `</td><script>alert(1)</script>"' onload=x $& [x](http://a.example) www.a.example \u001b[31m\u202e|`;
const fromLogs: ReadonlySet<string> = new Set([
  'pair',
  'half',
  'site',
  'statement',
  'text',
  'file',
  'chosen',
]);

const sound = await diagnoseCase({ name: '', plus: ['06:59:58  RO1 B  links crossed'] });
const spoilt: Diagnosis = JSON.parse(
  JSON.stringify({ ...sound, chosen: 'Chosen.', sentences: [[`One ${hostile}`], [`Two ${hostile}`]] }),
  (key: string, value: unknown) => (typeof value === 'string' && fromLogs.has(key) ? value + hostile : value),
);
const healthy = diagnose(await analyseTexts(filesOf({ stories: [healthyPair('RO1', 1)] })), null);
const options = { zone: 'UTC', version: '1' };

async function report(diagnosis: Diagnosis, ending: string): Promise<string> {
  const found = (await diagnoseReports(diagnosis, options)).find((r) => r.name.endsWith(ending));
  return found?.text ?? '';
}

describe('the reports of a diagnosis', () => {
  test('have their parts in the order of an answer', async () => {
    const ids = [...(await report(sound, '.html')).matchAll(/<section id="([^"]+)"/g)].map((m) => m[1]);
    // The journal holds no bring-up, so that section is left out.
    expect(ids).toEqual(
      'ladder staff attempts causes doubted next cautions findings inputs evidence'.split(' '),
    );
  });
  test.each([
    ['a pair in trouble', sound],
    ['a healthy pair', healthy],
    ['hostile text', spoilt],
  ])('are valid HTML with links to what is there: %s', async (_name, diagnosis) => {
    const page = await report(diagnosis, '.html');
    const { results } = await new HtmlValidate({
      extends: ['html-validate:standard'],
      rules: { 'no-inline-style': 'off', 'long-title': 'off', 'svg-focusable': 'off' },
    }).validateString(page);
    expect(results.flatMap((r) => r.messages.map((m) => `${m.line}: ${m.ruleId}: ${m.message}`))).toEqual([]);
    const ids = [...page.matchAll(/ id="([^"]+)"/g)].map((m) => m[1]);
    const targets = [...page.matchAll(/href="#([^"]+)"/g)].map((m) => m[1]);
    expect(targets.filter((t) => !ids.includes(t))).toEqual([]);
    expect(page).not.toMatch(/<script|<[a-z][^>"]*\sonload|(?:href|src)="http/);
  });
  test('give the same bytes for the same diagnosis', async () => {
    expect(await diagnoseReports(sound, options)).toEqual(await diagnoseReports(sound, options));
  });
  test('hostile text is no HTML or link in Markdown, and no control sequence in the terminal', async () => {
    const text = diagnoseText(spoilt, { zone: 'UTC', paint: (t) => t, reports: [] });
    const page = await report(spoilt, '.md');
    for (const shown of [text, page]) {
      expect(shown.includes('\u001b') || shown.includes('\u202e')).toBe(false);
    }
    expect(page).not.toMatch(/<script|(?<!\\)\[x\]\(|http:\/\/|www\./);
    for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  });
  test('the names of the files are safe and those of the pair and day', async () => {
    const names = (await diagnoseReports({ ...sound, pair: '../RO 1' }, options)).map((r) => r.name);
    expect(names).toEqual([
      '_RO_1-diagnosis-2026-03-14.html',
      '_RO_1-diagnosis-2026-03-14.md',
      'diagnose.json',
    ]);
  });
});
