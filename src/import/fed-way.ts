import { InputError } from './bytes/input-error.ts';
import type { DoubtfulPair } from './changes/doubtful-pairs.ts';
import type { ChosenOrder } from './clock/choose-order.ts';
import type { ClockStep } from './clock/clock-order.ts';
import type { Parts } from './describe-file.ts';
import { partsOf, type Way } from './read-file.ts';
import { type OpenPass, openPass, type Passed } from './read-rows.ts';

/** Hands on all bytes that were fed so far; `null` where they are nowhere any more. */
export type ReadSoFar = ((take: (chunk: Uint8Array) => void) => Promise<void>) | null;

/** What the bytes of a file are besides its rows. */
type Digested = Pick<Passed, 'sha256' | 'bytes' | 'damage'>;

/** A file that is fed, read in one encoding. */
export interface FedWay {
  /** Takes the next bytes, which stand at a place of the file. */
  push(chunk: Uint8Array, at: number): void;
  rows(): number;
  taken(): number;
  /**
   * What the bytes so far come to; after `isEnded`, with a last line as it stands, and for the last time. `isWaiting`: an open
   * quote keeps lines back. Throws InputError as reading the file would.
   */
  soFar(digested: Digested, readSoFar: ReadSoFar, isEnded: boolean): Promise<Fed>;
}

export interface Fed {
  readonly parts: Parts & Passed;
  readonly isWaiting: boolean;
}

/** One of the passes over a file: over its rows as they stand, without what names no pair, and sorted. */
interface Held {
  readonly key: string;
  readonly pass: OpenPass;
  readonly steps: readonly ClockStep[];
  readonly doubtful: readonly DoubtfulPair[];
  /** How many bytes there were when it was begun. */
  readonly begunAt: number;
}

type Slot = 'first' | 'told' | 'sorted';

interface State {
  readonly name: string;
  readonly way: Way;
  order: ChosenOrder | null;
  readonly held: Map<Slot, Held>;
  /** Up to there the order of dates was looked for. */
  scanned: number;
}

/** Up to so many bytes a file is read again in a moment. Chosen here. */
const soonRead = 16_777_216;
/** A larger one is read again when it has grown by a tenth. Chosen here. */
const againFrom = 1.1;

/**
 * Begins to read a file that is fed. `scanned`: up to where the bytes were looked at for the order of its dates.
 *
 * Its passes stay open, as a whole reading would need them: over the rows as they stand; where names were found to be none of
 * a pair, without those; where rows are out of order, sorted. What a pass did not see from its beginning is read again whole: when a
 * pass is first needed, when other names are found to be none, when a clock step is found or found to be none, when a row
 * comes that belongs before what was sorted already, when a record goes on that was taken for whole, and when the order of day
 * and month is settled. Up to 16 MB that is done at once; a larger file that has such a pass is read again when it has grown by a
 * tenth, and until then the pass that there is goes on.
 */
export function fedWay(name: string, way: Way, scanned: number): FedWay {
  const state: State = { name, way, order: null, held: new Map(), scanned };
  try {
    state.order = way.scan.chosen();
    begin(state, 'first', { key: '', steps: null, doubtful: [] }, 0);
  } catch (error) {
    // It is thrown when it is asked for what the file says: what follows may settle it.
    if (!isOrderOpen(error)) throw error;
  }
  return {
    push(chunk, at) {
      scan(state, chunk, at);
      for (const { pass } of state.held.values()) pass.push(chunk);
    },
    rows: () => state.held.get('first')?.pass.rows() ?? 0,
    taken: () => Math.max(0, ...[...state.held.values()].map(({ pass }) => pass.taken())),
    soFar: (digested, readSoFar, isEnded) => soFar(state, digested, readSoFar, isEnded),
  };
}

function isOrderOpen(error: unknown): boolean {
  return error instanceof InputError && error.kind === 'date-order';
}

function scan(state: State, chunk: Uint8Array, at: number): void {
  const { scan: order } = state.way;
  const end = at + chunk.length;
  if (!order.isOpen() || end <= state.scanned) return;
  order.push(chunk.subarray(Math.max(0, state.scanned - at)));
  state.scanned = end;
}

async function soFar(state: State, digested: Digested, readSoFar: ReadSoFar, isEnded: boolean): Promise<Fed> {
  const order = settledOrder(state);
  const { bytes } = digested;
  const reads = new Map<OpenPass, ReturnType<OpenPass['soFar']>>();
  const hold = async (
    slot: Slot,
    of: Begun,
  ): Promise<Held & { readonly read: ReturnType<OpenPass['soFar']> }> => {
    const held = (await heldNow(state, slot, of, bytes, readSoFar)) ?? state.held.get('first');
    if (held === undefined) throw lost(state.name);
    const known = reads.get(held.pass);
    const read = known ?? (isEnded ? { ...held.pass.end(), isWaiting: false } : held.pass.soFar());
    reads.set(held.pass, read);
    return { ...held, read };
  };
  const first = await hold('first', { key: '', steps: null, doubtful: [] });
  const { doubtful } = first.read.sink;
  const pairs = JSON.stringify(doubtful.map((d) => d.pair));
  if (doubtful.length === 0) state.held.delete('told');
  const told = doubtful.length > 0 ? await hold('told', { key: pairs, steps: null, doubtful }) : first;
  const { steps, outOfOrder } = told.read.sink;
  if (outOfOrder === 0) state.held.delete('sorted');
  const key = `${pairs}${JSON.stringify(steps)}`;
  const passed = outOfOrder > 0 ? await hold('sorted', { key, steps, doubtful: told.doubtful }) : told;
  const own = passed === told ? steps : passed.steps;
  const parts = partsOf(state.way, order, own, passed.doubtful, { ...passed.read, ...digested });
  return { parts, isWaiting: [...reads.values()].some((read) => read.isWaiting) };
}

/** Its bytes went before they could be read in the right way. */
function lost(name: string): InputError {
  return new InputError(name, 'it was replaced before it was read.', 'Export it again if it matters.');
}

/** The order of day and month; where it is not what it was before, nothing that was read so counts. */
function settledOrder(state: State): ChosenOrder {
  const order = state.way.scan.chosen();
  if (JSON.stringify(order) !== JSON.stringify(state.order)) state.held.clear();
  state.order = order;
  return order;
}

interface Begun {
  readonly key: string;
  readonly steps: readonly ClockStep[] | null;
  readonly doubtful: readonly DoubtfulPair[];
}

/** The pass that is asked for; the one that stands in its place, where the file is not to be read again yet. */
async function heldNow(
  state: State,
  slot: Slot,
  of: Begun,
  bytes: number,
  readSoFar: ReadSoFar,
): Promise<Held | undefined> {
  const known = state.held.get(slot);
  if (known !== undefined && known.key === of.key && !known.pass.isOutdated()) return known;
  const isDue = known === undefined || bytes <= soonRead || bytes >= known.begunAt * againFrom;
  if (!isDue || readSoFar === null) return known;
  const { pass } = begin(state, slot, of, bytes);
  await readSoFar(pass.push);
  return state.held.get(slot);
}

function begin({ way, order, held }: State, slot: Slot, of: Begun, bytes: number): Held {
  if (order === null) throw new Error('The order of dates is not known.');
  const { key, steps, doubtful } = of;
  const pass = openPass(way.reading(order, steps, new Set(doubtful.map((d) => d.pair))));
  const begun = { key, pass, steps: steps ?? [], doubtful, begunAt: bytes };
  held.set(slot, begun);
  return begun;
}
