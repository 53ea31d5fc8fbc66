import { HtmlValidate } from 'html-validate';
import { describe, expect, test } from 'vitest';
import { prepareHtml } from '../../../src/report/prepare-html.ts';
import { prepareJson } from '../../../src/report/prepare-json.ts';
import { prepareMarkdown } from '../../../src/report/prepare-markdown.ts';
import { prepareReports } from '../../../src/report/prepare-reports.ts';
import { prepareText } from '../../../src/report/prepare-text.ts';
import { endless, longSheet } from '../../support/long-sheet.ts';
import { morning, sheetOfFiles, twoDays } from '../../support/prepared.ts';

const options = { zone: 'Europe/Lisbon', version: '0.0.0' };
const inTerminal = { zone: 'Europe/Lisbon', paint: (text: string) => text, reports: [] };

describe('the sheet as HTML', () => {
  test('is one valid file without script, with a row for each step and room for clock and initials', async () => {
    const sheet = await sheetOfFiles(twoDays(morning));
    const html = prepareHtml(sheet, options);
    const found = await new HtmlValidate({ extends: ['html-validate:standard'] }).validateString(html);
    expect(found.results.flatMap((r) => r.messages.map((m) => `${m.ruleId}: ${m.message}`))).toEqual([]);
    expect(html).not.toMatch(/<script|https?:/);
    const rows = html.split('<td class="by-hand"></td><td class="by-hand"></td>').length - 1;
    const holdPoints = sheet.steps.filter((s) => s.holdPoint !== null).length;
    expect(sheet.steps.length).toBeGreaterThan(5);
    expect(rows).toBe(sheet.steps.length + holdPoints);
    expect(html).toContain('Light not steady after five minutes: stop and call for support');
    for (const text of ['Sign-off', 'Signature', 'check at the cabinet which half is standby', 'Sheet made'])
      expect(html).toContain(text);
    for (const { sha256 } of sheet.inputs) expect(html).toContain(sha256);
    expect(html).toContain('ro1.log:2 <code>2026-03-13T08:40:00.000Z RO1-B role standby</code>');
  });

  test('says the instant it was made', async () => {
    const html = prepareHtml(await sheetOfFiles(twoDays(morning)), options);
    expect(html).toContain('<dt>Sheet made</dt><dd>14 Mar 2026 09:30:00</dd>');
  });

  test('shows log text as text', async () => {
    const row = '2026-03-14T09:00:00.000Z,RO1-B,serial,<script>alert(1)</script>';
    const poll = `time,unit,parameter,value\n${row}\n`;
    const sheet = await sheetOfFiles({ 'ro1.log': twoDays(morning), 'poll.csv': poll });
    expect(sheet.halves[1]?.serial.value).toBe('<script>alert(1)</script>');
    expect(prepareHtml(sheet, options)).not.toContain('<script');
    expect(prepareMarkdown(sheet, options)).not.toContain('<script');
    expect(prepareText(sheet, inTerminal)).toContain('<script>alert(1)</script>');
  });

  test('cuts what is too long for paper, says how much more there is, and leaves it whole in the document', async () => {
    const sheet = longSheet(await sheetOfFiles(twoDays(morning)));
    const html = prepareHtml(sheet, options);
    expect(html).toContain('36 more reasons: see prepare.json');
    expect(html).toContain('37 more findings: see prepare.json');
    expect(html).toContain('36 more files in prepare.json');
    expect(html).not.toContain(endless.replaceAll('<', '&lt;').replaceAll('>', '&gt;'));
    const document: { readonly trouble: readonly { readonly statement: string }[] } = JSON.parse(
      prepareJson(sheet),
    );
    expect(document.trouble).toHaveLength(40);
    expect(document.trouble[0]?.statement).toBe(endless);
  });
});

describe('the document', () => {
  test('has the shape of steadypair/prepare/1, instants as ISO 8601', async () => {
    const sheet = await sheetOfFiles(twoDays(morning));
    const document = JSON.parse(prepareJson(sheet));
    expect(document).toMatchObject({
      schema: 'steadypair/prepare/1',
      pair: 'RO1',
      asOf: { time: '2026-03-14T09:00:00.000Z', earliest: '2026-03-14T09:00:00.000Z' },
      madeAt: { time: '2026-03-14T09:30:00.000Z', earliest: '2026-03-14T09:30:00.000Z' },
      standby: { half: 'B', because: null, restsOn: 'role', ageSeconds: 1800 },
      halves: [
        { half: 'A', role: 'active', light: 'off', model: 'Tern-2', serial: 'T2-1', firmware: '6.4.1' },
        { half: 'B', role: 'standby', light: 'steady', model: 'Tern-2', serial: 'T2-2', firmware: '6.4.1' },
      ],
      readiness: { fit: true, reasons: [] },
      trouble: [],
    });
    expect(document.inputs[0].sha256).toMatch(/^[0-9a-f]{64}$/);
    for (const [index, step] of sheet.steps.entries()) {
      const { id, half, title, limitSeconds, holdPoint, expected } = step;
      const conditions = (holdPoint?.conditions ?? []).map(({ evidence, ...said }) => ({
        ...said,
        evidence: evidence.map(({ file, line, text }) => ({ file, line, text })),
      }));
      expect(document.steps[index]).toEqual({
        id,
        half,
        title,
        limitSeconds,
        holdPoint: holdPoint?.status ?? null,
        conditions,
        expected,
      });
    }
  });
});

describe('the text', () => {
  test('keeps to 100 columns whatever the log holds', async () => {
    const text = prepareText(longSheet(await sheetOfFiles(twoDays(morning))), inTerminal);
    for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  });
});

test('names of files are safe and tell the day of the last line', async () => {
  const sheet = await sheetOfFiles(twoDays(morning));
  const names = prepareReports({ ...sheet, pair: '../RO1?' }, options).map(({ name }) => name);
  expect(names).toEqual([
    '_RO1_-work-sheet-2026-03-14.html',
    '_RO1_-work-sheet-2026-03-14.md',
    'prepare.json',
  ]);
});
