import type { Finding, Fleet } from '../vocabulary.ts';

const mostFindings = 50;

/** The findings of warning or worse that a report on a fleet tells, the worst first as they are given, and how many more. */
export function toldOfFleet({ findings }: Fleet): {
  readonly told: readonly Finding[];
  readonly leftOut: number;
} {
  const worse = findings.filter((f) => f.severity !== 'info');
  const told = worse.slice(0, mostFindings);
  return { told, leftOut: worse.length - told.length };
}
