import type { SheetHalf, WorkSheet } from '../vocabulary.ts';
import { printable, quoted } from './draft-rules.ts';
import { iso } from './json.ts';

/**
 * A job file (YAML 1.2) of one pair to fill in. It can be read as it is: what a person must say stands behind a `#` with a blank, `___`;
 * what each half reports now is the plan, to be changed where the new module is another. Log text stands in it quoted, or in comments.
 */
export function draftJob({ pair, site, asOf, halves, job }: WorkSheet): string {
  const planned = halves.flatMap((half) => planOf(half));
  const isOpen = planned.every((line) => line.startsWith('#'));
  return `${[
    `# The job of a swap of ${printable(pair)}, drafted by steadypair prepare from lines up to ${iso(asOf.time)}.`,
    '# Put a word for each ___ and remove the # before it. Read it with --job.',
    fieldLine('workOrder', job?.workOrder),
    fieldLine('site', job?.site ?? site ?? undefined),
    fieldLine('technician', job?.technician),
    fieldLine('reviewer', job?.reviewer),
    '# What the new modules must be. Here stands what each half reports now, unless it was planned:',
    '# change what the new module has otherwise, and remove a half that is not replaced.',
    `${isOpen ? '#' : ''}plan:`,
    `${isOpen ? '#' : ''}  ${quoted(pair)}:`,
    ...planned,
  ].join('\n')}\n`;
}

function fieldLine(key: string, value: string | undefined): string {
  return value === undefined ? `#${key}: ___` : `${key}: ${quoted(value)}`;
}

/** The lines of one half; commented out where nothing is known of it. */
function planOf({ half, model, firmware, serial, wanted }: SheetHalf): readonly string[] {
  const known = [
    { key: 'model', value: wanted.model ?? model.value },
    { key: 'firmware', value: wanted.firmware ?? firmware.value },
  ];
  const isOpen = known.every(({ value }) => value === null);
  const now = serial.value === null ? '' : `    # now serial ${printable(serial.value)}`;
  return [
    `${isOpen ? '#' : ''}    ${quoted(half)}:${now}`,
    ...known.map(({ key, value }) =>
      value === null ? `#      ${key}: ___` : `      ${key}: ${quoted(value)}`,
    ),
  ];
}
