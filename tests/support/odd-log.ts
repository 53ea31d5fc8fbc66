/** Seconds of a clock as `HH:MM:SS`. */
function clock(seconds: number): string {
  const two = (value: number): string => String(Math.floor(value)).padStart(2, '0');
  return `${two(seconds / 3600)}:${two((seconds / 60) % 60)}:${two(seconds % 60)}`;
}

const halves = ['gate-7-a', 'gate-7-b'];
const idle = (i: number): string =>
  [
    `copied ${(i * 7) % 93} blocks to my twin`,
    `operator "desk ${i % 9}" looked at page ${i % 17}`,
    `bus load ${(i * 13) % 60} %`,
  ][i % 3] ?? '';

/** What is said besides at which line, by which half, and what it means. */
const told = [
  { line: 3, half: 0, says: 'I carry the plant now' },
  { line: 4, half: 1, says: 'I shadow the plant now' },
  { line: 400, half: 0, says: 'my twin fell out of step (cause 17)' },
  { line: 460, half: 0, says: 'my twin is in step after 61 s' },
  { line: 700, half: 0, says: 'my twin fell out of step (cause 4)' },
  { line: 731, half: 0, says: 'my twin is in step after 29 s' },
  { line: 901, half: 1, says: 'I carry the plant now' },
  { line: 902, half: 0, says: 'I shadow the plant now' },
] as const;

/** Line `n` of the log is written at 06:00:00 and `n` seconds, on 14 March 2026, a thousand lines in all. */
export function oddLog(): string {
  return Array.from({ length: 1000 }, (_, i) => {
    const line = i + 1;
    const special = told.find((t) => t.line === line);
    const half = halves[special?.half ?? line % 2] ?? '';
    return `20260314-${clock(6 * 3600 + line)} | ${line % 5 === 0 ? 'W' : 'I'} | ${half} | ${special?.says ?? idle(line)}\n`;
  }).join('');
}

/** Fills in what a wording means in a draft: its signal, and its value if it has one. */
export function fillIn(draft: string, wording: string, signal: string, value?: string): string {
  const lines = draft.split('\n');
  const at = lines.findIndex((line) => line.startsWith('#  - { when: ') && line.includes(wording));
  const line = lines[at];
  if (line === undefined) throw new Error(`The draft has no rule to fill in for "${wording}".`);
  const filled = line
    .slice(1)
    .replace('signal: ___', `signal: ${signal}`)
    .replace(/, value: ___/, value === undefined ? '' : `, value: ${value}`);
  return lines.with(at, filled).join('\n');
}
