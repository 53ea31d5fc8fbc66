import type { Condition, HoldPoint, Told, WorkSheet, WorkStep } from '../vocabulary.ts';
import { toJson } from './json.ts';
import { findingDocument } from './verify-json.ts';

/** The JSON document of `prepare`. Source: design.md, section 8. */
export function prepareJson(sheet: WorkSheet): string {
  const { inputs, pair, site, madeAt, asOf, standby, readiness, exposure, losses, troubleDays } = sheet;
  return toJson({
    schema: 'steadypair/prepare/1',
    inputs,
    pair,
    site,
    madeAt: instant(madeAt),
    asOf,
    standby: {
      half: standby.half,
      because: standby.because,
      restsOn: standby.restsOn,
      seenAt: standby.seenAt,
      ageSeconds: standby.ageSeconds,
      evidence: standby.evidence,
    },
    halves: sheet.halves.map(({ half, role, light, model, serial, firmware, wanted }) => ({
      half,
      role: role.value,
      light: light.value,
      model: model.value,
      serial: serial.value,
      firmware: firmware.value,
      concluded: role.isConcluded,
      wanted,
      evidence: linesOf([role, light, model, serial, firmware]),
    })),
    readiness,
    exposure,
    steps: sheet.steps.map(stepDocument),
    trouble: sheet.trouble.map(findingDocument),
    losses,
    troubleDays,
  });
}

function instant(time: number): { readonly time: number; readonly earliest: number } {
  return { time, earliest: time };
}

function linesOf(told: readonly Told[]): Told['evidence'] {
  const all = told.flatMap(({ evidence }) => evidence);
  return [...new Map(all.map((line) => [`${line.file}\n${line.line}`, line])).values()];
}

function stepDocument({ id, half, title, limitSeconds, holdPoint, expected }: WorkStep): unknown {
  return {
    id,
    half,
    title,
    limitSeconds,
    holdPoint: holdPoint?.status ?? null,
    conditions: (holdPoint?.conditions ?? noConditions).map(conditionDocument),
    expected: expected === null ? null : { median: expected.median, p95: expected.p95, n: expected.n },
  };
}

const noConditions: readonly HoldPoint['conditions'][number][] = [];

function conditionDocument({ id, half, status, statement, evidence }: Condition): unknown {
  return { id, half, status, statement, evidence };
}
