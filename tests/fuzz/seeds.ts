import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { zipSync } from 'fflate';
import { type Described, describedLogs } from './described-logs.ts';

/** What an input is given to the program as. */
export type Role = 'log' | 'phrasebook' | 'job';

/** A well-formed input to begin from. */
export interface Seed {
  readonly kind: string;
  readonly name: string;
  readonly role: Role;
  readonly bytes: Uint8Array;
  /** Of a log the phrasebook that describes it, of such a phrasebook its log. */
  readonly beside?: { readonly name: string; readonly bytes: Uint8Array };
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
  const log = (kind: string, name: string, bytes: Uint8Array): Seed => ({ kind, name, role: 'log', bytes });
  const poll = begin('bad-swap', 'ro3-poll.csv');
  const journal = begin('clean-swap', 'ro1-journal.csv');
  return [
    log('readings', 'ro3-poll.csv', poll),
    log('journal', 'ro1-journal.csv', journal),
    log('lines', 'ro1-events.log', begin('clean-swap', 'ro1-events.log')),
    log('field notes', 'ro1-notes.txt', begin('clean-swap', 'ro1-notes.txt')),
    log('snapshots', 'ro1-snapshots.csv', text(...snapshots)),
    log('wide', 'historian.csv', text(...wide)),
    log('tags', 'tags.csv', text(...tags)),
    log('alarm list', 'alarms.csv', text(...alarms)),
    log('service journal', 'journal.jsonl', text(...serviceJournal)),
    log('fields before the unit', 'threads.log', text(...threads)),
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
    ...describedLogs.flatMap(described),
    { kind: 'phrasebook of meanings', name: 'meanings.yaml', role: 'phrasebook', bytes: text(...meanings) },
    { kind: 'job', name: 'job.yaml', role: 'job', bytes: text(...job) },
  ];
}

function described({ kind, name, lines, rule }: Described): readonly Seed[] {
  const log = { name, bytes: text(...lines) };
  const phrasebook = { name: name.replace(/\.\w+$/, '.yaml'), bytes: text('files:', `  - ${rule}`) };
  return [
    { kind, ...log, role: 'log', beside: phrasebook },
    { kind: `${kind}, its phrasebook`, ...phrasebook, role: 'phrasebook', beside: log },
  ];
}

function text(...lines: readonly string[]): Uint8Array {
  return new TextEncoder().encode(`${lines.join('\n')}\n`);
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
const wide = [
  'Time,RO1-A.Role,Quality,RO1-B.Role,Quality,RO1.partner ready',
  '2026-03-14 09:00:00,active,Good,standby,Good,yes',
  '2026-03-14 09:00:10,standby,Good,active,Bad,no',
];
const tags = [
  'sep=;',
  'Day;At;Tag;Value;Quality',
  '14.03.2026;09:00:00;RO1-A.Role;active;Good',
  '14.03.2026;09:00:00;RO1-B.Role;standby;192',
  '14.03.2026;09:00:10;RO1-B.Role;active;Bad',
];
const alarms = [
  'Time,Source,Condition,State,Ack,',
  '2026-03-14 09:00:00,RO1-A,supply fault,ACTIVE,N,',
  '2026-03-14 09:00:10,RO1-A,"supply fault",ACTIVE/ACK,Y,',
  '2026-03-14 09:00:20,RO1-A,supply fault,CLEARED,Y,',
];
const serviceJournal = [
  '{"__REALTIME_TIMESTAMP":"1773478800000000","_HOSTNAME":"RO1-A","PRIORITY":"6","MESSAGE":"role active"}',
  '{"__REALTIME_TIMESTAMP":"1773478801000000","_HOSTNAME":"RO1-B","MESSAGE":[108,105,103,104,116,32,111,102,102]}',
];
const threads = [
  '[2026-03-14 09:00:00] [worker-1] INFO RO1-A: role active',
  '[2026-03-14 09:00:01] [main] WARN RO1-B: light steady',
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
