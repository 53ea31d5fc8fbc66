import type { BringUp, Finding, Measure, OpenSwap, Swap, Switchover, Verification } from '../vocabulary.ts';
import { toJson } from './json.ts';
import { statementInCommand } from './settings.ts';

/** The JSON document of `verify`. Source: design.md, section 8. */
export function verifyJson({ inputs, swaps, findings }: Verification): string {
  return toJson({
    schema: 'steadypair/verify/2',
    inputs,
    swaps: swaps.map(swapDocument),
    findings: findings.map(findingDocument),
  });
}

function swapDocument(swap: Swap): unknown {
  const { pair, from, to, verdict, statement, open, halves, bringUps, switchovers, exposure, checks } = swap;
  return {
    pair,
    from,
    to,
    verdict,
    statement,
    open: open === null ? null : openDocument(open),
    halves: halves.map(({ half, removedAt, insertedAt, model, serial, firmware }) => ({
      half,
      removedAt,
      insertedAt,
      model,
      serial,
      firmware: { before: firmware.before, found: firmware.found, after: firmware.after },
    })),
    bringUps: bringUps.map(bringUpDocument),
    switchovers: switchovers.map(switchoverDocument),
    exposure,
    checks: checks.map(({ id, status, statement: said, evidence }) => ({
      id,
      status,
      statement: said,
      evidence,
    })),
  };
}

function openDocument({ awaits, half, since, limitSeconds, holdPoint, conditions }: OpenSwap): unknown {
  return {
    awaits,
    half,
    since,
    limitSeconds,
    holdPoint,
    conditions: conditions.map(({ id, half: of, status, statement, evidence }) => ({
      id,
      half: of,
      status,
      statement,
      evidence,
    })),
  };
}

/** A bring-up as every document gives it. */
export function bringUpDocument(bringUp: BringUp): unknown {
  const { pair, half, cause, start, firmware, outcome, sync, settledSeconds, light } = bringUp;
  return {
    pair,
    half,
    cause,
    start,
    firmware,
    outcome,
    sync: measureDocument(sync),
    settledSeconds,
    light: measureDocument(light),
  };
}

/** A measure as every document gives it. */
export function measureDocument({ seconds, low, high, censored, outcome }: Measure): unknown {
  return { seconds, low, high, censored, outcome };
}

function switchoverDocument({
  pair,
  at,
  fromHalf,
  toHalf,
  commanded,
  partnerReady,
  firmwareMatched,
  gapSeconds,
}: Switchover): unknown {
  return { pair, at, fromHalf, toHalf, commanded, partnerReady, firmwareMatched, gapSeconds };
}

/** A finding as every document gives it. */
export function findingDocument(finding: Finding): unknown {
  const { id, severity, pair, half, from, to, figures, evidence } = finding;
  const statement = statementInCommand(finding);
  return { id, severity, pair, half, from, to, statement, figures, evidence };
}
