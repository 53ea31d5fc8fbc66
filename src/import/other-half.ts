import { withTopics } from '../changes.ts';
import { counterpart, type ImportedFile, type Subject, type Topic } from '../vocabulary.ts';

/**
 * The files with what is about "the other half" given to that half by its name: the one that the files name beside the half that
 * speaks; else the next of its kind (A and B, 1 and 2; common practice, no source), else `1` or `2`.
 */
export function settleOthers(files: readonly ImportedFile[]): readonly ImportedFile[] {
  if (!files.some(speaksOfOther)) return files;
  const named = halvesNamed(files);
  return files.map((file) => {
    if (!speaksOfOther(file)) return file;
    const changes = withTopics(file.changes, (topic) => {
      if (!isOther(topic)) return topic;
      const { isOther: _settled, ...subject } = topic.subject;
      const half = otherHalf(subject.half ?? '', named.get(subject.pair) ?? new Set());
      return { ...topic, subject: { ...subject, half } };
    });
    return { ...file, changes };
  });
}

function speaksOfOther({ changes }: ImportedFile): boolean {
  return changes.topics.some(isOther);
}

function isOther({ subject }: Topic): boolean {
  return subject.isOther === true;
}

function halvesNamed(files: readonly ImportedFile[]): ReadonlyMap<string, ReadonlySet<string>> {
  const named = new Map<string, Set<string>>();
  const add = ({ pair, half, isOther }: Subject): void => {
    if (half === null || isOther === true) return;
    const halves = named.get(pair) ?? new Set();
    named.set(pair, halves.add(half));
  };
  for (const { streams, changes } of files) {
    for (const { subject } of streams) add(subject);
    for (const { subject } of changes.topics) add(subject);
  }
  return named;
}

function otherHalf(half: string, named: ReadonlySet<string>): string {
  return [...named].filter((name) => name !== half).sort()[0] ?? counterpart(half);
}
