import type { TimelineEvent } from '../vocabulary.ts';

/**
 * What a change is called in a sentence; `half` is its half, or "a half" where changes of both are meant. Readiness, presence and
 * light are the loss itself; identities change by work only; the standby role is the other side of the active one.
 */
const words: Readonly<Record<string, (half: string) => string>> = {
  'role active': (half) => `${half} became active`,
  'role none': (half) => `${half} was left without a role`,
  'link-a up': (half) => `link a of ${half} came up`,
  'link-a down': (half) => `link a of ${half} went down`,
  'link-b up': (half) => `link b of ${half} came up`,
  'link-b down': (half) => `link b of ${half} went down`,
  'links crossed': (half) => `the links of ${half} were crossed`,
  'links straight': (half) => `the links of ${half} were set straight`,
  'configuration pending': () => 'a change of the configuration was pending',
  'configuration current': () => 'the configuration was brought up to date',
  'supply fault': (half) => `the supply of ${half} failed`,
  'supply good': (half) => `the supply of ${half} came back`,
  restart: (half) => `${half} restarted`,
  'sync-start': (half) => `${half} began to synchronise`,
  'sync-failed': (half) => `${half} failed to synchronise`,
  fault: (half) => `${half} reported a fault`,
};

/** Same signal and value; the text of a fault does not part it from other faults. */
export function kindOfChange({ signal, value }: TimelineEvent): string {
  return value === null || words[signal] !== undefined ? signal : `${signal} ${value}`;
}

/** Whether losses are compared with changes of this kind. */
export function isComparedChange(event: TimelineEvent): boolean {
  return words[kindOfChange(event)] !== undefined;
}

/** What happened, of one half or of whichever: `link a of half B went down`. */
export function sayChange(kind: string, half: string | null): string {
  return words[kind]?.(half === null ? 'a half' : `half ${half}`) ?? kind;
}
