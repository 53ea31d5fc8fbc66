/** The order in which rows are taken, flushed and closed: what cannot be said wrongly, and what throws if it is. */
import { describe, expect, test } from 'vitest';
import type { Row } from '../../../../src/import/bytes/row.ts';
import { fileSink } from '../../../../src/import/changes/file-sink.ts';
import type { Sink } from '../../../../src/import/changes/sink.ts';
import { sinkState } from '../../../../src/import/changes/sink-state.ts';
import { readPhrasebook } from '../../../../src/import/read-phrasebook.ts';
import { type BatchPlace, batchPlace } from '../../../../src/import/row-cache/batch-place.ts';
import { byteRow } from '../../../../src/import/row-cache/byte-row.ts';
import { type Replay, replayInto } from '../../../../src/import/row-cache/replay.ts';
import type { Batch, RowTemplate } from '../../../../src/import/row-cache/row-template.ts';

const line = 'RO1-A,light,steady\n';
const other = 'RO1-A,supply,good\n';
const text = new TextEncoder().encode(line + other);

function rowAt(number: number, content: string): Row {
  return {
    line: number,
    isCut: false,
    cell: (column) => content.trim().split(',')[column] ?? '',
    width: () => 3,
    text: () => content.trim(),
    ownText: () => content.trim(),
    putText: (into) => into.add(content.trim()),
    keep(kept) {
      kept.text = content.trim();
      kept.bytes = null;
    },
  };
}

/** Reads a row as the importers do, at a number of seconds. */
function readAt(seconds: number): (row: Row, sink: Sink) => void {
  return (row, sink) => sink.reading(seconds * 1000, row.cell(0), row.cell(1), row.cell(2));
}

/** A batch of two rows that were read at 0 s, and the sink that read them. */
function opened(): {
  readonly sink: ReturnType<typeof fileSink>;
  readonly replay: Replay;
  readonly batch: Batch;
  readonly at: (chunk: Uint8Array, number: number) => BatchPlace;
} {
  const state = sinkState(readPhrasebook('phrasebook.yaml', null));
  const sink = fileSink(state);
  const replay = replayInto(state);
  const rows = [line, other].map((content, index): RowTemplate => {
    const recorded = sink.take(rowAt(index + 1, content), readAt(0), true) ?? [];
    const readings = recorded.filter((one) => one.kind === 'reading');
    return {
      recorded,
      before: { at: 0, length: 0 },
      parts: [],
      readings,
      gauges: 0,
      next: null,
      instead: null,
      batch: null,
      place: index,
    };
  });
  const batch: Batch = {
    rows,
    bytes: text,
    view: new DataView(text.buffer),
    edges: Int32Array.of(0, line.length, text.length),
    stamps: Int32Array.of(0, line.length),
    stampLength: 0,
    gauges: [[], []],
    time: null,
    timesUnchanged: 0,
    from: 0,
    line: 0,
  };
  const place = batchPlace(byteRow(44, (bytes) => new TextDecoder().decode(bytes)));
  const at = (chunk: Uint8Array, number: number): BatchPlace =>
    Object.assign(place, { bytes: chunk, first: 0, end: 2, from: 0, line: number });
  return { sink, replay, batch, at };
}

/** More polls than it takes to know the usual spacing: from then on a batch that comes in time is only counted. */
const polls = 300;
const after = 10 * polls;
const lineAfter = 2 * polls + 1;

/** Takes the batch every 10 s from one chunk, until it is only counted. */
function untilPending({ replay, batch, at }: ReturnType<typeof opened>, chunk: Uint8Array): void {
  for (let poll = 1; poll < polls; poll += 1)
    expect(replay.takeBatch(batch, 10_000 * poll, at(chunk, 2 * poll + 1))).toBe(true);
  expect(batch.time?.timesPending).toBeGreaterThan(0);
}

describe('rows that are taken by their batch', () => {
  test('come to what the same rows come to that are read one by one', () => {
    const cached = opened();
    untilPending(cached, text.slice());
    // A row that is read notes by itself what is pending.
    cached.sink.take(rowAt(lineAfter, 'RO1-A,light,flashing'), readAt(after), true);
    const plain = fileSink(sinkState(readPhrasebook('phrasebook.yaml', null)));
    for (let poll = 0; poll < polls; poll += 1)
      for (const [index, content] of [line, other].entries())
        plain.take(rowAt(1 + 2 * poll + index, content), readAt(10 * poll), true);
    plain.take(rowAt(lineAfter, 'RO1-A,light,flashing'), readAt(after), true);
    expect(cached.sink.close().result('poll.csv')).toEqual(plain.close().result('poll.csv'));
  });

  test('are noted while their chunk is there: a batch of the next chunk before a flush is a defect', () => {
    const cached = opened();
    untilPending(cached, text.slice());
    const next = text.slice();
    expect(() => cached.replay.takeBatch(cached.batch, 1000 * after, cached.at(next, lineAfter))).toThrow(
      'it was not flushed',
    );
    cached.replay.flush();
    expect(cached.replay.takeBatch(cached.batch, 1000 * after, cached.at(next, lineAfter))).toBe(true);
  });

  test('are noted before the sink is closed', () => {
    const cached = opened();
    untilPending(cached, text.slice());
    expect(() => cached.sink.close()).toThrow('closed while batches are pending');
    cached.replay.flush();
    // Two rows in each poll, those that were read first and those of the batch.
    expect(cached.sink.close().result('poll.csv').rows.read).toBe(2 * polls);
  });
});

test('no row is taken after the sink is closed, and it is closed once', () => {
  const cached = opened();
  const { sink, replay, batch, at } = cached;
  sink.close();
  const wrong = 'after the sink of its file was closed';
  expect(() => sink.take(rowAt(3, line), readAt(10), true)).toThrow(wrong);
  expect(() => replay.takeRow(rowAt(3, line), 10_000, batch.rows[0]?.recorded ?? [], [])).toThrow(wrong);
  expect(() => replay.takeBatch(batch, 10_000, at(text, 3))).toThrow(wrong);
  expect(() => sink.close()).toThrow(wrong);
});
