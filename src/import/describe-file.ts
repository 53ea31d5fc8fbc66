import type { ImportedFile, Input, Notice } from '../vocabulary.ts';
import type { Encoding } from './bytes/decode.ts';
import type { FileSource } from './bytes/file-source.ts';
import { InputError } from './bytes/input-error.ts';
import type { ZeroBytes } from './bytes/zero-bytes.ts';
import type { DoubtfulPair } from './changes/doubtful-pairs.ts';
import { damagedArchive, zeroNotices } from './changes/row-notices.ts';
import type { ClosedSink } from './changes/sink.ts';
import type { ChosenOrder } from './clock/choose-order.ts';
import type { ChosenZone } from './clock/choose-zone.ts';
import { clockNotices, orderNotices, stepNotices } from './clock/clock-notices.ts';
import type { ClockStep } from './clock/clock-order.ts';
import { settleRepeatedHour } from './clock/repeated-hour.ts';
import type { TimeReader } from './clock/time-reader.ts';
import { doubtfulNotices } from './doubtful-notices.ts';
import { refuseStamps } from './doubtful-stamps.ts';
import type { ImportOptions } from './import-options.ts';
import { columnsOf } from './layouts/columns.ts';
import type { Importer } from './layouts/importer.ts';
import type { Plan } from './layouts/recognise.ts';
import { idleKeys } from './layouts/rule-effects.ts';
import type { FileRule } from './phrasebook/phrasebook-rules.ts';

/** What reading the bytes of a file gave besides its rows. */
export interface Done {
  readonly sha256: string;
  readonly bytes: number;
  /** What is wrong where the bytes end before their time. */
  readonly damage: string | null;
  readonly zeros: ZeroBytes;
}

/** How a file was read, and what came of it. */
export interface Parts extends Done {
  readonly encoding: Encoding;
  readonly plan: Plan;
  readonly order: ChosenOrder;
  readonly zone: ChosenZone;
  readonly times: TimeReader;
  readonly sink: ClosedSink;
  readonly steps: readonly ClockStep[];
  /** Names that look like one of a pair, and are none. */
  readonly doubtful: readonly DoubtfulPair[];
}

/** One file as the timeline takes it. Throws InputError if no row of it could be used. */
export function assemble(
  source: FileSource,
  options: ImportOptions,
  parts: Parts,
  rule: FileRule | undefined,
): ImportedFile {
  const { plan, encoding, zone, times, sink } = parts;
  const result = sink.result(source.name);
  const { streams, changes, gauges, notices, rows, unknown, parameters, units } = result;
  refuseUseless(source.name, plan, rows, notices);
  refuseStamps({ file: source.name, plan, times, result });
  const settled = settleRepeatedHour({ streams, changes, extent: times.extent() }, times.doubts());
  const input: Input = {
    file: source.name,
    sha256: parts.sha256,
    bytes: parts.bytes,
    ...(source.container === undefined ? {} : { container: source.container }),
    layout: plan.importer.id,
    encoding: encoding.label,
    delimiter: plan.delimiter,
    zone: times.usedZone() ? zone.zone.name : 'UTC',
    rows,
    from: settled.extent?.from ?? null,
    to: settled.extent?.to ?? null,
    units,
    unmatched: unknown.map(({ wording, count, firstLine }) => ({ wording, count, firstLine })),
  };
  return {
    input,
    resolution: times.hasDecimals() ? 0 : 1000,
    site: options.phrasebook.site,
    ...(times.usedZone() || zone.assumed ? {} : { zone: zone.zone.name }),
    streams: settled.streams,
    changes: settled.changes,
    gauges,
    notices: noticesOf(source.name, parts, result),
    reasons: reasonsOf(parts, rule),
    columns: columnsOf(plan, options.phrasebook),
    // Where columns are parameters, the columns tell them.
    parameters: hasParameterColumns(plan.importer) ? [] : parameters,
    unknown,
  };
}

/** What is to be noted of a file, the doubts first. */
function noticesOf(file: string, parts: Parts, result: ReturnType<ClosedSink['result']>): readonly Notice[] {
  const { plan, encoding, zone, times, doubtful, damage } = parts;
  const first = result.streams[0]?.first;
  return [
    ...doubtfulNotices({ file, plan, doubtful, result }),
    ...result.notices,
    ...(damage === null ? [] : [damagedArchive(file, damage, result.last)]),
    ...zeroNotices(file, parts.zeros, encoding.label.startsWith('utf-16') ? 2 : 1),
    ...idleKeys(file, plan, first),
    ...stepNotices(file, parts.steps),
    ...orderNotices(file, parts.order),
    ...clockNotices(file, zone, times, first),
  ];
}

function hasParameterColumns(importer: Importer): boolean {
  return importer.shape === 'table' && importer.columns.others !== 'unknown';
}

function refuseUseless(name: string, plan: Plan, rows: Input['rows'], notices: readonly Notice[]): void {
  if (rows.read === 0) {
    const what = plan.hasHeader ? 'the file has a header but no rows.' : 'the file has no lines to read.';
    throw new InputError(name, what, 'Export it again over a longer time.');
  }
  const rejected = notices.find((n) => n.id === 'rejected-rows' || n.id === 'damaged-tail');
  if (rows.rejected + rows.ignored === rows.read && rejected !== undefined) {
    throw new InputError(
      `${name}:${rejected.lines[0].line}`,
      `no row could be used: ${rejected.what}`,
      rejected.fix,
      'unreadable',
      rejected.setting,
    );
  }
}

function reasonsOf(
  { plan, encoding, zone, times, order }: Parts,
  rule: FileRule | undefined,
): readonly string[] {
  const ruled = rule === undefined ? '' : ` (phrasebook rule for ${rule.match})`;
  const names: Readonly<Record<string, string>> = {
    ',': 'comma',
    ';': 'semicolon',
    '\t': 'tab',
    '|': 'pipe',
  };
  return [
    `Read as ${plan.importer.id}${ruled}: ${plan.because}.`,
    ...(rule?.of === undefined
      ? []
      : [`Rows that name no unit are about ${rule.of.text}, from the phrasebook.`]),
    ...(plan.hasHeader && plan.headerLine > 1
      ? [`Header in line ${plan.headerLine}; the lines before it are preamble.`]
      : []),
    `Encoding ${encoding.label}: ${encoding.because}.`,
    ...(plan.delimiter === null ? [] : [`Delimiter: ${names[plan.delimiter] ?? plan.delimiter}.`]),
    times.usedZone() ? `Time zone ${zone.zone.name}: ${zone.because}.` : 'Timestamps carry their own offset.',
    ...(times.yearTaken() === undefined
      ? []
      : [
          `Year ${times.yearTaken()} for its first timestamp, which has none: the nearest to the other files.`,
        ]),
    ...(order.because === null ? [] : [`Date order ${order.order ?? 'open'}: ${order.because}.`]),
  ];
}
