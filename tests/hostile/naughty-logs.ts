import strings from 'big-list-of-naughty-strings';

/** Strings that have made programs stumble, each once. Source: big-list-of-naughty-strings 1.0.0 (npm, MIT licence). */
export const naughty: readonly string[] = [...new Set(strings)].filter((text) => text.trim() !== '');

const head = '2026-03-14T09:00:00Z';
const later = '2026-03-14T09:10:00Z';

function cell(text: string): string {
  return `"${text.replaceAll('"', '""')}"`;
}

function csv(header: string, rows: readonly (readonly string[])[]): string {
  return `${[header, ...rows.map((row) => row.map(cell).join(','))].join('\n')}\n`;
}

/** Logs that carry the corpus in every field of every layout; each string stands in each of them. */
export function naughtyLogs(): Readonly<Record<string, string>> {
  return { ...tables(), ...texts() };
}

type Rows = readonly (readonly string[])[];

function each(rowsOf: (text: string, index: number) => Rows): Rows {
  return naughty.flatMap(rowsOf);
}

function tables(): Readonly<Record<string, string>> {
  return {
    'values.csv': csv(
      'time,pair,half,parameter,value',
      each((text, i) => [
        [head, `P${i}`, 'A', 'firmware', text],
        [head, `P${i}`, 'B', 'serial', text],
        [later, `P${i}`, 'B', 'model', text],
      ]),
    ),
    'pairs.csv': csv(
      'time,pair,half,parameter,value',
      each((text) => [
        [head, text, 'A', 'firmware', '6.4.1'],
        [later, text, 'A', 'firmware', '6.2.0'],
      ]),
    ),
    'halves.csv': csv(
      'time,pair,half,parameter,value',
      each((text, i) => [[head, `H${i}`, text, 'role', 'active']]),
    ),
    'units.csv': csv(
      'time,unit,parameter,value',
      each((text) => [[head, text, 'light', 'steady']]),
    ),
    'parameters.csv': csv(
      'time,unit,parameter,value',
      each((text) => [[head, 'RO1-A', text, 'steady']]),
    ),
    'stamps.csv': csv('time,unit,parameter,value', [
      [head, 'RO1-A', 'light', 'off'],
      ...each((text) => [[text, 'RO1-A', 'light', 'steady']]),
    ]),
    'journal.csv': csv(
      'time,unit,class,severity,message',
      each((text) => [[head, 'RO2-A', text, text, text]]),
    ),
    'headers.csv': csv(`time,unit,light,${naughty.slice(0, 200).map(cell).join(',')}`, [
      [head, 'RO3-A', 'steady', ...naughty.slice(0, 200)],
    ]),
  };
}

function texts(): Readonly<Record<string, string>> {
  return {
    'lines.log': naughty.map((text) => `${head} RO4-A ${text.replaceAll(/[\r\n]/g, ' ')}\n`).join(''),
    'notes.txt': naughty.map((text) => `2026-03-14 09:15 RO5: ${text.replaceAll(/[\r\n]/g, ' ')}\n`).join(''),
    'keyed.log': naughty
      .map((text, row) => {
        // One firmware after the other: no two run at one time.
        const time = new Date(Date.UTC(2026, 2, 14, 9) + row * 1000).toISOString();
        return `${JSON.stringify({ time, unit: 'RO6-A', firmware: text, [text]: text })}\n`;
      })
      .join(''),
  };
}
