import type { Notice } from '../../vocabulary.ts';
import { sayDuration } from '../../vocabulary.ts';
import type { ChosenOrder } from './choose-order.ts';
import type { ChosenZone } from './choose-zone.ts';
import type { ClockStep } from './clock-order.ts';
import type { TimeReader } from './time-reader.ts';

/** Steps of the clock, as a warning with the lines they begin on. */
export function stepNotices(file: string, steps: readonly ClockStep[]): readonly Notice[] {
  const [first, ...others] = steps.map(({ line, text }) => ({ file, line, text }));
  const [step] = steps;
  if (first === undefined || step === undefined) return [];
  const back = sayDuration((step.before - step.at) / 1000);
  const often = steps.length === 1 ? '' : `; ${steps.length} such steps in all`;
  return [
    {
      id: 'clock-step',
      what: `From line ${step.line} on the timestamps are ${back} behind those before and stay behind: the clock was set back there${often}.`,
      fix: 'Find out when the clock was set; do not rely on times across the step until then.',
      count: steps.length,
      from: step.at,
      to: step.before,
      lines: [first, ...others.slice(0, 4)],
    },
  ];
}

/** An order of day and month that another file settled, as a warning with the first date that can be read both ways. */
export function orderNotices(file: string, { because, borrowed }: ChosenOrder): readonly Notice[] {
  if (borrowed === null || because === null) return [];
  return [
    {
      id: 'date-order',
      what: `"${borrowed.text}" and its other dates can be read day-first or month-first: ${because}, and it was read so.`,
      fix: 'Check the dates, or set time.order in the phrasebook.',
      setting: 'order',
      count: 1,
      from: null,
      to: null,
      lines: [{ file, ...borrowed }],
    },
  ];
}

function sayStamps(count: number): string {
  return count === 1 ? 'One timestamp' : `${count} timestamps`;
}

function saysHour(repeated: number, open: number): string {
  const unless = 'both hours are their bounds, unless a poll goes on at its usual spacing.';
  if (open === 0) return 'the order of the rows decided which.';
  return open === repeated
    ? `the order of the rows does not decide which: ${unless}`
    : `the order of the rows decided which, but not for ${open} of them: ${unless}`;
}

/** What must be said of the zone and of hours that the clocks repeat or leave out. */
export function clockNotices(
  file: string,
  zone: ChosenZone,
  times: TimeReader,
  first: { readonly line: number; readonly text: string } | undefined,
): readonly Notice[] {
  if (first === undefined) return [];
  const lines = [{ file, line: first.line, text: first.text }] as const;
  const frame = { from: null, to: null, lines };
  const { repeated, missing } = times.folds();
  const open = times.doubts().reduce((sum, doubt) => sum + doubt.count, 0);
  const notices: Notice[] = [];
  if (zone.assumed && times.usedZone()) {
    notices.push({
      ...frame,
      id: 'zone-assumed',
      what: 'Its timestamps have no time zone; they were read as UTC.',
      fix: 'Set time.zone in the phrasebook.',
      setting: 'zone',
      count: 1,
    });
  }
  if (repeated > 0) {
    notices.push({
      ...frame,
      id: 'clock-fold',
      what: `${sayStamps(repeated)} in the hour repeated when clocks go back; ${saysHour(repeated, open)}`,
      fix: 'Check them against another source.',
      count: repeated,
    });
  }
  if (missing > 0) {
    notices.push({
      ...frame,
      id: 'clock-fold',
      what: `${sayStamps(missing)} in the hour skipped when clocks go forward.`,
      fix: 'Check the time zone.',
      count: missing,
    });
  }
  return notices;
}
