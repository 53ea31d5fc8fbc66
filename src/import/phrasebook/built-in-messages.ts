import { type StateSignal, stateSignals, stateValues } from '../../vocabulary.ts';
import { plainLetters } from '../clock/calendar-words.ts';
import type { PhrasebookText } from './phrasebook-schema.ts';
import { negations, partnerWords, spellingsOf } from './value-words.ts';

type MessageText = NonNullable<PhrasebookText['messages']>[number];

/** A severity, or who writes: `INFO`, `[warn]`, `app[12]:`. */
const writer =
  '(?:(?:(?-i:DEBUG|INFO|NOTICE|WARN|WARNING|ERROR|CRITICAL)|\\[\\w+\\]|(?:[a-z_./-]+|[a-z_][\\w./-]*\\[\\d+\\]):)\\s+)*';
/** Names such as `B`, `2` or `RO1-B`, but no number of a queue such as `4F9D195432C`, and words that say what it is about but not what of it. */
const about =
  '(?:(?:the|new|old|standby|stby|sby|active|act|primary|pri|secondary|sec|redundant|controller|module|half|slot|place|unit|pair|in|of|now|[a-z]|[a-z_]+[0-9]{1,4}[a-z]?(?:[-/._][a-z0-9]+)*|[0-9]{1,2}[a-z]?)[\\s:_-]+)*';
const before = `^\\s*${writer}${about}`;
const verb = '(?:(?:is|are|was|has|have|been|now|again)\\s+)*';
/** Where, when, by whom and why may follow; anything else ("inhibited", "failed", "= 0") may say the contrary. */
const circumstanceOf = (words: string): string =>
  `(?:\\s+(?:${words})\\b(?s:.*)|\\s*[;,(\\[](?s:.*))?[\\s.!]*$`;
const circumstances = 'in|into|from|at|of|on|by|with|after|since|for|due\\s+to';
const circumstance = circumstanceOf(`${circumstances}|to|onto`);
/** Behind a state "to" says what it became: `role active to standby`. */
const stateCircumstance = circumstanceOf(circumstances);
const done = '(?:\\s+(?:now|again|done|completed?|finished))?';
/** A number with letters around it: "mismatch" and "update" are no firmware and no model. */
const identity = '[a-z0-9._/-]*[0-9](?:[^\\s,;()]*[0-9a-z])?';

const happening = (signal: MessageText['signal'], words: string): MessageText => ({
  when: `${before}${words}${done}${circumstance}`,
  signal,
});

/** A happening that may give its reason after a colon. */
const trouble = (signal: MessageText['signal'], words: string): MessageText => ({
  when: `${before}${words}(?:\\s*:(?s:.*)$|${circumstance})`,
  signal,
});

/** How messages name a state, where its own words are not the only ones. */
const stateNames: Readonly<Partial<Record<StateSignal, string>>> = {
  light: '(?:(?:standby|stby|sby|status)\\s+)?(?:light|led)',
  supply: '(?:(?:power\\s+)?supply|psu?)',
  firmware: '(?:(?:firmware|fw)(?:\\s+(?:version|ver\\.?|release))?|sw\\s+ver(?:sion|\\.)?)',
  serial: '(?:serial(?:\\s+(?:number|no\\.?))?|s/?n)',
  model: '(?:model|p/?n|part\\s+number)',
  'link-a': '(?:link|lnk)[\\s_-]+a',
  'link-b': '(?:link|lnk)[\\s_-]+b',
  configuration: '(?:configuration|config|cfg)',
};

/** What may follow the value of a state. */
const stateEnds: Readonly<Partial<Record<StateSignal, string>>> = {
  firmware: '(?:\\s+(?:loaded|running|installed))?',
};

/** Its name and then one of its values: `light steady`, `link a is down`, `firmware 6.4.1`. */
const state = (signal: StateSignal): MessageText => {
  const name = stateNames[signal] ?? signal.replaceAll('-', '[\\s_-]+');
  const own = stateValues[signal];
  const value = own === null ? identity : spelt(signal, own);
  return {
    when: `${before}${name}[\\s:=_-]+${verb}(?:change[ds]?[\\s:]+)?${verb}(?:from\\s+\\S+\\s+)?(?:to\\s+)?(?<value>${value})${stateEnds[signal] ?? ''}${stateCircumstance}`,
    signal,
  };
};

const spelt = (signal: StateSignal, own: readonly string[]): string =>
  anyOf([...spellingsOf(signal).map(([word]) => word), ...own]);

/** One of several words, with their accents or without. */
const anyOf = (words: readonly string[]): string =>
  [...new Set(words.flatMap((word) => [word, plainLetters(word)]))]
    .filter((word) => /^[\p{L} ]+$/u.test(word))
    .map((word) => word.replaceAll(' ', '\\s+'))
    .join('|');

const partner = 'partner[\\s:_-]+(?:(?:status|state)[\\s:=_-]+)?';
/** `partner ready`, `partner-ready = no`, `partner not ready`, `partner status: ready`, `partner bereit`. */
const ofPartner = (signal: keyof typeof partnerWords): readonly MessageText[] => {
  const words = anyOf(partnerWords[signal].yes);
  const contrary = anyOf(partnerWords[signal].no);
  const not = anyOf(negations).replaceAll('\\s+', '[\\s_-]+');
  return [
    {
      when: `${before}${partner}${verb}(?:${contrary}|(?:${not})[\\s_-]+(?:${words}))${circumstance}`,
      signal,
      value: 'no',
    },
    {
      when: `${before}${partner}${verb}(?:${words})(?:[\\s:=]+(?<value>yes|no|true|false|1|0))?${circumstance}`,
      signal,
      values: { '': 'yes' },
    },
  ];
};

/** New firmware, by any of its names. Common practice, no source. */
const reflash = '(?:(?:firmware\\s+)?reflash(?:ing)?|(?:firmware|fw)\\s+(?:update|upgrade))';
const sync = 'sync(?:hroni[sz]ation)?[\\s_-]+';

/**
 * Messages in plain English. Each must be the whole message but for names, places and times: "alarm removed" removes no
 * module, "switchover inhibited" is none, and what is not understood is said to the user.
 */
export const plainMessages: readonly MessageText[] = [
  ...ofPartner('partner-ready'),
  ...ofPartner('partner-present'),
  ...stateSignals.filter((signal) => !signal.startsWith('partner-')).map(state),
  happening('switchover-command', '(?:switch-?over[\\s_-]+command(?:ed)?|commanded[\\s_-]+switch-?over)'),
  trouble('sync-failed', `${sync}${verb}(?:failed|aborted)`),
  happening('sync-start', `${sync}${verb}start(?:ed|s)?`),
  happening('reflash-start', `${reflash}[\\s_-]+${verb}(?:start(?:ed|s)?|began|begins)`),
  happening('reflash-end', `${reflash}[\\s_-]+${verb}(?:end(?:ed|s)?|done|finished|completed?)`),
  happening('restart', `(?:(?:warm|cold|manual|automatic|watchdog)\\s+)?${verb}restart(?:ed|s)?`),
  happening('removed', `${verb}(?:removed|removal)`),
  happening('inserted', `${verb}(?:inserted|insertion)`),
  happening('switchover', '(?:switch-?over|change-?over|chg[\\s_.-]*over|s/o)'),
  trouble(
    'fault',
    '(?:(?:hardware|software|processor|memory|clock|watchdog|fan|battery|internal|major|minor)\\s+)*fault',
  ),
];
