/** What happens in a poll of states and gauges; of most the chance in one row. */
export interface GaugePoll {
  readonly cycles: number;
  readonly units: number;
  readonly spacing: number;
  readonly delimiter: string;
  /** A gauge shows another number than before. */
  readonly moves: number;
  /** How its numbers are written, one after the other as chance has it. */
  readonly writings: readonly ((value: number) => string)[];
  /** A state changes. */
  readonly changes: number;
  /** A cell of a gauge holds no number: text, or nothing. */
  readonly odd: number;
  /** The row is not there, stands twice, changes places with the one after it, or is quoted. */
  readonly missing: number;
  readonly twice: number;
  readonly swapped: number;
  readonly quoted: number;
  /** The chance in one poll that it comes late, after a gap, or with stamps that go back. */
  readonly late: number;
  readonly gap: number;
  readonly back: number;
}

/** Nothing happens but that gauges move, for longer than it takes to know the usual spacing: from then on batches are only counted. */
export const calmGauges: GaugePoll = {
  cycles: 400,
  units: 4,
  spacing: 10,
  delimiter: ';',
  moves: 0.05,
  writings: [(value) => value.toFixed(1)],
  changes: 0,
  odd: 0,
  missing: 0,
  twice: 0,
  swapped: 0,
  quoted: 0,
  late: 0,
  gap: 0,
  back: 0,
};

/** How exports write numbers: all of them are numbers of a gauge, or none. */
export const writings = {
  decimals: [(value: number) => value.toFixed(1)],
  lengths: [
    (value: number) => value.toFixed(0),
    (value: number) => value.toFixed(1),
    (value: number) => value.toFixed(4),
    (value: number) => String(value * 1000),
  ],
  commas: [(value: number) => value.toFixed(2).replace('.', ','), (value: number) => value.toFixed(1)],
  signs: [
    (value: number) => (50 - value).toFixed(1),
    (value: number) => `-${value.toFixed(0)}`,
    () => '-0',
    () => '0',
  ],
  percent: [(value: number) => `${value.toFixed(1)}%`, (value: number) => `${value.toFixed(0)} %`],
  rare: [
    (value: number) => `+${value.toFixed(0)}`,
    (value: number) => value.toExponential(2),
    (value: number) => value.toFixed(17),
    (value: number) => ` ${value.toFixed(1)}`,
    (value: number) => `00${value.toFixed(1)}`,
    (value: number) => `${value.toFixed(0)}.`,
    (value: number) => value.toFixed(1),
  ],
} as const;

const oddCells = ['n/a', '', '-', 'good', '1,2,3', '4..5'] as const;
const states = [
  ['light', 'steady', 'flashing'],
  ['partner-ready', 'yes', 'no'],
  ['supply', 'good', 'fault'],
] as const;
const gaugeNames = ['load', 'free-memory'] as const;

interface Cell {
  readonly unit: string;
  readonly name: string;
  /** Of a gauge its number as it is written, of a state what it is. */
  text: string;
  readonly next: () => string;
  readonly isGauge: boolean;
}

function cellsOf(poll: GaugePoll, random: () => number): readonly Cell[] {
  const written = (): string => {
    const write = poll.writings[Math.floor(random() * poll.writings.length)];
    return write?.(Math.floor(random() * 1000) / 10) ?? '';
  };
  return Array.from(
    { length: poll.units },
    (_, index) => `RO${1 + (index >> 1)}-${index % 2 === 0 ? 'A' : 'B'}`,
  ).flatMap((unit) => [
    ...states.map(([name, first, other]): Cell => {
      const cell: Cell = {
        unit,
        name,
        text: first,
        next: () => (cell.text === first ? other : first),
        isGauge: false,
      };
      return cell;
    }),
    ...gaugeNames.map((name): Cell => ({ unit, name, text: written(), next: written, isGauge: true })),
  ]);
}

/** The instants of the polls, in seconds. */
function instantsOf(
  { cycles, spacing, late, gap, back }: GaugePoll,
  random: () => number,
): readonly number[] {
  let at = 0;
  return Array.from({ length: cycles }, () => {
    at += spacing + (random() < late ? 3 : 0) + (random() < gap ? 400 : 0) - (random() < back ? 60 : 0);
    return Math.max(0, at);
  });
}

/** The rows of one poll as they stand in the file. */
function rowsOf(
  cells: readonly Cell[],
  stamp: string,
  poll: GaugePoll,
  random: () => number,
): readonly string[] {
  const happens = (chance: number): boolean => random() < chance;
  const rows = cells.flatMap((cell) => {
    if (happens(cell.isGauge ? poll.moves : poll.changes)) cell.text = cell.next();
    const odd =
      cell.isGauge && happens(poll.odd) ? oddCells[Math.floor(random() * oddCells.length)] : undefined;
    const text = odd ?? cell.text;
    const row = [stamp, cell.unit, cell.name, happens(poll.quoted) ? `"${text}"` : text].join(poll.delimiter);
    return happens(poll.missing) ? [] : happens(poll.twice) ? [row, row] : [row];
  });
  for (let place = 1; place < rows.length; place += 1)
    if (happens(poll.swapped)) [rows[place - 1], rows[place]] = [rows[place] ?? '', rows[place - 1] ?? ''];
  return rows;
}

/** A poll of states and gauges with what happens in it, one row per reading. */
export function gaugePoll(stamp: (seconds: number) => string, poll: GaugePoll, random: () => number): string {
  const cells = cellsOf(poll, random);
  const header = ['time', 'unit', 'parameter', 'value'].join(poll.delimiter);
  const rows = instantsOf(poll, random).flatMap((at) => rowsOf(cells, stamp(at), poll, random));
  return `${[header, ...rows].join('\n')}\n`;
}

/** The same as a table with a row for each unit and a column for each of its parameters. */
export function gaugeTable(
  stamp: (seconds: number) => string,
  poll: GaugePoll,
  random: () => number,
): string {
  const cells = cellsOf(poll, random);
  const names = [...states.map(([name]) => name), ...gaugeNames];
  const header = ['time', 'unit', ...names].join(poll.delimiter);
  const rows = instantsOf(poll, random).flatMap((at) => {
    const readings = rowsOf(cells, stamp(at), { ...poll, missing: 0, twice: 0, swapped: 0 }, random).map(
      (row) => row.split(poll.delimiter),
    );
    return Array.from({ length: poll.units }, (_, unit) => {
      const own = readings.slice(unit * names.length, (unit + 1) * names.length);
      const [time = '', name = ''] = own[0] ?? [];
      return [time, name, ...own.map((cell) => cell[3] ?? '')].join(poll.delimiter);
    }).filter(() => random() >= poll.missing);
  });
  return `${[header, ...rows].join('\n')}\n`;
}
