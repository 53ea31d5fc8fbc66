/** A line of an export, the file it belongs into, and the instant of its stamp in milliseconds UTC. */
export interface ReplayedLine {
  readonly file: string;
  readonly time: number;
  readonly text: string;
}

/** A text file by its name. */
export interface NamedText {
  readonly name: string;
  readonly text: string;
}

/**
 * The lines of the demo site's exports in the order of their stamps; a line without one follows the line before it. The
 * site's clocks show UTC in March.
 */
export function linesInTime(files: readonly NamedText[]): readonly ReplayedLine[] {
  const stamped = files.map((file) => ({ file, lines: file.text.split(/(?<=\n)/) }));
  const first = stamped.flatMap(({ lines }) => lines.flatMap((line) => stampOf(line, null) ?? []))[0] ?? 0;
  const day = first - (first % 86_400_000);
  const all = stamped.flatMap(({ file, lines }) => {
    let time = Number.NEGATIVE_INFINITY;
    return lines.map((text) => {
      time = stampOf(text, day) ?? time;
      return { file: file.name, time, text };
    });
  });
  return all.toSorted((a, b) => a.time - b.time);
}

const iso = /^(\d{4})-(\d\d)-(\d\d)[T ](\d\d):(\d\d):(\d\d)(\.\d+)?/;
const dayFirst = /^(\d\d)\/(\d\d)\/(\d{4}) (\d\d):(\d\d):(\d\d)/;
const clock = /^(\d\d):(\d\d) /;

/** When a line says it is of; `null` where it does not, or says the clock alone and the day is not known. */
function stampOf(line: string, day: number | null): number | null {
  const numbers = (found: RegExpExecArray): readonly number[] =>
    found.slice(1).map((part) => Number(part ?? 0));
  const whole = iso.exec(line);
  if (whole !== null) {
    const [year = 0, month = 1, date = 1, hour = 0, minute = 0, second = 0, rest = 0] = numbers(whole);
    return Date.UTC(year, month - 1, date, hour, minute, second) + rest * 1000;
  }
  const reading = dayFirst.exec(line);
  if (reading !== null) {
    const [date = 1, month = 1, year = 0, hour = 0, minute = 0, second = 0] = numbers(reading);
    return Date.UTC(year, month - 1, date, hour, minute, second);
  }
  const note = clock.exec(line);
  if (note === null || day === null) return null;
  const [hour = 0, minute = 0] = numbers(note);
  return day + (hour * 60 + minute) * 60_000;
}
