import type { PhrasebookText } from './phrasebook-schema.ts';

const yesNo = {
  yes: 'yes',
  no: 'no',
  true: 'yes',
  false: 'no',
  '1': 'yes',
  '0': 'no',
  ok: 'yes',
  ready: 'yes',
  present: 'yes',
  absent: 'no',
  'not ready': 'no',
};
const upDown = {
  up: 'up',
  down: 'down',
  ok: 'up',
  '1': 'up',
  '0': 'down',
  lost: 'down',
  connected: 'up',
  disconnected: 'down',
};

/** Values as plain English spells them, per signal; compared without case. */
export const valueSpellings: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  role: {
    active: 'active',
    primary: 'active',
    standby: 'standby',
    backup: 'standby',
    none: 'none',
    '-': 'none',
  },
  'partner-present': yesNo,
  'partner-ready': {
    ...yesNo,
    synchronised: 'yes',
    synchronized: 'yes',
    'not synchronised': 'no',
    'not synchronized': 'no',
  },
  light: {
    steady: 'steady',
    on: 'steady',
    solid: 'steady',
    flashing: 'flashing',
    blinking: 'flashing',
    off: 'off',
    dark: 'off',
  },
  'link-a': upDown,
  'link-b': upDown,
  links: { straight: 'straight', crossed: 'crossed' },
  configuration: { current: 'current', pending: 'pending', 'up to date': 'current' },
  supply: { good: 'good', ok: 'good', fault: 'fault', failed: 'fault' },
};

/** Parameter names besides the signals themselves; compared without case, spaces, `-` and `_`. */
export const parameterSpellings: Readonly<Record<string, string>> = {
  'partner ok': 'partner-ready',
  'standby ready': 'partner-ready',
  'partner synchronised': 'partner-ready',
  'partner synchronized': 'partner-ready',
  'standby present': 'partner-present',
  'standby light': 'light',
  'firmware version': 'firmware',
  'firmware release': 'firmware',
  'serial number': 'serial',
  'module model': 'model',
  'power supply': 'supply',
  'cpu load': 'load',
  'memory free': 'free-memory',
};

/** Units in plain English. */
export const plainUnits: NonNullable<PhrasebookText['units']> = [
  { pattern: '^(?<pair>[A-Za-z][A-Za-z0-9_]*)[-/ ](?<half>[A-Z]|[0-9]+)$' },
  { pattern: '^(?<pair>[A-Z][A-Z_]*[0-9]+)_(?<half>[A-Z])$' },
  { pattern: '^(?<pair>[A-Za-z][A-Za-z0-9_]*)[-/ ](?:[Ss]tandby|[Ss]tby)$', role: 'standby' },
  { pattern: '^(?:[Ss]tandby|[Ss]tby)[-/ ](?<pair>[A-Za-z][A-Za-z0-9_]*)$', role: 'standby' },
  { pattern: '^(?<pair>[A-Za-z][A-Za-z0-9_]*)[-/ ][Aa]ctive$', role: 'active' },
  { pattern: '^[Aa]ctive[-/ ](?<pair>[A-Za-z][A-Za-z0-9_]*)$', role: 'active' },
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
