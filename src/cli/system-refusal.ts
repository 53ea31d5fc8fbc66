import { InputError } from '../pipeline.ts';

const reasons: Readonly<Record<string, readonly [string, string]>> = {
  ENOENT: ['there is no such file or folder.', 'Check the name.'],
  EACCES: ['it may not be read: no permission.', 'Ask for the permission, or copy it.'],
  EPERM: ['it may not be read: no permission.', 'Ask for the permission, or copy it.'],
  EISDIR: ['it is a folder.', 'Name a file.'],
  ELOOP: ['it is a link that leads in a circle.', 'Name the file itself.'],
  ENAMETOOLONG: ['its name is too long for the disk.', 'Choose a shorter one.'],
  EEXIST: ['there is a file of that name.', 'Name another, or move it away.'],
  ENOTDIR: ['part of its path is no folder.', 'Check the name.'],
  ENOSPC: ['the disk is full.', 'Make room and try again.'],
  EDQUOT: ['your share of the disk is full.', 'Make room and try again.'],
  EFBIG: ['it would be larger than the system allows.', 'Choose another place.'],
  EIO: ['the disk fails.', 'Copy it to another disk and try again.'],
  ESTALE: ['it went away while it was read.', 'Try again.'],
  EMFILE: ['the system allows no more open files.', 'Close other programs and try again.'],
  EROFS: ['the disk can not be written to.', 'Choose another place.'],
};

/** Turns what the system refused into a line for the user; anything else is a defect and goes on. */
export function refuse(where: string, error: unknown): never {
  if (!(error instanceof Error && 'code' in error && 'syscall' in error)) throw error;
  const [what, fix] = reasons[String(error.code)] ?? [`the system refuses it (${error.code}).`, 'Try again.'];
  throw new InputError(where, what, fix);
}
