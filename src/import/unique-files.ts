import type { ImportedFile } from '../vocabulary.ts';

/**
 * Each file once, and no two under one name: a file given twice counts once; of different files with one name, as two
 * sites may have them, those from a timeline or an archive are named after it too.
 */
export function uniqueFiles(files: readonly ImportedFile[]): readonly ImportedFile[] {
  const known = new Set<string>();
  const once = files.filter((file) => !known.has(keyOf(file)) && known.add(keyOf(file)));
  const names = new Set<string>();
  const shared = new Set<string>();
  for (const { input } of once) (names.has(input.file) ? shared : names).add(input.file);
  return once.map((file) => {
    const { container, file: name } = file.input;
    return shared.has(name) && container !== undefined ? renamed(file, `${container.file}/${name}`) : file;
  });
}

function keyOf({ input }: ImportedFile): string {
  return `${input.sha256} ${input.file}`;
}

/** The same file under another name. */
export function renamed(file: ImportedFile, name: string): ImportedFile {
  const notices = file.notices.map((notice) => {
    const [first, ...rest] = notice.lines;
    return {
      ...notice,
      lines: [{ ...first, file: name }, ...rest.map((line) => ({ ...line, file: name }))] as const,
    };
  });
  return { ...file, input: { ...file.input, file: name }, notices };
}
