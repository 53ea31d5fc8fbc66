import type { Condition, Finding, NonEmpty, SourceLine, Told, WorkSheet } from '../../src/vocabulary.ts';

/** A text that never ends, with markup in it. */
export const endless = `<b>${'abcdefgh '.repeat(60)}</b>`;

function lines(from: number): NonEmpty<SourceLine> {
  const [first, ...rest] = [0, 1, 2, 3, 4, 5].map((n) => ({
    file: `folder/${'name'.repeat(20)}-${(from + n) % 9}.log`,
    line: from * 10 + n,
    text: endless,
  }));
  if (first === undefined) throw new Error('There is a first line.');
  return [first, ...rest];
}

/** The same sheet with everything that can be long as long as it gets: names, reasons, findings, files, lines. */
export function longSheet(sheet: WorkSheet): WorkSheet {
  const many = Array.from({ length: 40 }, (_, index) => index);
  const told = (of: Told): Told => ({ ...of, value: endless, evidence: lines(3) });
  const finding = (index: number): Finding => ({
    id: 'flapping',
    severity: index % 2 === 0 ? 'critical' : 'warning',
    pair: sheet.pair,
    half: null,
    from: sheet.asOf.time - 1000,
    to: sheet.asOf.time,
    statement: endless,
    figures: {},
    evidence: lines(index),
  });
  const condition = (of: Condition): Condition => ({ ...of, statement: `${of.statement} ${of.statement}` });
  return {
    ...sheet,
    inputs: many.flatMap((index) =>
      sheet.inputs.map((input) => ({ ...input, file: `${'long/'.repeat(30)}${index}-${input.file}` })),
    ),
    job: { workOrder: endless, site: endless, technician: endless, reviewer: endless },
    site: endless,
    standby: { ...sheet.standby, evidence: lines(7) },
    halves: sheet.halves.map((h) => ({
      ...h,
      role: told(h.role),
      light: told(h.light),
      model: told(h.model),
      serial: told(h.serial),
      firmware: told(h.firmware),
      wanted: { firmware: endless, from: 'plan', model: endless },
    })),
    readiness: {
      fit: false,
      reasons: many.map((index) => ({ statement: endless, evidence: lines(index) })),
      evidence: lines(2),
    },
    trouble: many.map(finding),
    losses: many.map((index) => ({ ...sheet.asOf, evidence: lines(index) })),
    // Of the first hold point the sentences are of the log, of the others they are fixed.
    steps: sheet.steps.map((step, index, all) => {
      const { holdPoint } = step;
      if (holdPoint === null || all.findIndex((s) => s.holdPoint !== null) < index) return step;
      const [first, ...rest] = holdPoint.conditions;
      return { ...step, holdPoint: { ...holdPoint, conditions: [condition(first), ...rest.map(condition)] } };
    }),
  };
}
