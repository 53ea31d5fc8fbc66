/** Whether a condition stands: `on`, `off`, or neither is said of it, as when somebody acknowledged it. */
export type ConditionState = 'on' | 'off' | 'neither';

/** Words of alarm lists. Source: IEC 62682 names normal, alarm, acknowledged, return to normal; the rest is common practice, no source. */
const words: Readonly<Record<ConditionState, readonly string[]>> = {
  on: [
    'active',
    'alarm',
    'in alarm',
    'raised',
    'set',
    'standing',
    'came',
    'present',
    'on',
    'open',
    'appeared',
    'incoming',
  ],
  off: [
    'cleared',
    'clear',
    'inactive',
    'normal',
    'return to normal',
    'returned to normal',
    'returned',
    'rtn',
    'clr',
    'gone',
    'went',
    'reset',
    'off',
    'closed',
    'ended',
    'disappeared',
    'outgoing',
  ],
  neither: ['acknowledged', 'acked', 'ack', 'acknowledge', 'shelved', 'suppressed', 'disabled', 'confirmed'],
};
/** Whether it was acknowledged says nothing of the condition itself: `ACTIVE UNACK`, `RTN/ACK`. */
const acknowledgement = /\b(?:un-?ack(?:nowledged|ed)?|not ack(?:nowledged|ed)?|ack(?:nowledged|ed)?)\b/i;
const separator = /[\s/,;|_-]/;

/** What a cell of a column of states says of its condition; undefined for wording that is not known. */
export function conditionState(cell: string): ConditionState | undefined {
  const text = cell.trim().toLowerCase().replaceAll('_', ' ');
  const known = stateNamed(text);
  if (known !== undefined) return known;
  const bare = withoutAcknowledgement(text);
  // "unack" alone: it stands, or somebody would have seen it go.
  return bare === '' ? (/un-?ack|not ack/.test(text) ? 'on' : 'neither') : stateNamed(bare);
}

function withoutAcknowledgement(text: string): string {
  const found = acknowledgement.exec(text);
  if (found === null) return text;
  const [before, after] = [text.slice(0, found.index), text.slice(found.index + found[0].length)];
  // Not by one pattern with the separators in it: over a long run of them that takes the square of its length.
  let end = before.length;
  while (separator.test(before.charAt(end - 1))) end -= 1;
  let start = 0;
  while (separator.test(after.charAt(start))) start += 1;
  return `${before.slice(0, end)} ${after.slice(start)}`.trim();
}

function stateNamed(text: string): ConditionState | undefined {
  const states = ['on', 'off', 'neither'] as const;
  return states.find((state) => words[state].includes(text));
}
