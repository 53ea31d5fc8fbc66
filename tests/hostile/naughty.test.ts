/** A published corpus of strings in every field of every layout, carried to every output: shown, harmless. */
import { HtmlValidate } from 'html-validate';
import Papa from 'papaparse';
import { beforeAll, describe, expect, test } from 'vitest';
import { platform } from '../../src/cli/platform.ts';
import {
  type Analysed,
  analyse,
  diagnose,
  fleet,
  importFiles,
  readPhrasebook,
  verify,
} from '../../src/pipeline.ts';
import { diagnoseReports } from '../../src/report/diagnose-reports.ts';
import { diagnoseText } from '../../src/report/diagnose-text.ts';
import { fleetReports } from '../../src/report/fleet-reports.ts';
import { fleetText } from '../../src/report/fleet-text.ts';
import { inspectJson, inspectText } from '../../src/report/inspect.ts';
import { timelineCsv, timelineJsonLines } from '../../src/report/timeline-documents.ts';
import { reportsOf, safeName } from '../../src/report/verify-reports.ts';
import { verifyText } from '../../src/report/verify-text.ts';
import { exampleVerification } from '../support/example-verification.ts';
import { hiddenIn } from '../support/hidden-characters.ts';
import { naughty, naughtyLogs } from './naughty-logs.ts';

const options = { zone: 'UTC', version: 'test' };
const shown = { zone: 'UTC', paint: (words: string) => words, reports: naughty };
let analysed: Analysed;

beforeAll(async () => {
  const sources = Object.entries(naughtyLogs()).map(([name, text]) => {
    const bytes = new TextEncoder().encode(text);
    return {
      name: `${naughty[7]}/${name}`,
      bytes: bytes.length,
      async *open() {
        yield bytes;
      },
    };
  });
  analysed = analyse(
    await importFiles(sources, {
      phrasebook: readPhrasebook('site.yaml', `name: ${JSON.stringify(naughty[100])}\n`),
      ...{ zone: null, order: 'day-first', year: null, sha256: platform.sha256 },
    }),
  );
});

/** The texts that come from the corpus as the program trims them. */
const trimmed = naughty.map((text) => text.trim());

test('the corpus is there, and every log of it was read', () => {
  expect(naughty.length).toBeGreaterThan(400);
  expect(analysed.files.map((f) => f.input.file.split('/').at(-1)).sort()).toEqual(
    Object.keys(naughtyLogs()).sort(),
  );
});

test('JSON gives every string back', () => {
  const lines = [...timelineJsonLines(analysed.timelines)].join('').trimEnd().split('\n');
  const events: readonly { readonly signal: string; readonly value: string }[] = lines.map((line) =>
    JSON.parse(line),
  );
  const said = new Set(events.filter((e) => e.signal === 'firmware').map((e) => e.value));
  expect(trimmed.filter((text) => !said.has(text))).toEqual([]);
  expect(() => JSON.parse(inspectJson(analysed.files, analysed.findings))).not.toThrow();
});

test('CSV gives every string back, what is not seen as its code, and none is a formula', () => {
  const { data, errors } = Papa.parse<readonly string[]>(
    [...timelineCsv(analysed.timelines)].join('').trimEnd(),
  );
  expect(errors).toEqual([]);
  const cells = new Set(data.flat());
  const seen = (text: string): string =>
    [...text]
      .map((c) => {
        const [code] = /[\t\r\n]/.test(c) ? [] : hiddenIn(c);
        return code === undefined ? c : `‹${code.toUpperCase().padStart(4, '0')}›`;
      })
      .join('');
  const asCell = (text: string): string => (/^[=+\-@\t\r\n]/.test(text) ? `'${text}` : text);
  expect(trimmed.filter((text) => !cells.has(asCell(seen(text))))).toEqual([]);
  const isNumber = (text: string): boolean => /^-?\d+(?:\.\d+)?$/.test(text);
  expect([...cells].filter((text) => /^[=+\-@\t\r]/.test(text) && !isNumber(text))).toEqual([]);
});

describe('the terminal', () => {
  const texts: readonly (readonly [string, () => string])[] = [
    ['inspect', () => inspectText(analysed.files, analysed.timelines, analysed.findings)],
    ['fleet', () => fleetText(fleet(analysed, { by: 'firmware', swaps: 3 }), shown)],
    ['diagnose', () => diagnoseText(diagnose(analysed, null), shown)],
    ['verify', () => verifyText(verify(analysed, null, { from: null, to: null }, null), shown)],
  ];
  test.each(texts)('gets no control and nothing unseen from %s', (_, text) => {
    expect(hiddenIn(text())).toEqual([]);
  });
});

describe('a report', () => {
  test('on the fleet holds the strings as text: valid HTML, no element or address of theirs', async () => {
    const reports = await fleetReports(fleet(analysed, { by: 'firmware', swaps: 3 }), options);
    const page = reports.find((r) => r.name === 'fleet.html')?.text ?? '';
    await expectHarmless(page);
    const summary = reports.find((r) => r.name === 'fleet.md')?.text ?? '';
    expect(summary).not.toMatch(/<[a-z!/]/i);
    expect(summary).not.toMatch(/(?<!\\)\]\(|:\/\//);
    expect(hiddenIn(summary)).toEqual([]);
    for (const { name, text } of reports.filter((r) => r.name.endsWith('.csv')))
      expect([name, Papa.parse(text.trimEnd()).errors]).toEqual([name, []]);
  });

  test.each([3, 50, 120, 200, 300, 400])('on a swap and a pair called by string %i', async (index) => {
    const text = naughty[index] ?? '';
    for (const { name, text: made } of await reportsOf(exampleVerification(text), options)) {
      expect(name).toMatch(/^[A-Za-z0-9_-]+\.(?:html|md|json)$/);
      if (name.endsWith('.html')) await expectHarmless(made);
    }
    const pair = analysed.timelines.find((t) => t.pair === text.trim())?.pair ?? null;
    for (const { name, text: made } of await diagnoseReports(diagnose(analysed, pair), options))
      if (name.endsWith('.html')) await expectHarmless(made);
  });

  test('has a name that leads nowhere, whatever the pair is called', () => {
    for (const text of naughty) expect(safeName(text)).toMatch(/^[A-Za-z0-9_-]{1,60}$/);
  });
});

async function expectHarmless(page: string): Promise<void> {
  const validator = new HtmlValidate({
    extends: ['html-validate:standard'],
    rules: { 'no-inline-style': 'off', 'long-title': 'off', 'svg-focusable': 'off' },
  });
  const { results } = await validator.validateString(page);
  expect(
    results.flatMap((r) => r.messages.map((m) => `${m.line}: ${m.ruleId}: ${m.message}`)).slice(0, 5),
  ).toEqual([]);
  expect(page).not.toMatch(
    /<(?:script|img|iframe|object|embed|video|audio|input|form|base|link|a [^>]*href="(?!#))/i,
  );
  expect(page.match(/<[a-z][^>"]*\son[a-z]+=/i)).toBeNull();
  expect(hiddenIn(page)).toEqual([]);
}
