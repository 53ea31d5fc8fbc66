import { eachChunk } from './damaged-end.ts';
import type { FileSource } from './file-source.ts';
import { InputError } from './input-error.ts';

/** So many bytes tell what a file is. */
export const headBytes = 65_536;

/**
 * The first bytes of a file, to tell what it is; of the zeros that it begins with at most one, so that bytes that go in twos
 * still do. Throws InputError if there are none, or nothing but zeros.
 */
export async function readHead(source: FileSource): Promise<Uint8Array> {
  const head = new Uint8Array(headBytes);
  let length = 0;
  let zeros = 0;
  const damage = await eachChunk(source, (chunk) => {
    let from = 0;
    if (length === 0) {
      while (from < chunk.length && chunk[from] === 0) from += 1;
      zeros += from;
      if (from === chunk.length) return true;
      length = zeros % 2;
    }
    const part = chunk.subarray(from, from + headBytes - length);
    head.set(part, length);
    length += part.length;
    return length < headBytes;
  });
  if (length > 0) return head.subarray(0, length);
  const { name } = source;
  if (zeros > 0)
    throw new InputError(
      name,
      'it contains only zero bytes, as after a loss of power.',
      'Export it again, or use another source.',
    );
  if (damage === null) throw new InputError(name, 'the file is empty.', 'Export it again.');
  throw new InputError(name, `it cannot be read: ${damage}.`, 'Copy or pack it again.');
}
