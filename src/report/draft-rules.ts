import { isStateSignal, type SeenWording, stateValues } from '../vocabulary.ts';
import { jsonEscaped } from './escape.ts';

/** A rule of a phrasebook for a wording, as a line of YAML without its indent; `isOn` where nothing is to be filled in. */
export interface DraftRule {
  readonly part: 'messages' | 'parameters' | 'units' | 'ignore';
  readonly yaml: string;
  readonly isOn: boolean;
  /** Signals that a wording with these words may mean. */
  readonly hint: string;
}

/** Which signals a word may speak of; common practice, no source. */
const hints: readonly (readonly [RegExp, string])[] = [
  [/sync/i, 'partner-ready, sync-start, sync-failed'],
  [/role|activ|standby|stby|primary|secondary|master|slave|backup|promot|demot|elect/i, 'role'],
  [/switch|takeover|take over|failover|swap/i, 'switchover, switchover-command, role'],
  [/partner|peer|mate|lost|loss|los[ei]|heartbeat|redundan|ready/i, 'partner-ready, partner-present'],
  [/restart|reboot|reset|boot/i, 'restart'],
  [/flash|firmware|version|release|update|upgrade/i, 'firmware, reflash-start, reflash-end'],
  [/link|network|port|path/i, 'link-a, link-b'],
  [/fail|fault|error/i, 'fault'],
  [/light|lamp|led/i, 'light'],
  [/power|supply/i, 'supply'],
  [/insert|remov|plug/i, 'inserted, removed'],
];

function hintFor({ name, understood }: SeenWording): string {
  if (understood !== null) return '';
  const found = hints.flatMap(([words, signals]) => (words.test(name) ? signals.split(', ') : []));
  return [...new Set(found)].join(', ');
}

/** The rule for a message or a unit, or for a parameter with the values that it takes. */
export function ruleFor(wording: SeenWording, values: readonly SeenWording[] = []): DraftRule {
  const hint = hintFor(wording);
  const { kind, name, pattern } = wording;
  if (kind === 'unit')
    return {
      part: 'units',
      yaml: `- { pattern: ${quoted(`^${escaped(name)}$`)}, pair: ___, half: ___ }`,
      isOn: false,
      hint,
    };
  if (kind !== 'message') return { part: 'parameters', ...parameterRule(wording, values), hint };
  const { understood } = wording;
  if (understood?.signal === null) return { part: 'ignore', yaml: `- ${quoted(pattern)}`, isOn: true, hint };
  const hasValue = pattern.includes('(?<value>');
  if (understood === null) {
    const value = hasValue ? '' : ', value: ___';
    return {
      part: 'messages',
      yaml: `- { when: ${quoted(pattern)}, signal: ___${value} }`,
      isOn: false,
      hint,
    };
  }
  const { signal } = understood;
  const needsValue = isStateSignal(signal ?? '') && !hasValue;
  const value = needsValue && understood.value !== null ? `, value: ${quoted(understood.value)}` : '';
  return {
    part: 'messages',
    yaml: `- { when: ${quoted(pattern)}, signal: ${signal}${value} }`,
    isOn: true,
    hint,
  };
}

function parameterRule(
  wording: SeenWording,
  values: readonly SeenWording[],
): Pick<DraftRule, 'yaml' | 'isOn'> {
  const { name, understood } = wording;
  const all = wording.kind === 'value' && values.length === 0 ? [wording] : values;
  const signal = understood?.signal ?? null;
  const isText = signal !== null && (!isStateSignal(signal) || stateValues[signal] === null);
  const meant = ({ understood: u }: SeenWording): string => (u?.value == null ? '___' : quoted(u.value));
  const said = isText ? [] : all.map((v) => `${quoted(v.value ?? '')}: ${meant(v)}`);
  const map = said.length === 0 ? '' : `, values: { ${said.join(', ')} }`;
  const subject = understood?.subject === undefined ? '' : `, subject: ${understood.subject}`;
  return {
    yaml: `${quoted(name)}: { signal: ${signal ?? '___'}${subject}${map} }`,
    isOn: signal !== null && !map.includes('___'),
  };
}

/** Text in double quotes: JSON's are YAML's too. Source: YAML 1.2.2 (2021), sections 1.2 and 7.3.1. */
export function quoted(text: string): string {
  return jsonEscaped(JSON.stringify(text).replace(/[^\u0020-\u007e\u00a0-\ud7ff\ue000-\ufefe]/g, asEscape));
}

function asEscape(character: string): string {
  return `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`;
}

/** Without anything that could end a comment. */
export function printable(text: string): string {
  return quoted(text).slice(1, -1).replaceAll('\\"', '"');
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
