import type { Finding, Input, NonEmpty, SourceLine, WorkSheet, WorkStep } from '../vocabulary.ts';
import { byFile, type EvidenceList, evidenceBehind } from './evidence.ts';

/** The first of a list, so many as a sheet of two pages has room for, and how many more there are. */
export interface Shown<T> {
  readonly shown: readonly T[];
  readonly more: number;
}

const mostReasons = 4;
const mostTrouble = 3;
const mostFiles = 4;
const mostLines = 22;
/** A reason or a finding takes two lines of the page, which the evidence leaves out. */
const linesEach = 2;

/** How much of a text has room: a name in a cell, a sentence, an item of a list. The whole of it is in prepare.json. */
const lengths = { name: 28, cell: 90, item: 150, sentence: 200, line: 400 } as const;

/** A text cut to what has room, with `…` where it was. */
export function clipped(text: string, as: keyof typeof lengths = 'name'): string {
  const characters = [...text];
  const most = lengths[as];
  return characters.length <= most ? text : `${characters.slice(0, most - 1).join('')}…`;
}

/** A file's name, of a long path its end: that is where files differ. */
export function clippedFile(file: string, most: number): string {
  const characters = [...file];
  return characters.length <= most ? file : `…${characters.slice(1 - most).join('')}`;
}

/** Whether the hold point of a step stands as the log has it: that of the first removal. The others are of work that is not begun. */
export function isOfLog(step: WorkStep, { steps }: WorkSheet): boolean {
  return step === steps.find(({ holdPoint }) => holdPoint?.id === 'removal');
}

/** Whether the hold point of a step stands behind it, not before: one leaves the cabinet after the soak. */
export function isBehind({ holdPoint }: WorkStep): boolean {
  return holdPoint?.id === 'leaving';
}

export function shownReasons({ readiness: { reasons } }: WorkSheet): Shown<(typeof reasons)[number]> {
  return firstOf(reasons, mostReasons);
}

export function shownTrouble({ trouble }: WorkSheet): Shown<Finding> {
  return firstOf(trouble, mostTrouble);
}

/** The files that the sheet cites first, then the others in their order. */
export function shownFiles(sheet: WorkSheet): Shown<Input> {
  const cited = new Set(sheetEvidence(sheet).lines.map(({ file }) => file));
  const own = sheet.inputs.filter(({ file }) => cited.has(file));
  return firstOf([...own, ...sheet.inputs.filter(({ file }) => !cited.has(file))], mostFiles);
}

/** The numbered lines that the sheet rests on, the answer's before the rest, in the order of their files. */
export function sheetEvidence(sheet: WorkSheet): EvidenceList {
  const { standby, readiness, halves, losses, steps } = sheet;
  const fit = behind(readiness.evidence);
  const told = halves
    .flatMap((h) => [h.role, h.light, h.model, h.serial, h.firmware])
    .flatMap((t) => behind(t.evidence));
  const first = steps.find((step) => isOfLog(step, sheet));
  const things = [
    standby,
    ...shownReasons(sheet).shown,
    ...fit,
    ...told,
    ...(first?.holdPoint?.conditions ?? []),
    ...losses.slice(0, 1),
    ...shownTrouble(sheet).shown,
  ];
  const listed = shownReasons(sheet).shown.length + shownTrouble(sheet).shown.length;
  return byFile(evidenceBehind(things, mostLines - linesEach * listed));
}

function behind(lines: readonly SourceLine[]): readonly { readonly evidence: NonEmpty<SourceLine> }[] {
  const [first, ...rest] = lines;
  return first === undefined ? [] : [{ evidence: [first, ...rest] }];
}

function firstOf<T>(all: readonly T[], most: number): Shown<T> {
  return { shown: all.slice(0, most), more: Math.max(0, all.length - most) };
}
