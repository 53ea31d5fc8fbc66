import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { zipSync } from 'fflate';

/** What an input is given to the program as. */
export type Role = 'log' | 'phrasebook' | 'job';

/** A well-formed input to begin from. */
export interface Seed {
  readonly kind: string;
  readonly name: string;
  readonly role: Role;
  readonly bytes: Uint8Array;
}

const site = join('samples', 'marrow-bay');
const mostBytes = 4000;

/** One input of every layout, container and kind of file, small enough to be read thousands of times. */
export function seeds(): readonly Seed[] {
  // Copies: a slice of what Node reads is no copy, and a mutation of it would change the seed.
  return wellFormed().map((seed) => ({ ...seed, bytes: Uint8Array.from(seed.bytes) }));
}

function wellFormed(): readonly Seed[] {
  const begin = (...path: readonly string[]): Uint8Array =>
    readFileSync(join(site, ...path)).subarray(0, mostBytes);
  const text = (...lines: readonly string[]): Uint8Array => new TextEncoder().encode(`${lines.join('\n')}\n`);
  const log = (kind: string, name: string, bytes: Uint8Array): Seed => ({ kind, name, role: 'log', bytes });
  const poll = begin('bad-swap', 'ro3-poll.csv');
  const journal = begin('clean-swap', 'ro1-journal.csv');
  return [
    log('readings', 'ro3-poll.csv', poll),
    log('journal', 'ro1-journal.csv', journal),
    log('lines', 'ro1-events.log', begin('clean-swap', 'ro1-events.log')),
    log('field notes', 'ro1-notes.txt', begin('clean-swap', 'ro1-notes.txt')),
    log('snapshots', 'ro1-snapshots.csv', text(...snapshots)),
    log('syslog', 'syslog.log', text(...syslog)),
    log('key=value', 'pairs.log', text(...keyed)),
    log('JSON lines', 'events.json', text(...jsonLines)),
    log('gzip', 'ro3-poll.csv.gz', gzipSync(poll)),
    log(
      'zip',
      'site.zip',
      zipSync({ 'a/ro3-poll.csv': poll, 'b/ro1-journal.csv': journal }, { mtime: '2026-03-14' }),
    ),
    log('stored timeline', 'intake.parquet', readFileSync('samples/marrow-bay-fleet/remin.parquet')),
    {
      kind: 'phrasebook',
      name: 'phrasebook.yaml',
      role: 'phrasebook',
      bytes: begin('clean-swap', 'phrasebook.yaml'),
    },
    { kind: 'phrasebook of meanings', name: 'meanings.yaml', role: 'phrasebook', bytes: text(...meanings) },
    { kind: 'job', name: 'job.yaml', role: 'job', bytes: text(...job) },
  ];
}

/** Of the pair of the first log, with which it is tried. */
const job = [
  'workOrder: WO-26-0314',
  'site: Marrow Bay',
  'technician: Technician 2',
  'reviewer: Shift engineer 1',
  'plan:',
  '  RO3:',
  '    A: { model: Tern-4, firmware: 6.4.1 }',
  '    B: { model: Tern-4, firmware: 6.4.1 }',
];

/** Every key that says what rows mean. */
const meanings = [
  'files:',
  '  - match: "alarms*.csv"',
  '    columns: { time: Stamp, unit: Node, message: Condition, quality: Quality, state: State }',
  '  - match: "*.csv"',
  '    good: [Good, 192]',
  "    states: { ACTIVE: on, CLEARED: 'off' }",
  'parameters:',
  "  /^(?<unit>RO\\d-[AB])\\.Duty$/: { signal: role, values: { '1': active } }",
  '  /^(?<pair>RO\\d)(?<half>[AB]) (?<role>active)?Link(?<value>Up|Down)$/: { signal: link-a }',
  'messages:',
  '  - when: "lost (my|its) partner"',
  '    of: other',
  '    only: { file: "node-a/*", unit: "-A$" }',
  '    means: [{ signal: partner-ready, value: no }, { of: self, signal: role, value: active, off: standby }]',
  '  - { when: "rebooted", of: pair, signal: restart, off: ignore }',
  'ignore: ["^user"]',
  'ignoreUnits: ["^HMI"]',
];

const snapshots = [
  'time;unit;role;firmware;light;load;free-memory;partner-ready',
  '14/03/2026 09:00:00;RO1-A;active;6.2.0;off;41,5;4096;yes',
  '14/03/2026 09:00:00;RO1-B;standby;6.2.0;steady;12,5;4096;yes',
  '14/03/2026 09:00:30;RO1-A;active;6.2.0;off;41,7;4090;no',
  '14/03/2026 09:00:30;RO1-B;standby;;flashing;12,5;4096;no',
];
const syslog = [
  '<134>1 2026-03-14T09:00:00.123Z RO1-A controller - - - role active',
  '<134>1 2026-03-14T09:00:01.000+01:00 RO1-B controller 7 ID [a@1 b="c"] light steady',
  '<30>Mar 14 09:00:02 RO1 controller: partner ready',
];
const keyed = [
  'time=2026-03-14T09:00:00Z unit=RO1-A role=active firmware="6.2.0" load=41.5',
  'time=2026-03-14T09:00:10Z unit=RO1-B role=standby light=steady message="partner ready"',
];
const jsonLines = [
  '{"time":"2026-03-14T09:00:00Z","unit":"RO1-A","role":"active","load":41.5}',
  '{"time":"2026-03-14T09:00:10Z","unit":"RO1","message":"partner not ready"}',
];
