import type {
  BringUp,
  CheckResult,
  CheckStatus,
  Input,
  Instant,
  Measure,
  NonEmpty,
  SourceLine,
  Staff,
  StaffState,
  Step,
  Swap,
  TimelineEvent,
  Verification,
} from '../../src/vocabulary.ts';

/** Half past nine of the demo site's day; the swap begins 30 minutes before it. */
const nine = Date.UTC(2026, 2, 14, 9, 30);
const minute = 60_000;

/**
 * A verification written by hand: RO1 verified, RO3 not, as the demo site has them. `mark` is put after every text that
 * comes from a log, a file name or a person, so that a test can give them hostile text; `begin` moves the swaps.
 */
export function exampleVerification(mark = '', begin = nine - 30 * minute): Verification {
  return {
    inputs: [input(mark), { ...input(mark), file: `notes.txt${mark}` }],
    job: { workOrder: `WO-26-0314${mark}`, technician: `Technician 2${mark}` },
    swaps: [swap('RO1', mark, begin, true), swap('RO3', mark, begin, false)],
    findings: [
      {
        id: 'light-timeout',
        severity: 'critical',
        pair: `RO3${mark}`,
        half: `B${mark}`,
        from: begin + 15 * minute,
        to: begin + 30 * minute,
        statement: `The light of half B${mark} was not steady.`,
        figures: { seconds: 501 },
        evidence: lines(mark, 3),
      },
    ],
  };
}

function lines(mark: string, line: number): NonEmpty<SourceLine> {
  return [{ file: `archive.zip/ro1-events.log${mark}`, line, text: `09:14:05 [RO1-B] entry ${line}${mark}` }];
}

function input(mark: string): Input {
  return {
    file: `archive.zip/ro1-events.log${mark}`,
    sha256: 'a'.repeat(64),
    bytes: 2658,
    container: { file: `archive.zip${mark}`, sha256: 'b'.repeat(64) },
    layout: 'lines',
    encoding: 'utf-8',
    delimiter: null,
    zone: 'UTC',
    rows: { read: 5, used: 3, unchanged: 0, ignored: 1, unmatched: 1, rejected: 0 },
    from: nine,
    to: nine + minute,
    units: [`RO1-B${mark}`],
    unmatched: [{ wording: `odd${mark}`, count: 1, firstLine: 4 }],
  };
}

function measure(seconds: number, outcome: Measure['outcome'], censored = false): Measure {
  return { seconds, low: seconds, high: censored ? null : seconds, censored, outcome };
}

function bringUp(pair: string, mark: string, begin: number, good: boolean): BringUp {
  const start = { time: begin + 20 * minute, earliest: begin + 20 * minute };
  const ready = { time: begin + 22 * minute, earliest: begin + 22 * minute };
  return {
    pair,
    half: `B${mark}`,
    cause: 'reflash',
    start,
    startDerived: false,
    firmware: `6.4.1${mark}`,
    model: `Tern-4${mark}`,
    serial: `T4-20816${mark}`,
    outcome: good ? 'settled' : 'unfinished',
    sync: good ? measure(120, 'within') : measure(500, 'inconclusive', true),
    held: good ? measure(120, null) : measure(500, null, true),
    settledSeconds: good ? 120 : null,
    light: good ? measure(240, 'within') : measure(500, 'exceeded', true),
    settled: good ? ready : null,
    mayHaveSettledAt: good ? ready.earliest : null,
    ready: good ? ready : null,
    watchedTo: begin + 30 * minute,
    evidence: lines(mark, 2),
    lightEvidence: lines(mark, 3),
  };
}

function check(id: string, title: string, status: CheckStatus, mark: string): CheckResult {
  return { id, title, status, statement: `What half B${mark} did.`, evidence: lines(mark, 3) };
}

function instant(begin: number, minutes: number): Instant {
  return { time: begin + minutes * minute, earliest: begin + minutes * minute };
}

