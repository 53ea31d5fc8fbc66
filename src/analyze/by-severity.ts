import { compareText, type Finding, type Severity } from '../vocabulary.ts';

const severityRank: Readonly<Record<Severity, number>> = { critical: 0, warning: 1, info: 2 };

/** The worst first, then by pair and time. */
export function bySeverity(a: Finding, b: Finding): number {
  return (
    severityRank[a.severity] - severityRank[b.severity] ||
    compareText(a.pair ?? '', b.pair ?? '') ||
    (a.from ?? 0) - (b.from ?? 0)
  );
}
