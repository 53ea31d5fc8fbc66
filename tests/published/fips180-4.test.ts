/**
 * SHA-256 of the page against FIPS 180-4, Secure Hash Standard, August 2015; the digests are those of NIST's example values
 * for it ("SHA-256", one-block and two-block message samples, NIST Cryptographic Standards and Guidelines, 2001), from memory.
 */
import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { hasher } from '../../web/hasher.ts';

async function digest(...pieces: readonly (string | Uint8Array)[]): Promise<string> {
  const hash = hasher();
  for (const piece of pieces)
    await hash.update(typeof piece === 'string' ? new TextEncoder().encode(piece) : piece);
  return hash.digest();
}

describe('SHA-256 in the page', () => {
  test('gives the published digests', async () => {
    expect(await digest('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
    expect(await digest('abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq')).toBe(
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    );
  });
  test('is the same in one piece and in many, and the same as the platform gives', async () => {
    const bytes = Uint8Array.from({ length: 100_003 }, (_, index) => index % 251);
    const whole = createHash('sha256').update(bytes).digest('hex');
    expect(await digest(bytes)).toBe(whole);
    expect(await digest(bytes.subarray(0, 7), bytes.subarray(7, 65_600), bytes.subarray(65_600))).toBe(whole);
  });
});
