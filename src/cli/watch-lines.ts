import { cautions } from '../report/cautions.ts';
import { terminal } from '../report/escape.ts';
import { documentedOf, standingOf, watchJson } from '../report/watch-json.ts';
import { changeLine, silentLine } from '../report/watch-lines.ts';
import type { SwapNow } from '../vocabulary.ts';
import type { Streams } from './streams.ts';
import type { WatchDisplay, WatchView } from './watch-display.ts';
import { clockOf } from './watch-panel.ts';

/** A document a line at every change; what is waited for before the first goes to stderr. */
export function jsonDisplay({ stdout, stderr }: Streams): WatchDisplay {
  const changed = changedSince(documentedOf);
  const waiting = onceEach((line) => stderr.write(`${terminal(line)}\n`));
  return {
    show({ now, waitsFor }) {
      if (now.length === 0) waiting(waitsFor);
      for (const one of now) if (changed(one)) stdout.write(watchJson(one));
    },
    tick: () => undefined,
    tell: (line) => stderr.write(`${terminal(line)}\n`),
    end: () => undefined,
  };
}

/** A line at every change, for an output that is no terminal. */
export function lineDisplay({ stdout, stderr }: Streams): WatchDisplay {
  const changed = changedSince(standingOf);
  const waiting = onceEach((line) => stdout.write(`${terminal(line)}\n`));
  const silent = new Set<string>();
  let view: WatchView | null = null;
  return {
    show(seen) {
      // Not before the first look: an output that lies among the logs must be empty then.
      if (view === null) stdout.write(`${cautions.join(' ')}\n`);
      view = seen;
      if (seen.now.length === 0) waiting(seen.waitsFor);
      for (const one of seen.now) if (changed(one)) stdout.write(`${changeLine(one, seen.zone)}\n`);
    },
    tick(thisMoment) {
      for (const one of view?.now ?? []) {
        if (view === null) return;
        const { at, isSilent } = clockOf(one, view, thisMoment);
        if (isSilent && !silent.has(one.pair) && one.awaits !== null)
          stdout.write(`${silentLine(one, at, view.zone)}\n`);
        if (isSilent) silent.add(one.pair);
        else silent.delete(one.pair);
      }
    },
    tell: (line) => stderr.write(`${terminal(line)}\n`),
    end: () => undefined,
  };
}

/** Whether a pair stands otherwise than when it was last asked for. */
function changedSince(changeOf: (now: SwapNow) => string): (now: SwapNow) => boolean {
  const before = new Map<string, string>();
  return (now) => {
    const change = changeOf(now);
    if (before.get(now.pair) === change) return false;
    before.set(now.pair, change);
    return true;
  };
}

/** Tells a line unless it was the last one told. */
function onceEach(tell: (line: string) => void): (line: string) => void {
  let last = '';
  return (line) => {
    if (line !== last) tell(line);
    last = line;
  };
}