function swap(name: string, mark: string, begin: number, good: boolean): Swap {
  const pair = `${name}${mark}`;
  return {
    pair,
    site: `Marrow Bay${mark}`,
    from: begin,
    to: begin + 60 * minute,
    verdict: good ? 'verified' : 'not-verified',
    statement: `Pair ${pair} is ${good ? 'verified' : 'not verified'}.`,
    open: null,
    halves: [
      {
        half: `B${mark}`,
        removedAt: instant(begin, 15),
        insertedAt: instant(begin, 17),
        model: { before: `Tern-2${mark}`, after: `Tern-4${mark}` },
        serial: { before: `T2-10442${mark}`, after: null },
        firmware: { before: `6.4.1${mark}`, found: `6.2.0${mark}`, after: `6.4.1${mark}` },
      },
    ],
    bringUps: [bringUp(pair, mark, begin, good)],
    switchovers: [],
    exposure: {
      seconds: 420,
      low: 420,
      high: 420,
      spans: [{ from: begin + 15 * minute, to: begin + 22 * minute }],
    },
    checks: [
      check('removed-standby', 'Only the standby was removed', 'pass', mark),
      check('light-steady', 'Light steady within five minutes', good ? 'pass' : 'fail', mark),
      check('links-restored', 'Both links of both halves up, not crossed', 'not-observed', mark),
    ],
    steps: steps(mark, begin),
    otherEvents: [note(pair, mark, begin)],
    staff: staff(mark, begin, good),
  };
}

function steps(mark: string, begin: number): readonly Step[] {
  return [
    {
      ...instant(begin, 15),
      half: `B${mark}`,
      statement: `Module removed, half B${mark}`,
      duration: null,
      checks: ['removed-standby'],
      evidence: lines(mark, 1),
    },
    {
      time: begin + 22 * minute,
      earliest: begin + 22 * minute - 10_000,
      half: `B${mark}`,
      statement: `Partner ready, half B${mark}`,
      duration: { seconds: 142, low: 132, high: 142, censored: false, outcome: 'within' },
      checks: ['light-steady'],
      evidence: lines(mark, 2),
    },
  ];
}

function note(pair: string, mark: string, begin: number): TimelineEvent {
  return {
    ...instant(begin, 40),
    pair,
    half: `B${mark}`,
    signal: 'note',
    value: `said${mark}`,
    before: null,
    resolution: 0,
    kind: 'note',
    initial: false,
    concluded: false,
    sources: [
      { file: `notes.txt${mark}`, line: 9, text: `said${mark}`, count: 1, printed: { time: 0, earliest: 0 } },
    ],
  };
}

function staff(mark: string, begin: number, good: boolean): Staff {
  const half = `B${mark}`;
  const at = (minutes: number): number => begin + minutes * minute;
  return {
    from: begin,
    to: at(60),
    limitSeconds: 300,
    halves: [`A${mark}`, half],
    stretches: [
      { half: `A${mark}`, from: begin, to: at(60), drawn: 'active' },
      { half, from: begin, to: at(15), drawn: 'ready' },
      { half, from: at(17), to: at(60), drawn: 'not-ready' },
    ],
    lights: [{ half, light: 'flashing', from: at(17), to: at(24) }],
    ticks: [
      { ...instant(begin, 15), half, word: 'removed' },
      { ...instant(begin, 17), half, word: 'inserted' },
    ],
    switchovers: [],
    bringUps: [{ half, from: at(20), to: at(30), flag: at(25), late: !good }],
    unobserved: [{ from: at(50), to: at(55) }],
    states: [
      state('no-ready-partner', at(15), at(60)),
      ...(good ? [] : [{ ...state('past-limit', at(25), at(30)), half }]),
      state('unobserved', at(50), at(55)),
    ],
  };
}

function state(kind: StaffState['kind'], from: number, to: number): StaffState {
  return { kind, half: null, from, to, seconds: (to - from) / 1000, count: 1, losses: 0, goesOn: false };
}
