import { InputError } from '../pipeline.ts';

const reasons: Readonly<Record<string, readonly [string, string]>> = {
  ENOENT: ['there is no such file or folder.', 'Check the name.'],
  EACCES: ['no permission to read it.', 'Get read permission, or read a copy.'],
  EPERM: ['no permission to read it.', 'Get read permission, or read a copy.'],
  EISDIR: ['it is a folder.', 'Name a file.'],
  ELOOP: ['it is a link that leads back to itself.', 'Name the file itself.'],
  ENAMETOOLONG: ['its name is too long for the disk.', 'Choose a shorter one.'],
  EEXIST: ['a file of that name already exists.', 'Choose another name, or move that file.'],
  ENOTDIR: ['part of its path is not a folder.', 'Check the name.'],
  ENOSPC: ['the disk is full.', 'Free some space and try again.'],
  EDQUOT: ['your disk quota is used up.', 'Free some space and try again.'],
  EFBIG: ['it would be larger than the file system allows.', 'Choose another place.'],
  EIO: ['the disk reports an error.', 'Copy it to another disk and try again.'],
  ESTALE: ['it was removed while it was read.', 'Try again.'],
  EMFILE: ['too many files are open.', 'Close other programs and try again.'],
  EROFS: ['the disk is read-only.', 'Choose another place.'],
};

const noWriting = [
  'no permission to write there.',
  'Get write permission, or choose another place.',
] as const;

/** The same for what was to be written. */
export function refuseWriting(where: string, error: unknown): never {
  if (error instanceof Error && 'code' in error && (error.code === 'EACCES' || error.code === 'EPERM'))
    throw new InputError(where, ...noWriting);
  return refuse(where, error);
}

/** Turns what the system refused into a line for the user; anything else is a defect and goes on. */
export function refuse(where: string, error: unknown): never {
  if (!(error instanceof Error && 'code' in error && 'syscall' in error)) throw error;
  const [what, fix] = reasons[String(error.code)] ?? [`the system refused it (${error.code}).`, 'Try again.'];
  throw new InputError(where, what, fix);
}
