const table = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit += 1) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  return value;
});

/** CRC-32 of some bytes, going on from that of the bytes before. Source: RFC 1952 (1996), section 8. */
export function crc32(bytes: Uint8Array, before = 0): number {
  let sum = ~before;
  for (let at = 0; at < bytes.length; at += 1)
    sum = (sum >>> 8) ^ (table[(sum ^ (bytes[at] ?? 0)) & 255] ?? 0);
  return ~sum >>> 0;
}
