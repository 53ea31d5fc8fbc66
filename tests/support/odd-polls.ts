/** Polls with what exports do to single rows. */
/** Seconds after the begin as ISO 8601. */
export const clock = (seconds: number): string =>
  new Date(Date.UTC(2026, 2, 14, 9) + seconds * 1000).toISOString();
/** How exports write them. */
export const stamps: Readonly<Record<string, (seconds: number) => string>> = {
  plain: (s) => clock(s).slice(0, 19).replace('T', ' '),
  utc: (s) => `${clock(s).slice(0, 19)}Z`,
  millis: (s) => clock(s).slice(0, 23),
  comma: (s) => `${clock(s).slice(0, 19)},125`.replace('T', ' '),
  offset: (s) => `${clock(s).slice(0, 19)}+01:00`,
  european: (s) => `${clock(s).slice(8, 10)}/03/2026 ${clock(s).slice(11, 19)}`,
  epoch: (s) => String(Date.UTC(2026, 2, 14, 9) / 1000 + s),
};

/** A poll of two pairs, with a gauge, unknown wording and meaningless cells; `odd` puts something into single rows. */
export function poll(
  stamp: (seconds: number) => string,
  delimiter: string,
  odd: (row: string, index: number) => string,
  cycles = 40,
): string {
  const rows = Array.from({ length: cycles }, (_, cycle) => {
    const at = stamp(cycle * 10);
    const cell = (...cells: readonly string[]): string => [at, ...cells].join(delimiter);
    return [
      cell('RO1', 'partner-ready', cycle % 9 === 8 ? 'no' : 'yes'),
      cell('RO1-A', 'firmware', cycle < 20 ? '6.2.0' : '6.4.1'),
      cell('RO1-A', 'load', (40 + (cycle % 7) / 10).toFixed(1)),
      cell('RO1-B', 'serial', cycle % 13 === 12 ? '' : 'T4-20801'),
      cell('RO2', 'partner-ready', cycle % 11 === 3 ? 'perhaps' : 'yes'),
      cell('RO2-A', 'humour', 'good'),
    ];
  });
  const header = ['time', 'unit', 'parameter', 'value'].join(delimiter);
  return `${[header, ...rows.flat().map(odd)].join('\n')}\n`;
}

/**
 * A poll of many plain readings in which each changes with a chance `share`, between values that are as long as each other
 * and values that are not; with some chance a reading is left out, so that rows follow others than before.
 */
export function restless(
  stamp: (seconds: number) => string,
  share: number,
  units: number,
  random: () => number,
  cycles = 120,
): string {
  const names = [
    ['firmware', '6.2.0', '6.4.1'],
    ['partner-ready', 'yes', 'no'],
    ['serial', 'T4-20801', 'T4-20802'],
  ] as const;
  const now = new Map<string, number>();
  const rows = Array.from({ length: cycles }, (_, cycle) =>
    Array.from({ length: units * names.length }, (_, place) => {
      const [name, ...values] = names[place % names.length] ?? names[0];
      const unit = `RO${Math.floor(place / names.length)}-A`;
      if (random() < share) now.set(unit + name, 1 - (now.get(unit + name) ?? 0));
      const row = `${stamp(cycle * 10)},${unit},${name},${values[now.get(unit + name) ?? 0]}`;
      return random() < share / 4 ? [] : [row];
    }).flat(),
  );
  return `${['time,unit,parameter,value', ...rows.flat()].join('\n')}\n`;
}

/** A journal of two pairs: known and unknown messages, again and again, some within the second of the same before. */
export function journal(
  stamp: (seconds: number) => string,
  delimiter: string,
  odd: (row: string, index: number) => string,
  cycles = 40,
): string {
  const messages = [
    'partner ready',
    'partner not ready',
    'humour good',
    'light steady',
    'restarted',
    'login at 4',
  ];
  const rows = Array.from({ length: cycles * 6 }, (_, index) => {
    const unit = ['RO1-A', 'RO1-B', 'RO2', 'nobody'][(index * 7) % 4] ?? '';
    const message = messages[(index * index + (index >> 3)) % 6] ?? '';
    const seconds = Math.floor(index / 2) * 4;
    return [stamp(seconds), unit, index % 5 === 0 ? `${message} ${index}` : message].join(delimiter);
  });
  return `${[['time', 'unit', 'message'].join(delimiter), ...rows.map(odd)].join('\n')}\n`;
}

/** Nothing happens to the row. */
export const plain = (row: string): string => row;
/** What happens to single rows of an export. */
export const oddities: Readonly<Record<string, (row: string, index: number) => string>> = {
  nothing: plain,
  'carriage returns': (row) => `${row}\r`,
  'a return now and then': (row, i) => (i % 17 === 5 ? `${row}\r` : row),
  quotes: (row, i) => (i % 23 === 7 ? row.replace(/[^,;|\t]+$/, '"$&"') : row),
  'a quoted line end': (row, i) => (i % 50 === 20 ? row.replace(/[^,;|\t]+$/, '"a\nb"') : row),
  'an open quote': (row, i) => (i === 100 ? row.replace(/[^,;|\t]+$/, '"$&') : row),
  'a quote inside': (row, i) => (i % 31 === 9 ? row.replace(/([^,;|\t]+)$/, '5" $1') : row),
  'blank rows': (row, i) => (i % 19 === 4 ? `${row}\n\n` : row),
  'blank rows with a return': (row, i) => (i % 19 === 4 ? `${row}\n\r` : row),
  'header again': (row, i) => (i % 60 === 30 ? `time,unit,parameter,value\n${row}` : row),
  'too few cells': (row, i) => (i % 29 === 3 ? row.slice(0, 22) : row),
  'too many cells': (row, i) => (i % 29 === 3 ? `${row},more,` : row),
  'empty cells at the end': (row, i) => (i % 29 === 3 ? `${row},,` : row),
  'no time': (row, i) => (i % 37 === 3 ? row.replace(/^.{5}/, 'never') : row),
  'a day that is none': (row, i) => (i % 37 === 3 ? row.replace('2026-03-14', '2026-02-31') : row),
  'an hour that is none': (row, i) => (i % 37 === 3 ? row.replace(/ 09:/, ' 29:') : row),
  'a leap second': (row, i) => (i % 37 === 3 ? row.replace(/:\d\d(?=[,;|\t])/, ':60') : row),
  'behind its neighbours': (row, i) =>
    i % 41 === 11 ? row.replace(/(\d\d:)0(\d)/, '$10$2').replace('09:0', '08:5') : row,
  'another day': (row, i) => (i % 43 === 11 ? row.replace('03-14', '03-15') : row),
  'zeros of a crash': (row, i) => (i === 90 ? `\0\0\0\0${row}` : row),
  'wide characters': (row, i) => (i % 21 === 2 ? row.replace(/RO2-A/, 'RO2-Ä') : row),
  'a mark inside': (row, i) => (i === 60 ? `\uFEFF${row}` : row),
  'odd numbers': (row, i) => {
    const odd = [
      '1e3',
      '+5',
      '.5',
      '5.',
      '-3',
      '1,5',
      '0x10',
      ' 7',
      '8 %',
      'n/a',
      '',
      '123456789012345678',
      '-0',
      '00.10',
    ];
    return row.includes('load') ? row.replace(/[^,;|\t]*$/, odd[i % odd.length] ?? '') : row;
  },
  spaces: (row, i) => (i % 15 === 2 ? ` ${row} ` : row),
  'a total at the end': (row, i) => (i === 239 ? `${row}\nTotal,240` : row),
  'cut off': (row, i) => (i === 239 ? row.slice(0, -2) : row),
};
