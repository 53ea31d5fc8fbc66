import type { HalfName } from './story.ts';

/** How one kind of export names units, parameters, values and messages. */
export interface Wording {
  readonly readingColumns: readonly string[];
  unit(pair: string, half: HalfName | null): string;
  parameter(signal: string): string;
  value(signal: string, value: string): string;
  /** A message for an event; `null` if this export never speaks of it, empty if it has nothing to say. */
  message(signal: string, value: string | null): string | null;
}

/** The project's own plain English. */
export const plain: Wording = {
  readingColumns: ['time', 'unit', 'parameter', 'value'],
  unit: (pair, half) => (half === null ? pair : `${pair}-${half}`),
  parameter: (signal) => signal,
  value: (_signal, value) => value,
  message: (signal, value) => (value === null ? (happeningWords[signal] ?? null) : stateWords(signal, value)),
};

const happeningWords: Readonly<Record<string, string>> = {
  removed: 'module removed',
  inserted: 'module inserted',
  restart: 'module restart',
  'reflash-start': 'reflash start',
  'reflash-end': 'reflash end',
  'sync-start': 'sync start',
  'sync-failed': 'sync failed',
  'switchover-command': 'switchover command',
  switchover: 'switchover',
};

function stateWords(signal: string, value: string): string {
  if (signal === 'partner-ready') return value === 'yes' ? 'partner ready' : 'partner not ready';
  if (signal === 'partner-present') return value === 'yes' ? 'partner present' : 'partner absent';
  return `${signal.replace(/^link-/, 'link ')} ${value}`;
}

const pollNames: Readonly<Record<string, string>> = {
  role: 'Duty',
  model: 'Hardware',
  serial: 'Serial No',
  firmware: 'Release',
  light: 'Stby lamp',
  'link-a': 'Net A',
  'link-b': 'Net B',
  links: 'Net ports',
  supply: 'Supply',
  'partner-present': 'Peer seen',
  'partner-ready': 'Partner OK',
  configuration: 'Config',
};

const pollValues: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  role: { active: 'on duty', standby: 'waiting', none: 'empty' },
  light: { steady: '1', flashing: '2', off: '0' },
  'link-a': { up: 'linked', down: 'no link' },
  'link-b': { up: 'linked', down: 'no link' },
  links: { straight: 'in order', crossed: 'exchanged' },
  'partner-present': { yes: '1', no: '0' },
  'partner-ready': { yes: '1', no: '0' },
  configuration: { current: 'sent', pending: 'not sent' },
};

/** A poll with names of its own and figures for states. */
export const pollWording: Wording = {
  readingColumns: ['Stamp', 'Node', 'Item', 'Reading'],
  unit: (pair, half) => (half === null ? pair : `${pair}-${half}`),
  parameter: (signal) => pollNames[signal] ?? signal,
  value: (signal, value) => pollValues[signal]?.[value] ?? value,
  message: () => null,
};

/** A journal that writes whole sentences about the module in a slot. */
export const journalWording: Wording = {
  ...plain,
  unit: (pair, half) => (half === null ? `${pair} pair` : `${pair} slot ${half}`),
  message(signal, value) {
    switch (signal) {
      case 'role':
        return value === 'none' ? null : `module takes duty: ${value}`;
      case 'model':
        return `hardware reported as ${value}`;
      case 'serial':
        return `serial no. is ${value}`;
      case 'firmware':
        return `now running release ${value}`;
      case 'light':
        return `lamp ${value === 'steady' ? 'on' : value === 'flashing' ? 'blinks' : 'dark'}`;
      case 'link-a':
      case 'link-b':
        return `network ${signal === 'link-a' ? '1' : '2'} ${value === 'up' ? 'joined' : 'gone'}`;
      case 'links':
        return `network cables ${value === 'straight' ? 'in their own ports' : 'exchanged'}`;
      case 'supply':
        return `power feed ${value}`;
      case 'partner-present':
        return value === 'yes' ? 'second module found' : 'second module missing';
      case 'partner-ready':
        return value === 'yes' ? 'standby has synchronism' : 'standby has lost synchronism';
      case 'configuration':
        return value === 'current' ? 'nothing left to send' : 'changes wait to be sent';
      default:
        return journalHappenings[signal] ?? null;
    }
  },
};

const journalHappenings: Readonly<Record<string, string>> = {
  removed: 'module pulled',
  inserted: 'module seated',
  restart: 'module started anew',
  'reflash-start': 'writing release begins',
  'reflash-end': 'writing release finished',
  'sync-start': 'copying to standby',
  'sync-failed': 'copying to standby gave up',
  'switchover-command': 'operator asks for exchange of duty',
  switchover: 'exchange of duty',
};
