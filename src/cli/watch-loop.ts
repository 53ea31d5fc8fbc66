import { verify } from '../pipeline.ts';
import { shownZone } from '../report/shown-zone.ts';
import { reportsOf } from '../report/verify-reports.ts';
import { verdictText } from '../report/verify-text.ts';
import { standingOf } from '../report/watch-json.ts';
import { mayConcern, type SwapNow, type Verification } from '../vocabulary.ts';
import { writeBundle } from './bundle-options.ts';
import type { Status } from './command.ts';
import { painterFor } from './paint.ts';
import type { Streams } from './streams.ts';
import { statusOf } from './verify.ts';
import type { WatchDisplay } from './watch-display.ts';
import type { KeptReport, ToKeep } from './watch-report.ts';
import type { Looked, Turn, WatchOptions } from './watch-turns.ts';
import type { WatchWorld } from './watch-world.ts';
import type { WatchedSwaps } from './watched-swaps.ts';

declare const STEADYPAIR_VERSION: string;

/** At most so often is looked. */
const leastTurnMs = 250;
/** A disk that gives no notice of a change is looked at so often. */
const lookMs = 1000;
/** As wide as the text of a command is. */
const mostColumns = 100;

/** A watch that is under way. */
export interface Watch {
  /** Looks at the files, for the last time or not. */
  readonly look: (isLast: boolean) => Promise<Looked>;
  readonly display: WatchDisplay;
  readonly swaps: WatchedSwaps;
  /** `null` where none was asked for. */
  readonly report: KeptReport | null;
  readonly world: WatchWorld;
  readonly streams: Streams;
  readonly options: WatchOptions;
}

/** Reads and shows until nothing is left to wait for, or the world interrupts; gives the last turn, `null` without one. */
export async function turnUntilOver(
  watch: Watch,
  changed: (mostMs: number) => Promise<void>,
): Promise<Turn | null> {
  const { world, display, swaps } = watch;
  const { interrupted } = world;
  const stopTicking = world.everySecond(() => display.tick(world.thisMoment()));
  const arrivals = arrivalsOf();
  let last: Turn | null = null;
  try {
    while (!interrupted.aborted) {
      const began = world.thisMoment();
      const turn = await takeTurn(watch, arrivals, false);
      // The history is read once: it says nothing of how long a turn takes.
      const took = last === null ? 0 : world.thisMoment() - began;
      last = turn ?? last;
      if (swaps.isOver()) return last;
      await keepReport(watch, last);
      await world.pause(Math.max(leastTurnMs - took, took));
      await changed(lookMs);
    }
    // What was written up to now counts.
    return last === null ? null : ((await takeTurn(watch, arrivals, true)) ?? last);
  } finally {
    stopTicking();
  }
}

/** Reads what has changed and shows it; `null` where nothing has. */
async function takeTurn(watch: Watch, arrivals: Arrivals, isLast: boolean): Promise<Turn | null> {
  const { look, display, swaps, world, options } = watch;
  const { turn, told } = await look(isLast);
  for (const line of told) display.tell(line);
  if (turn === null) return null;
  const { now, beside, staff, waitsFor, analysed } = turn;
  swaps.take(now, analysed.timelines);
  const zone = zoneOf(turn, options);
  const arrivedAt = arrivals([...now, ...beside], world.thisMoment());
  display.show({ now, beside, staff, waitsFor, arrivedAt, zone }, world.thisMoment());
  return turn;
}

/** Writes the reports if they are to be written: also where nothing has changed, since it may have been too soon, or have failed. */
async function keepReport(watch: Watch, last: Turn | null): Promise<void> {
  const { report, swaps } = watch;
  if (report !== null && last !== null && swaps.swaps().length > 0) await report.keep(toKeep(watch, last));
}

/** The reports as of a turn. */
function toKeep(watch: Watch, turn: Turn): ToKeep {
  const asked = { zone: zoneOf(turn, watch.options), version: STEADYPAIR_VERSION };
  return {
    standing: turn.now.map(stepsOf).join('\n'),
    read: turn.imported.read,
    reports: () => reportsOf(verificationOf(watch, turn), asked),
  };
}

/** What a report changes by. */
function stepsOf(now: SwapNow): string {
  const { swap } = now;
  const checks = swap?.checks.map((c) => c.status).join(' ') ?? '';
  return `${standingOf(now)} ${swap?.steps.length} ${swap?.otherEvents.length} ${checks}`;
}

/** When the newest row of each pair arrived here. */
type Arrivals = (now: readonly SwapNow[], thisMoment: number) => ReadonlyMap<string, number>;

function arrivalsOf(): Arrivals {
  const newest = new Map<string, number>();
  const arrivedAt = new Map<string, number>();
  return (now, thisMoment) => {
    for (const { pair, at } of now) {
      if (at === newest.get(pair)) continue;
      newest.set(pair, at);
      arrivedAt.set(pair, thisMoment);
    }
    return arrivedAt;
  };
}

/** Writes the reports once more, says where they lie, and the verdict last; gives its status. */
export async function finish(watch: Watch, last: Turn | null): Promise<Status> {
  const { swaps, report, display, options, streams } = watch;
  const all = swaps.swaps();
  const lines =
    report === null || last === null || all.length === 0 ? [] : await report.finish(toKeep(watch, last));
  display.end();
  if (options.json !== true) {
    for (const line of lines) streams.stdout.write(`${line}\n`);
    if (last !== null) {
      const shown = { zone: zoneOf(last, options), paint: painterFor(streams.stdout) };
      const width = Math.min(mostColumns, streams.stdout.screen?.columns() ?? mostColumns);
      streams.stdout.write(verdictText(verificationOf(watch, last), shown, width));
    }
  }
  const bundle = last === null || all.length === 0 ? '' : await bundleOf(last, options);
  if (options.json !== true) streams.stdout.write(bundle);
  return statusOf({ swaps: all });
}

/** The bundle that was asked for, as `verify` writes it of what was read last; gives a line on it. */
async function bundleOf(
  { analysed, imported, job, jobText, pair }: Turn,
  options: WatchOptions,
): Promise<string> {
  const all = { from: null, to: null };
  const verification = verify(analysed, pair, all, job);
  return writeBundle(
    options,
    imported,
    { job: jobText, pair, ...all },
    { kind: 'verify', analysed, verification },
  );
}

/** As `verify` gives it, of the swaps that are watched. */
function verificationOf({ swaps }: Watch, { analysed, job }: Turn): Verification {
  const own = swaps.swaps();
  return {
    inputs: analysed.files.map((f) => f.input),
    job,
    swaps: own,
    findings: analysed.findings.filter((f) => own.some((s) => mayConcern(f, s.pair))),
  };
}

function zoneOf({ analysed }: Turn, { zone }: WatchOptions): string {
  return shownZone(
    zone ?? null,
    analysed.files.map((f) => f.input),
  );
}
