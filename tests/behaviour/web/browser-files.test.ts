import { gzipSync, crc32 as zlibCrc32 } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { platform as node } from '../../../src/cli/platform.ts';
import { DamagedEnd, type Platform } from '../../../src/pipeline.ts';
import { platform as browser } from '../../../web/browser-files.ts';
import { crc32 } from '../../../web/crc32.ts';

const text = Array.from({ length: 30_000 }, (_, row) => `row ${row} ${(row * 7919) % 10_007}\n`).join('');
const packed = gzipSync(text);

async function unpack(platform: Platform, bytes: Uint8Array): Promise<{ text: string; isDamaged: boolean }> {
  async function* pieces(): AsyncGenerator<Uint8Array> {
    for (let at = 0; at < bytes.length; at += 10_000) yield bytes.subarray(at, at + 10_000);
  }
  const found: Uint8Array[] = [];
  try {
    // A piece holds until the second next is asked for, and no longer.
    for await (const piece of platform.gunzip(pieces())) found.push(Uint8Array.from(piece));
  } catch (error) {
    if (error instanceof DamagedEnd) return { text: Buffer.concat(found).toString(), isDamaged: true };
    throw error;
  }
  return { text: Buffer.concat(found).toString(), isDamaged: false };
}

describe.each([
  { where: 'Node', platform: node },
  { where: 'the browser', platform: browser },
])('gunzip by $where', ({ platform }) => {
  test('gives what was packed, in one part and in several', async () => {
    expect(await unpack(platform, packed)).toEqual({ text, isDamaged: false });
    const parts = Buffer.concat([gzipSync(text.slice(0, 5000)), gzipSync(text.slice(5000))]);
    expect(await unpack(platform, parts)).toEqual({ text, isDamaged: false });
  });

  test('gives all that can be unpacked of an archive that is cut off, and says so', async () => {
    const half = await unpack(platform, packed.subarray(0, packed.length / 2));
    expect(half.isDamaged).toBe(true);
    expect(half.text.length).toBeGreaterThan(text.length / 3);
    expect(text.startsWith(half.text)).toBe(true);
  });

  test('says that bytes in the middle are damaged', async () => {
    const bytes = Uint8Array.from(packed);
    bytes.fill(0xff, 40_000, 40_100);
    const { isDamaged, text: begin } = await unpack(platform, bytes);
    expect(isDamaged).toBe(true);
    expect(begin.length).toBeGreaterThan(10_000);
  });

  test('gives all and says so where other bytes follow', async () => {
    const followed = Buffer.concat([packed, Buffer.from('garbage '.repeat(5000))]);
    expect(await unpack(platform, followed)).toEqual({ text, isDamaged: true });
  });

  const changed = (at: number): Uint8Array => {
    const bytes = Uint8Array.from(packed);
    bytes[packed.length + at] = (bytes[packed.length + at] ?? 0) ^ 1;
    return bytes;
  };
  // The trailer: four bytes of CRC-32, four of the length. Source: RFC 1952 (1996), section 2.3.1.
  test.each([
    ['sum', -8],
    ['length', -1],
  ])('gives all and says so where the %s is wrong', async (_, at) => {
    expect(await unpack(platform, changed(at))).toEqual({ text, isDamaged: true });
  });
  test('unpacks the members behind one with a wrong sum, and says so', async () => {
    const parts = Buffer.concat([changed(-8), packed]);
    expect(await unpack(platform, parts)).toEqual({ text: text + text, isDamaged: true });
  });
  test.each([1, 3, 4, 20_000])(
    'passes over %d zeros at the end, also before another member',
    async (count) => {
      const zeros = Buffer.alloc(count);
      expect(await unpack(platform, Buffer.concat([packed, zeros]))).toEqual({ text, isDamaged: false });
      const parts = Buffer.concat([packed, zeros, packed]);
      expect(await unpack(platform, parts)).toEqual({ text: text + text, isDamaged: false });
    },
  );
  test.each(['x', 'xyz', 'xyz1'])('says that "%s" follows', async (rest) => {
    const bytes = Buffer.concat([packed, Buffer.from(rest)]);
    expect(await unpack(platform, bytes)).toEqual({ text, isDamaged: true });
  });
  test('says that the trailer is cut off', async () => {
    expect(await unpack(platform, packed.subarray(0, -4))).toEqual({ text, isDamaged: true });
  });
  test('unpacks nothing to nothing', async () => {
    expect(await unpack(platform, gzipSync(''))).toEqual({ text: '', isDamaged: false });
  });
});

test.each(['', 'a', 'abc', '123456789', text])('CRC-32 as zlib has it', (bytes) => {
  expect(crc32(Buffer.from(bytes))).toBe(zlibCrc32(bytes));
});
