import type { Row } from '../bytes/row.ts';
import type { Recorded } from '../changes/recorded.ts';
import { checkOpen, type SinkState } from '../changes/sink-state.ts';
import type { BatchPlace } from './batch-place.ts';
import { checkChunk, endCycle, flushPending, noPending } from './pending-batches.ts';
import type { Batch } from './row-template.ts';
import { takeBatch } from './take-batch.ts';
import { takeRow } from './take-row.ts';

/**
 * Takes rows that were read before, by what was recorded of them then. The calls for one file, in their order:
 *
 * 1. rows as they stand in the file: `take` of the sink reads one that is not known, and gives what is recorded of it;
 *    `takeRow` takes a row that is known, `takeBatch` several under one stamp. A row cannot be left half taken: none of
 *    the three has a call to begin or to end it. `take` and `takeRow` note by themselves what is pending.
 * 2. `flush` after the last row of each chunk, while its bytes are still there: `takeBatch` throws if the chunk is another
 *    and batches of the one before are still pending.
 * 3. `close` of the sink after all rows: it throws if batches are pending, and any row that is taken afterwards throws.
 *
 * What is thrown is an Error that names the defect: no file can bring it about.
 */
export interface Replay {
  /** Takes a row at another instant: `numbers` are those of its gauges. */
  takeRow(row: Row, at: number, recorded: readonly Recorded[], numbers: ArrayLike<number>): void;
  /**
   * Takes rows of a batch, under one stamp, that repeat what is so already. `false`, and nothing is taken, where that is not
   * all there is to them.
   */
  takeBatch(batch: Batch, at: number, place: BatchPlace): boolean;
  /** The bytes of the chunk are about to go: notes what is pending. */
  flush(): void;
}

/** Takes rows into the state of a sink, which keeps to the order of the calls from then on. */
export function replayInto(state: SinkState): Replay {
  const pending = noPending();
  state.cache = {
    beforeRow: () => endCycle(pending),
    beforeClose() {
      if (pending.waiting.length > 0)
        throw new Error('The sink was closed while batches are pending: the last chunk was not flushed.');
    },
  };
  return {
    takeRow: (row, at, recorded, numbers) => takeRow(state, pending, row, at, recorded, numbers),
    takeBatch(batch, at, place) {
      checkOpen(state);
      checkChunk(pending, place.bytes);
      return takeBatch(state, pending, batch, at, place);
    },
    flush: () => flushPending(pending),
  };
}
