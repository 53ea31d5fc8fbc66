import { Dirent, lstat, readdir, realpath, stat } from 'node:fs';

/**
 * The file system as patterns with `*` are to see it: a link that leads nowhere, a pipe and a device are things that a name fits,
 * so that they can be told of. The search itself would leave them out without a word.
 */
export const allThings = {
  realpath: new Proxy(realpath, {
    apply(target, _self, [path, told]) {
      target(path, (error, found) => told(null, error === null ? found : path));
    },
  }),
  stat: new Proxy(stat, {
    apply(target, _self, [path, told]) {
      target(path, (error, found) => (error === null ? told(null, found) : lstat(path, told)));
    },
  }),
  readdir: new Proxy(readdir, {
    apply(target, _self, [path, options, told]) {
      target(path, options, (error, entries) => told(error, entries?.map(asFile)));
    },
  }),
};

function asFile(entry: unknown): unknown {
  const isOther =
    entry instanceof Dirent && !entry.isDirectory() && !entry.isSymbolicLink() && !entry.isFile();
  return isOther ? Object.assign(entry, { isFile: () => true }) : entry;
}
