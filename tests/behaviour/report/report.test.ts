import { HtmlValidate } from 'html-validate';
import { describe, expect, test } from 'vitest';
import { verify } from '../../../src/pipeline.ts';
import { csvCell, html, markdown, terminal } from '../../../src/report/escape.ts';
import { timelineCsv } from '../../../src/report/timeline-documents.ts';
import { reportsOf } from '../../../src/report/verify-reports.ts';
import { sayInstant, sayMeasure } from '../../../src/report/words.ts';
import { sayBounds, sayDuration } from '../../../src/vocabulary.ts';
import { cleanJournal } from '../../support/clean-swap.ts';
import { analyseTexts, journalText } from '../../support/read-text.ts';

const hostile = `<script>alert(1)</script>'"&`;

async function hostileReports(): Promise<Readonly<Record<string, string>>> {
  const journal = journalText(cleanJournal.join('\n')).replaceAll('Tern-4', `Tern<img/src=x>`);
  const analysed = await analyseTexts({ [`=cmd()/${hostile}.log`]: journal }, {});
  const verification = verify(
    analysed,
    null,
    { from: null, to: null },
    { workOrder: hostile, technician: hostile },
  );
  const reports = await reportsOf(verification, { zone: 'Europe/Lisbon', version: '1' });
  return Object.fromEntries([
    ...reports.map((r) => [r.name.replace(/.*\./, ''), r.text]),
    ['csv', [...timelineCsv(analysed.timelines)].join('')],
  ]);
}

describe('a report', () => {
  test('is valid HTML without script or network, whatever the log holds', async () => {
    const { html: page = '' } = await hostileReports();
    const report = await new HtmlValidate({
      extends: ['html-validate:standard'],
      rules: { 'no-inline-style': 'off', 'long-title': 'off', 'svg-focusable': 'off' },
    }).validateString(page);
    expect(
      report.results.flatMap((r) => r.messages.map((m) => `${m.line}: ${m.ruleId}: ${m.message}`)),
    ).toEqual([]);
    expect(page).not.toMatch(/<script|<img|\son\w+=|https?:\/\/(?!www\.w3\.org)/);
    expect(page).toContain('&lt;script&gt;alert(1)&lt;/script&gt;');
    expect(page).toContain('Never remove a module on the word of a log alone');
  });
  test('as Markdown holds no live HTML and no link', async () => {
    const { md = '' } = await hostileReports();
    expect(md).not.toMatch(/<[a-z!/]/i);
    expect(md).not.toContain('](');
  });
  test('as CSV starts no formula', async () => {
    const { csv = '' } = await hostileReports();
    expect(csv).toContain("'=cmd()");
    expect(csv).not.toMatch(/(?:^|,)"?[=+@]/m);
  });
});

describe('escapes', () => {
  test('controls and turns of direction never reach a reader', () => {
    expect(terminal('a\u001b[31mb\u202ec\u0000')).toBe('a‹001B›[31mb‹202E›c‹0000›');
    expect(html('\u001b<a href="x">')).toBe('‹001B›&lt;a href=&quot;x&quot;&gt;');
    expect(markdown('[x](http://y) *b*')).toBe('\\[x\\]\\(http:&#47;&#47;y\\) \\*b\\*');
  });
  test.each([
    ['=1+1', "'=1+1"],
    ['-2', "'-2"],
    ['@x', "'@x"],
    ['a,b', '"a,b"'],
    ['6.4.1', '6.4.1'],
  ])('CSV cell %s', (text, expected) => {
    expect(csvCell(text)).toBe(expected);
  });
});

describe('words', () => {
  test.each([
    [4.2, '4.2 s'],
    [0, 'less than 1 s'],
    [9.96, '10 s'],
    [142, '2 min 22 s'],
    [300, '5 min 00 s'],
    [11_040, '3 h 04 min'],
    [41 * 86_400, '41 days'],
  ])('%d s is %s', (seconds, said) => {
    expect(sayDuration(seconds)).toBe(said);
  });
  test('bounds, instants and what was not seen', () => {
    expect(sayBounds(132, 142)).toBe('2 min 12 s to 2 min 22 s');
    expect(sayBounds(142.1, 142.2)).toBe('2 min 22 s');
    expect(sayInstant(Date.UTC(2026, 6, 14, 9, 14, 5), 'Europe/Lisbon')).toBe('14 Jul 2026 10:14:05');
    expect(sayMeasure({ seconds: 500, low: 500, high: null, censored: true, outcome: 'exceeded' })).toBe(
      'longer than 8 min 20 s',
    );
    expect(
      sayMeasure({ seconds: null, low: null, high: null, censored: false, outcome: 'not-observed' }),
    ).toBe('not observed');
  });
});
