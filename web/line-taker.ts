/** What is longer is no line of a log: as much as the import keeps of one is read back. */
const longestRead = 1_048_576;

/** Takes a text piece by piece and keeps the lines that are wanted. */
export interface LineTaker {
  /** False once no wanted line can follow. */
  take(text: string): boolean;
  /** The wanted lines that were found, by their numbers, without their ends; a last line without an end is one too. */
  found(): ReadonlyMap<number, string>;
}

/** Takes a text that begins in the line `first`. */
export function lineTaker(first: number, wanted: ReadonlySet<number>): LineTaker {
  const kept = new Map<number, string>();
  const last = Math.max(...wanted);
  let line = first;
  let rest = '';
  const keep = (text: string): void => {
    if (wanted.has(line) && rest.length < longestRead) rest += text.slice(0, longestRead - rest.length);
  };
  const close = (): void => {
    if (wanted.has(line)) kept.set(line, rest.endsWith('\r') ? rest.slice(0, -1) : rest);
    rest = '';
    line += 1;
  };
  return {
    take(text) {
      let from = 0;
      for (let end = text.indexOf('\n'); end >= 0 && line <= last; end = text.indexOf('\n', from)) {
        keep(text.slice(from, end));
        close();
        from = end + 1;
      }
      if (line <= last) keep(text.slice(from));
      return line <= last;
    },
    found() {
      if (rest !== '') close();
      return kept;
    },
  };
}
