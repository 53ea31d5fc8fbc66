import { beforeFiles } from './before-files.ts';
import { journalCsv, type Message, messagesOf, readingsCsv, textLog } from './exports.ts';
import { badSwap } from './stories/bad-swap.ts';
import { beforeSwap } from './stories/before-swap.ts';
import { cleanSwap } from './stories/clean-swap.ts';
import { wontSync } from './stories/wont-sync.ts';
import type { Story } from './story.ts';
import { wontSyncFiles } from './wont-sync-files.ts';
import { journalWording, plain, pollWording } from './wordings.ts';

const zone = 'Europe/Lisbon';

/** A file of the demo site: its path below `samples`, and its text. */
export interface SampleFile {
  readonly path: string;
  readonly text: string;
}

/** All committed samples of Marrow Bay, the same for every call; what was injected stands apart from the logs. */
export function sampleFiles(): readonly SampleFile[] {
  return [
    ...inFolder('clean-swap', cleanSwapFiles(cleanSwap())),
    ...inFolder('bad-swap', badSwapFiles(badSwap())),
    ...inFolder('wont-sync', troubleFiles(wontSync())),
    ...beforeFiles(beforeSwap(), zone).map(({ name, text }) => ({ path: `marrow-bay-before/${name}`, text })),
    { path: 'truth/clean-swap.json', text: truthOf(cleanSwap()) },
    { path: 'truth/bad-swap.json', text: truthOf(badSwap()) },
    { path: 'truth/wont-sync.json', text: truthOf(wontSync()) },
  ];
}

function inFolder(folder: string, files: readonly SampleFile[]): readonly SampleFile[] {
  return files.map(({ path, text }) => ({ path: `marrow-bay/${folder}/${path}`, text }));
}

function cleanSwapFiles(story: Story): readonly SampleFile[] {
  const minute = 60_000;
  const ordinary: Message[] = [
    { time: story.from + 4 * minute, unit: 'RO1 pair', text: 'user Operator 3 logged on' },
    // Log text is hostile until shown otherwise: the report must show this as text.
    {
      time: story.from + 5 * minute,
      unit: 'RO1 pair',
      text: 'comment by Operator 3: <script>alert(1)</script>',
    },
    { time: story.to, unit: 'RO1 pair', text: 'daily self-test passed' },
  ];
  const said = ordinary.map((m) => ({ ...m, unit: 'RO1' }));
  return [
    {
      path: 'ro1-poll.csv',
      text: readingsCsv(story, {
        spacingSeconds: 10,
        phaseSeconds: 4,
        stamp: { form: 'day-first', zone, decimals: 0 },
        delimiter: ',',
        wording: pollWording,
      }),
    },
    {
      path: 'ro1-journal.csv',
      text: journalCsv(messagesOf(story, journalWording, ordinary), ['Logged at', 'Where', 'What'], ';', {
        form: 'iso',
        zone,
        decimals: 3,
      }),
    },
    {
      path: 'ro1-events.log',
      text: textLog(messagesOf(story, plain, said), { form: 'iso-offset', zone, decimals: 3 }),
    },
    { path: 'ro1-notes.txt', text: cleanNotes },
    { path: 'phrasebook.yaml', text: cleanPhrasebook },
    { path: 'job.yaml', text: jobText('WO-26-0314', 'RO1', ['A', 'B']) },
  ];
}

function badSwapFiles(story: Story): readonly SampleFile[] {
  const ordinary: Message[] = [{ time: story.to, unit: 'RO3', text: 'daily self-test passed' }];
  return [
    {
      path: 'ro3-poll.csv',
      text: readingsCsv(story, {
        spacingSeconds: 10,
        phaseSeconds: 7,
        stamp: { form: 'day-first', zone, decimals: 0 },
        delimiter: ',',
        wording: pollWording,
      }),
    },
    {
      path: 'ro3-events.log',
      text: textLog(messagesOf(story, plain, ordinary), { form: 'iso-offset', zone, decimals: 3 }),
    },
    { path: 'ro3-notes.txt', text: badNotes },
    { path: 'phrasebook.yaml', text: cleanPhrasebook },
    { path: 'job.yaml', text: jobText('WO-26-0317', 'RO3', ['B']) },
  ];
}

function troubleFiles(story: Story): readonly SampleFile[] {
  return [
    ...wontSyncFiles(story, zone).map(({ name, text }) => ({ path: name, text })),
    { path: 'phrasebook.yaml', text: cleanPhrasebook },
  ];
}

