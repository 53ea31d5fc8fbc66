import { type BatchBuilder, batchBuilder } from './batch-builder.ts';
import { type BatchPlace, batchPlace } from './batch-place.ts';
import { type ByteRow, byteRow } from './byte-row.ts';
import { type ByteStamps, byteStamps } from './byte-stamps.ts';
import { type Cells, endsOfCells, noCells } from './cells.ts';
import type { LaneOptions } from './lane.ts';
import type { RowTemplate } from './row-template.ts';
import { type ShapeStore, shapeStore } from './shape-store.ts';
import { isByLine, type TemplateStore, templateStore } from './template-store.ts';

/** Everything that the lane of one file knows. */
export interface LaneState extends LaneOptions {
  readonly stamps: ByteStamps;
  readonly templates: TemplateStore;
  readonly shapes: ShapeStore;
  readonly row: ByteRow;
  readonly place: BatchPlace;
  readonly cells: Cells;
  readonly ends: Uint8Array;
  /** Rows come in the order of the poll before. */
  readonly isPeriodic: boolean;
  readonly builder: BatchBuilder;
  /** The line that the next row begins on. */
  line: number;
  /** The start of a line whose end is in the next chunk. */
  rest: Uint8Array;
  /** The general reader has the start of that line. */
  isEndless: boolean;
  /** The row before, if it has a template. */
  before: RowTemplate | null;
}

/** Before the first row. */
export function laneState(options: LaneOptions): LaneState {
  const isPeriodic = options.places.values.length > 0;
  const stamps = byteStamps(options.times, isPeriodic);
  return {
    ...options,
    stamps,
    templates: templateStore(options.places, stamps, options.delimiter),
    shapes: shapeStore(isByLine(options.places) ? options.places.message : -1),
    row: byteRow(options.delimiter, options.decode),
    place: batchPlace(byteRow(options.delimiter, options.decode)),
    cells: noCells(),
    ends: endsOfCells(options.delimiter),
    isPeriodic,
    builder: batchBuilder(),
    line: 1,
    rest: new Uint8Array(0),
    isEndless: false,
    before: null,
  };
}
