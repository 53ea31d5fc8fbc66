import { stateSignals } from '../../vocabulary.ts';
import type { PhrasebookText } from './phrasebook-schema.ts';
import { foldedWord, spellingsOf } from './value-words.ts';

/** Values in plain words, per signal, folded as they are compared. */
export const valueSpellings: Readonly<Record<string, Readonly<Record<string, string>>>> = Object.fromEntries(
  stateSignals.map((signal) => [
    signal,
    Object.fromEntries(spellingsOf(signal).map(([word, value]) => [foldedWord(word), value])),
  ]),
);

/**
 * Parameter names besides the signals themselves; compared without case, spaces, `-` and `_`. Abbreviations: common practice, no
 * source. `mem`, `temp` and `prog` are none: nothing says whether memory is free or taken, and the others are no signals.
 */
export const parameterSpellings: Readonly<Record<string, string>> = {
  'partner ok': 'partner-ready',
  'partner rdy': 'partner-ready',
  'standby ready': 'partner-ready',
  'stby rdy': 'partner-ready',
  'sby rdy': 'partner-ready',
  'stby ready': 'partner-ready',
  sync: 'partner-ready',
  'in sync': 'partner-ready',
  'partner synchronised': 'partner-ready',
  'partner synchronized': 'partner-ready',
  'standby present': 'partner-present',
  'stby present': 'partner-present',
  'standby light': 'light',
  'stby light': 'light',
  'standby led': 'light',
  'stby led': 'light',
  'firmware version': 'firmware',
  'firmware release': 'firmware',
  fw: 'firmware',
  'fw ver': 'firmware',
  'fw version': 'firmware',
  'sw ver': 'firmware',
  'sw version': 'firmware',
  'serial number': 'serial',
  'serial no': 'serial',
  sn: 'serial',
  's/n': 'serial',
  'module model': 'model',
  pn: 'model',
  'p/n': 'model',
  'part number': 'model',
  'power supply': 'supply',
  ps: 'supply',
  psu: 'supply',
  'lnk a': 'link-a',
  'lnk b': 'link-b',
  config: 'configuration',
  cfg: 'configuration',
  cpu: 'load',
  'cpu load': 'load',
  'memory free': 'free-memory',
  'mem free': 'free-memory',
  'free mem': 'free-memory',
};

const standby = '(?i:standby|stby|sby|secondary|sec|backup)';
const active = '(?i:active|act|primary|pri)';

/** Units in plain English, in any case: one that is written in several is one. */
export const plainUnits: NonNullable<PhrasebookText['units']> = [
  { pattern: '^(?<pair>[A-Za-z][A-Za-z0-9_]*)[-/ ](?<half>[A-Za-z]|[0-9]+)$' },
  { pattern: '^(?<pair>[A-Za-z][A-Za-z_]*[0-9]+)_(?<half>[A-Za-z])$' },
  { pattern: `^(?<pair>[A-Za-z][A-Za-z0-9_]*)[-/ ]${standby}$`, role: 'standby' },
  { pattern: `^${standby}[-/ ](?<pair>[A-Za-z][A-Za-z0-9_]*)$`, role: 'standby' },
  { pattern: `^(?<pair>[A-Za-z][A-Za-z0-9_]*)[-/ ]${active}$`, role: 'active' },
  { pattern: `^${active}[-/ ](?<pair>[A-Za-z][A-Za-z0-9_]*)$`, role: 'active' },
  { pattern: '^(?<pair>[A-Za-z][A-Za-z0-9_]*)$' },
];

/** What a technician writes, besides the messages above. A switchover in a note is the person's own command. */
export const noteMessages: NonNullable<PhrasebookText['messages']> = [
  { when: '\\b(?:pulled|took out|removed|withdrew)\\b', signal: 'removed' },
  { when: '\\b(?:put in|fitted|inserted|seated)\\b', signal: 'inserted' },
  { when: '\\b(?:switched over|switch-?over)\\b', signal: 'switchover-command' },
  { when: '\\breflash (?:done|finished|complete|ended)\\b|\\b(?:re)?flashed\\b', signal: 'reflash-end' },
  {
    when: '\\b(?:started (?:the )?reflash|began (?:the )?reflash|reflash started|(?:re)?flashing (?:of|half|slot|place|standby|active|the|module|to|started))\\b',
    signal: 'reflash-start',
  },
  { when: '\\blight (?:is |now )*(?<value>steady|flashing|off)\\b', signal: 'light' },
];
