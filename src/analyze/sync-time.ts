import { type BringUp, type Finding, sayBounds, sayDuration } from '../vocabulary.ts';
import type { Analyzer } from './analyzer.ts';

const words: Readonly<Record<BringUp['cause'], string>> = {
  inserted: 'insertion',
  restart: 'restart',
  reflash: 'reflash',
};

/** How long each bring-up took until the partner was ready. */
export const syncTime: Analyzer = {
  meta: {
    id: 'sync-time',
    question: 'How long did each bring-up take until the partner was ready?',
    needs: ['partner-ready'],
    findings: ['sync-time', 'sync-unfinished'],
  },
  analyze({ bringUps, readiness }) {
    const judged = bringUps.filter((b) => b.sync.seconds !== null);
    return {
      checked: judged.length,
      notObserved: bringUps.length - judged.length,
      findings: judged.flatMap((b) => {
        if (b.ready !== null) return [readyFinding(b)];
        const ready = readiness.steps.findLast((s) => s.time <= b.watchedTo)?.value === 'yes';
        return b.outcome === 'unfinished' && !ready ? [unfinishedFinding(b)] : [];
      }),
    };
  },
};

function readyFinding(bringUp: BringUp): Finding {
  const { half, cause, sync, settledSeconds, outcome } = bringUp;
  const bounds = sayBounds(sync.low ?? 0, sync.high ?? 0);
  const held = outcome === 'settled' ? ' and stayed ready' : `, but did not stay ready (${outcome})`;
  const again =
    settledSeconds !== null && settledSeconds !== sync.seconds
      ? `, and stayed ready from ${sayDuration(settledSeconds)}`
      : '';
  const derived =
    bringUp.startDerived && cause === 'reflash' ? ', counted from the change of the reported firmware' : '';
  return {
    ...frame(bringUp),
    id: 'sync-time',
    severity: 'info',
    to: bringUp.ready?.time ?? bringUp.watchedTo,
    statement: `Half ${half} was ready ${bounds} after its ${words[cause]}${held}${again}${derived}.`,
  };
}

function unfinishedFinding(bringUp: BringUp): Finding {
  const { half, cause, sync } = bringUp;
  return {
    ...frame(bringUp),
    id: 'sync-unfinished',
    severity: 'warning',
    to: bringUp.watchedTo,
    statement: `Half ${half} was not ready ${sayDuration(sync.seconds ?? 0)} after its ${words[cause]}, when observation ended.`,
  };
}

function frame(bringUp: BringUp): Omit<Finding, 'id' | 'severity' | 'to' | 'statement'> {
  const { pair, half, start, sync, settledSeconds, cause, firmware, evidence } = bringUp;
  return {
    pair,
    half,
    from: start.time,
    figures: { cause, firmware, seconds: sync.seconds, low: sync.low, high: sync.high, settledSeconds },
    evidence,
  };
}
