import { runningClock } from '../pipeline.ts';
import { shortCaution } from '../report/cautions.ts';
import { terminal } from '../report/escape.ts';
import { otherPairLine, type PanelOptions, panelText } from '../report/panel.ts';
import { isPastLimit, type PanelClock } from '../report/panel-clock.ts';
import { cut, inLine } from '../report/panel-fit.ts';
import { staffKey } from '../report/panel-staff.ts';
import type { SwapNow } from '../vocabulary.ts';
import { inPlace } from './in-place.ts';
import { painterFor } from './paint.ts';
import type { Screen, Streams } from './streams.ts';
import type { WatchDisplay, WatchView } from './watch-display.ts';

const bell = '\u0007';

/** A panel drawn in place on a terminal; its bell rings when a limit passes or a wait ends. */
export function panelDisplay(
  { stdout, stderr }: Streams,
  screen: Screen,
  thisMoment: () => number,
): WatchDisplay {
  const place = inPlace(stdout, screen);
  const paint = painterFor(stdout);
  const bells = bellFor();
  let view: WatchView | null = null;
  const draw = (at: number): void => {
    if (view !== null) place.draw(linesOf(view, at, { paint, screen }));
  };
  const stopResizing = screen.onResize(() => draw(thisMoment()));
  return {
    show(seen, at) {
      if (view === null) stdout.write(`${staffKey.join('\n')}\n\n`);
      view = seen;
      draw(at);
      if (bells(seen, at)) stdout.write(bell);
    },
    tick(at) {
      draw(at);
      if (view !== null && bells(view, at)) stdout.write(bell);
    },
    tell(line) {
      place.clear();
      stderr.write(`${terminal(line)}\n`);
      draw(thisMoment());
    },
    end() {
      stopResizing();
      place.end();
    },
  };
}

function linesOf(
  view: WatchView,
  thisMoment: number,
  { paint, screen }: { readonly paint: PanelOptions['paint']; readonly screen: Screen },
): readonly string[] {
  const { now, beside, staff, waitsFor, zone } = view;
  const [first, ...others] = [...now, ...beside];
  const width = screen.columns();
  // The cursor stands on the row below.
  const rows = Math.max(1, screen.rows() - 1);
  const options = (now: SwapNow): PanelOptions => ({
    zone,
    paint,
    clock: clockOf(now, view, thisMoment),
    staff,
    width,
  });
  if (first === undefined) return [cut(inLine(waitsFor), width), cut(shortCaution, width)];
  const panel = panelText(first, options(first));
  // Where the window is too low the last line that goes is the caution.
  if (rows < panel.length) return [...panel.slice(0, rows - 1), ...panel.slice(-1)];
  return [...panel, ...othersIn(others, rows - panel.length, (now) => otherPairLine(now, options(now)))];
}

/** A line for each of the other pairs; where there is no room for all, the last line says how many are left out. */
function othersIn(
  others: readonly SwapNow[],
  rows: number,
  line: (now: SwapNow) => string,
): readonly string[] {
  if (others.length <= rows) return others.map(line);
  if (rows === 0) return [];
  return [...others.slice(0, rows - 1).map(line), `and ${others.length - rows + 1} more pairs in work`];
}

/** The log's own clock as it stands now. */
export function clockOf(now: SwapNow, { arrivedAt }: WatchView, thisMoment: number): PanelClock {
  const arrived = arrivedAt.get(now.pair) ?? thisMoment;
  return { ...runningClock(now, arrived, thisMoment), behindSeconds: (arrived - now.at) / 1000 };
}

/** Says when to ring: a limit has passed, or a wait has ended, since it was last asked. Never for what was so at first. */
function bellFor(): (view: WatchView, thisMoment: number) => boolean {
  const before = new Map<string, { readonly wait: string; readonly isPast: boolean }>();
  return (view, thisMoment) => {
    let rings = false;
    for (const now of view.now) {
      const wait = JSON.stringify([now.awaits, now.half]);
      const isPast = isPastLimit(now, clockOf(now, view, thisMoment).at);
      const last = before.get(now.pair);
      before.set(now.pair, { wait, isPast });
      if (last !== undefined && (last.wait !== wait || (isPast && !last.isPast))) rings = true;
    }
    return rings;
  };
}
