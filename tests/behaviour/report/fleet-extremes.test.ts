/** Reviews of fleets at the edges: every picture is drawn, nothing in it is no number, and no name is more than text. */
import { HtmlValidate } from 'html-validate';
import { describe, expect, test } from 'vitest';
import { fleet } from '../../../src/pipeline.ts';
import { fleetReports } from '../../../src/report/fleet-reports.ts';
import { fleetSections } from '../../../src/report/fleet-sections.ts';
import { picture } from '../../../src/report/picture.ts';
import type { Fleet } from '../../../src/vocabulary.ts';
import { analyseTexts } from '../../support/read-text.ts';

const anyName = 'units: [{ pattern: "^(?<pair>.+)/(?<half>[AB])$" }, { pattern: "^(?<pair>.+)$" }]\n';
const mostMarks = 3000;

async function review(rows: readonly string[], readings: readonly string[] = []): Promise<Fleet> {
  const files = {
    'x.csv': `time,unit,message\n${rows.join('\n')}\n`,
    ...(readings.length === 0 ? {} : { 'y.csv': `time,unit,parameter,value\n${readings.join('\n')}\n` }),
  };
  return fleet(await analyseTexts(files, { phrasebook: anyName }), { by: 'firmware', swaps: 10 });
}

/** A restart of half B, with the instant at which the partner was ready again, where it was. */
function restart(unit: string, start: string, end: string | null): readonly string[] {
  return [
    `${start}:00Z,"${unit}/B",module restart`,
    `${start}:01Z,"${unit}",partner not ready`,
    ...(end === null ? [] : [`${end}Z,"${unit}",partner ready`]),
  ];
}

function begun(unit: string, firmware = '6.2.0'): readonly string[] {
  return [
    `2026-01-05T09:00:00Z,"${unit}/A",role active`,
    `2026-01-05T09:00:00Z,"${unit}/B",role standby`,
    `2026-01-05T09:00:00Z,"${unit}/A","firmware ${firmware}"`,
    `2026-01-05T09:00:00Z,"${unit}/B","firmware ${firmware}"`,
    `2026-01-05T09:00:00Z,"${unit}",partner ready`,
  ];
}

function lost(unit: string, day: string): readonly string[] {
  return [`${day}T10:00:00Z,"${unit}",partner not ready`, `${day}T10:01:30Z,"${unit}",partner ready`];
}

/** Draws all pictures; gives how many there are of each question. */
async function drawn(found: Fleet): Promise<Readonly<Record<string, number>>> {
  const sections = fleetSections(found, 'UTC');
  for (const { spec, caption } of sections.flatMap((s) => s.figures)) {
    const svg = await picture(spec);
    expect(svg).not.toMatch(/NaN|Infinity|undefined|null/);
    expect(svg.match(/<(?:path|text|rect|circle|line)\b/g)?.length ?? 0).toBeLessThan(mostMarks);
    expect(caption).toMatch(/\d|one/i);
  }
  const reports = await fleetReports(found, { zone: 'UTC', version: '1' });
  for (const { text } of reports) expect(text).not.toMatch(/NaN|Infinity|undefined/);
  return Object.fromEntries(sections.map((s) => [s.id, s.figures.length]));
}