/** What was injected: every event of the story with its exact instant. */
function truthOf(story: Story): string {
  const iso = (time: number): string => new Date(time).toISOString();
  const events = story.events.map((e) => ({ ...e, time: iso(e.time) }));
  return `${JSON.stringify({ pair: story.pair, from: iso(story.from), to: iso(story.to), begin: story.begin, events }, null, 1)}\n`;
}

function jobText(workOrder: string, pair: string, halves: readonly string[]): string {
  const plan = halves.map((half) => `    ${half}: { model: Tern-4, firmware: 6.4.1 }`).join('\n');
  return `workOrder: ${workOrder}
site: Marrow Bay
technician: Technician 2
reviewer: Shift engineer 1
plan:
  ${pair}:
${plan}
`;
}

const cleanNotes = `Pair RO1
14 Mar 2026
09:14 pulled standby from slot B
09:15 fitted new module in slot B, serial plate read and photographed
09:25 light steady
=cmd() is what the label printer made of the work order
09:41 switched over to the new module
09:44 pulled standby from slot A
09:45 fitted new module in slot A
09:55 light steady, cabinet closed
`;

const badNotes = `Pair RO3
17 Mar 2026
13:32 pulled standby from slot B
13:34 fitted new module in slot B
13:43 switched over, light was still blinking
`;

const cleanPhrasebook = `name: Marrow Bay
time: { zone: ${zone}, order: day-first }
files:
  - match: "*-poll.csv"
    layout: readings
    columns: { time: Stamp, unit: Node, parameter: Item, value: Reading }
  - match: "*-journal.csv"
    layout: journal
    columns: { time: Logged at, unit: Where, message: What }
units:
  - pattern: "^(?<pair>[A-Z]+[0-9]*)-(?<half>[AB])$"
  - pattern: "^(?<pair>[A-Z]+[0-9]*) slot (?<half>[AB])$"
  - pattern: "^(?<pair>[A-Z]+[0-9]*) pair$"
  - pattern: "^(?<pair>[A-Z]+[0-9]*)$"
parameters:
  Duty: { signal: role, values: { on duty: active, waiting: standby, empty: none } }
  Hardware: { signal: model }
  Serial No: { signal: serial }
  Release: { signal: firmware }
  Stby lamp: { signal: light, values: { "1": steady, "2": flashing, "0": "off" } }
  Net A: { signal: link-a, values: { linked: up, no link: down } }
  Net B: { signal: link-b, values: { linked: up, no link: down } }
  Net ports: { signal: links, values: { in order: straight, exchanged: crossed } }
  Peer seen: { signal: partner-present, values: { "1": "yes", "0": "no" } }
  Partner OK: { signal: partner-ready, values: { "1": "yes", "0": "no" } }
  Config: { signal: configuration, values: { sent: current, not sent: pending } }
messages:
  - { when: "module takes duty: (?<value>active|standby)", signal: role }
  - { when: "hardware reported as (?<value>\\\\S+)", signal: model }
  - { when: "serial no\\\\. is (?<value>\\\\S+)", signal: serial }
  - { when: "now running release (?<value>\\\\S+)", signal: firmware }
  - { when: "lamp (?<value>on|blinks|dark)", signal: light, values: { on: steady, blinks: flashing, dark: "off" } }
  - { when: "network 1 (?<value>joined|gone)", signal: link-a, values: { joined: up, gone: down } }
  - { when: "network 2 (?<value>joined|gone)", signal: link-b, values: { joined: up, gone: down } }
  - { when: "network cables (?<value>in their own ports|exchanged)", signal: links, values: { in their own ports: straight, exchanged: crossed } }
  - { when: "power feed (?<value>good|fault)", signal: supply }
  - { when: "second module (?<value>found|missing)", signal: partner-present, values: { found: "yes", missing: "no" } }
  - { when: "standby (?<value>has|has lost) synchronism", signal: partner-ready, values: { has: "yes", has lost: "no" } }
  - { when: "nothing left to send", signal: configuration, value: current }
  - { when: "changes wait to be sent", signal: configuration, value: pending }
  - { when: "module pulled", signal: removed }
  - { when: "module seated", signal: inserted }
  - { when: "module started anew", signal: restart }
  - { when: "writing release begins", signal: reflash-start }
  - { when: "writing release finished", signal: reflash-end }
  - { when: "copying to standby gave up", signal: sync-failed }
  - { when: "copying to standby", signal: sync-start }
  - { when: "operator asks for exchange of duty", signal: switchover-command }
  - { when: "exchange of duty", signal: switchover }
ignore:
  - "^user .* logged (on|off)"
  - "self-test passed"
`;
