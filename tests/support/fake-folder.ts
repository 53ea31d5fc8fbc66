/** A file of a fake folder: its content, and when it was written, in milliseconds. */
export interface FakeFile {
  readonly text: string;
  readonly at: number;
}

/** A folder as a browser gives it to a page, over files that a test writes; a name with a slash lies in a folder of it. */
export function fakeFolder(name: string, files: Map<string, FakeFile>): FileSystemDirectoryHandle {
  const handle = {
    kind: 'directory',
    name,
    async *values() {
      const folders = new Set([...files.keys()].filter((n) => n.includes('/')).map((n) => n.split('/')[0]));
      for (const folder of folders) {
        const own = [...files].filter(([n]) => n.startsWith(`${folder}/`));
        yield fakeFolder(folder ?? '', new Map(own.map(([n, f]) => [n.slice((folder ?? '').length + 1), f])));
      }
      for (const [own] of files) if (!own.includes('/')) yield fakeFile(own, files);
    },
  };
  return asHandle(handle);
}

function fakeFile(name: string, files: ReadonlyMap<string, FakeFile>): unknown {
  return {
    kind: 'file',
    name,
    async getFile() {
      const found = files.get(name);
      if (found === undefined) throw new DOMException('It is gone.', 'NotFoundError');
      return new File([found.text], name, { lastModified: found.at });
    },
  };
}

/** What of a handle the page uses; the rest of it is not there. */
function asHandle(value: unknown): FileSystemDirectoryHandle {
  const isHandle = (one: unknown): one is FileSystemDirectoryHandle => one !== null;
  if (!isHandle(value)) throw new TypeError('There is no folder.');
  return value;
}
