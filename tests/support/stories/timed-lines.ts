const stamp = /^(\d{4}-\d\d-\d\d)([ T])(\d\d:\d\d:\d\d)(\.\d{3})?/;
const date = /^\d{4}-\d\d-\d\d$/;
const clock = /^(\d\d:\d\d) /;
const dayMs = 86_400_000;

/** A line and its instant in milliseconds UTC; `null` for a header, or the heading or date of field notes. */
export interface TimedLine {
  readonly line: string;
  readonly time: number | null;
}

/** The lines of a dressed file with their instants: each begins with a stamp, or a clock below a date. */
export function timedLines(text: string): readonly TimedLine[] {
  let day = '';
  return text
    .trimEnd()
    .split('\n')
    .map((line) => {
      const [, stamped, , time, decimals = '.000'] = stamp.exec(line) ?? [];
      if (stamped !== undefined) return { line, time: Date.parse(`${stamped}T${time}${decimals}Z`) };
      if (date.test(line)) day = line;
      const noted = clock.exec(line)?.[1];
      return { line, time: noted === undefined ? null : Date.parse(`${day}T${noted}:00Z`) };
    });
}

export function joinLines(lines: readonly { readonly line: string }[]): string {
  return `${lines.map(({ line }) => line).join('\n')}\n`;
}

/** Lines with a stamp of their own; field notes have none. */
export function isStamped(text: string): boolean {
  return text.split('\n', 2).some((line) => stamp.test(line));
}

/** True if every stamp has decimals. */
export function hasDecimals(text: string): boolean {
  return timedLines(text).every(({ line }) => stamp.exec(line)?.[4] !== undefined || !stamp.test(line));
}

/** A text with all its stamps and dates moved on; field notes by whole days only. Throws RangeError else. */
export function shiftText(text: string, ms: number): string {
  if (!isStamped(text) && ms % dayMs !== 0) throw new RangeError('Field notes are moved by whole days.');
  return joinLines(
    timedLines(text).map(({ line, time }) => {
      const found = stamp.exec(line);
      if (found !== null && time !== null) return { line: restamped(line, found, time + ms) };
      return { line: date.test(line) ? new Date(Date.parse(line) + ms).toISOString().slice(0, 10) : line };
    }),
  );
}

function restamped(line: string, [whole, , mark, , decimals]: RegExpExecArray, time: number): string {
  const iso = new Date(time).toISOString().slice(0, decimals === undefined ? 19 : 23);
  return `${iso.replace('T', mark ?? 'T')}${line.slice(whole.length)}`;
}