describe('the report of a fleet', () => {
  test('of one attempt draws its curve', async () => {
    const found = await review([
      ...begun('RO1'),
      ...restart('RO1', '2026-01-05T10:00', '2026-01-05T10:01:20'),
      '2026-01-06T09:00:00Z,RO1/A,light off',
    ]);
    expect(await drawn(found)).toMatchObject({ pairs: 0, 'sync-times': 1 });
  });

  test('of attempts that were never seen to end has a table without a curve', async () => {
    const found = await review([
      ...begun('RO1'),
      ...restart('RO1', '2026-01-05T10:00', null),
      ...restart('RO1', '2026-01-05T11:00', null),
      '2026-01-06T09:00:00Z,RO1/A,light off',
    ]);
    expect(await drawn(found)).toMatchObject({ 'sync-times': 0 });
  });

  test('of one month has the losses in a table, and draws no line of one point and no rate', async () => {
    const rows = ['RO1', 'RO2'].flatMap((unit) => [...begun(unit), ...lost(unit, '2026-01-07')]);
    const found = await review(rows);
    expect(await drawn(found)).toMatchObject({ pairs: 0, months: 0 });
    expect(fleetSections(found, 'UTC').find((s) => s.id === 'pairs')?.table.rows).toHaveLength(2);
  });

  test('of 1 000 pairs with names of sixty characters draws the worst and says of how many', async () => {
    const units = Array.from(
      { length: 1000 },
      (_, index) => `${'W'.repeat(55)}-${String(index).padStart(4, '0')}`,
    );
    expect(units[0]).toHaveLength(60);
    const rows = units.flatMap((unit, index) => [
      ...begun(unit, `6.${index % 12}.0`),
      ...lost(unit, '2026-01-07'),
      ...restart(unit, '2026-02-05T10:00', `2026-02-05T10:0${1 + (index % 5)}:${10 + (index % 50)}`),
      ...lost(unit, '2026-03-07'),
    ]);
    const found = await review(rows);
    expect(await drawn(found)).toMatchObject({ pairs: 1, months: 1, 'sync-times': 1, census: 1 });
    const captions = fleetSections(found, 'UTC').flatMap((s) => s.figures.map((f) => f.caption));
    expect(captions.flatMap((c) => c.match(/\d+ of \d+\.$/) ?? [])).toEqual([
      '12 of 1000.',
      '12 of 1000.',
      '5 of 12.',
      '5 of 12.',
      '5 of 12.',
    ]);
  }, 60_000);

  test('shows a hostile name as text, in pictures as in tables', async () => {
    const hostile = "</text><script>alert(1)</script><img src=x onload=x>' $& clip0 \u202e\u200b|";
    const rows = [hostile, 'RO2'].flatMap((unit) => [
      ...begun(unit).filter((row) => unit !== hostile || !row.includes('firmware')),
      ...lost(unit, '2026-01-07'),
      ...restart(unit, '2026-02-05T10:00', '2026-02-05T10:01:20'),
      ...lost(unit, '2026-03-07'),
    ]);
    // A message gives a firmware of one word only; a reading gives any text.
    const readings = ['01-05', '03-08'].flatMap((day) =>
      ['A', 'B'].map((half) => `2026-${day}T09:00:00Z,"${hostile}/${half}",firmware,"${hostile}"`),
    );
    const found = await review(rows, readings);
    expect(found.groups.map((g) => g.group)).toContain(hostile);
    expect(found.pairs).toHaveLength(2);
    expect(await drawn(found)).toMatchObject({ pairs: 1, months: 1, 'sync-times': 1, census: 1 });
    const reports = await fleetReports(found, { zone: 'UTC', version: '1' });
    const page = reports.find((r) => r.name.endsWith('.html'))?.text ?? '';
    expect(page).not.toMatch(/<script|<img|<[a-z][^>"]*\sonload/);
    expect(page).not.toMatch(/[\u200b-\u200f\u202a-\u202e]/);
    expect(page).toContain('&lt;script&gt;');
    const validator = new HtmlValidate({
      extends: ['html-validate:standard'],
      rules: { 'no-inline-style': 'off', 'long-title': 'off', 'svg-focusable': 'off' },
    });
    const { results } = await validator.validateString(page);
    expect(results.flatMap((r) => r.messages.map((m) => `${m.line}: ${m.ruleId}: ${m.message}`))).toEqual([]);
  });

  test('says what could not be understood, of each file, and is the same each time', async () => {
    const files = { 'x.csv': 'time,unit,message', 'y.csv': 'time,unit,message' };
    const texts = Object.fromEntries(
      Object.entries(files).map(([name, head]) => [
        name,
        `${head}\n${begun('RO1').join('\n')}\n2026-01-06T09:00:00Z,RO1,"${name} went strange"\n`,
      ]),
    );
    const found = fleet(await analyseTexts(texts, { phrasebook: anyName }), { by: 'firmware', swaps: 10 });
    const quality = fleetSections(found, 'UTC').find((s) => s.id === 'quality');
    const said = quality?.table.rows.map((row) => row.cells.at(-1)?.text ?? '') ?? [];
    for (const name of Object.keys(files)) expect(said.some((text) => text.includes(name))).toBe(true);
    const [one, two] = [
      await fleetReports(found, { zone: 'UTC', version: '1' }),
      await fleetReports(found, { zone: 'UTC', version: '1' }),
    ];
    expect(two).toEqual(one);
    for (const { name, text } of one) if (/\.(?:html|md)$/.test(name)) expect(text).toContain('Data quality');
  });
});
