import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { platform as node } from '../../../src/cli/platform.ts';
import { DamagedEnd, type Platform } from '../../../src/pipeline.ts';
import { platform as browser } from '../../../web/browser-files.ts';

const text = Array.from({ length: 30_000 }, (_, row) => `row ${row} ${(row * 7919) % 10_007}\n`).join('');
const packed = gzipSync(text);

async function unpack(platform: Platform, bytes: Uint8Array): Promise<{ text: string; isDamaged: boolean }> {
  async function* pieces(): AsyncGenerator<Uint8Array> {
    for (let at = 0; at < bytes.length; at += 10_000) yield bytes.subarray(at, at + 10_000);
  }
  const found: Uint8Array[] = [];
  try {
    for await (const piece of platform.gunzip(pieces())) found.push(piece);
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
});
