export const encodings = [
  'utf-8',
  'utf-8-bom',
  'utf-16le',
  'utf-16le-bom',
  'utf-16be',
  'utf-16be-bom',
  'windows-1252',
] as const;

export type Encoding = (typeof encodings)[number];

/** A text as the bytes of a file. Throws RangeError for a character that Windows-1252 does not have. */
export function encode(text: string, encoding: Encoding): Uint8Array {
  switch (encoding) {
    case 'utf-8':
      return new TextEncoder().encode(text);
    case 'utf-8-bom':
      return new TextEncoder().encode(`\uFEFF${text}`);
    case 'utf-16le':
      return utf16(text, true);
    case 'utf-16le-bom':
      return utf16(`\uFEFF${text}`, true);
    case 'utf-16be':
      return utf16(text, false);
    case 'utf-16be-bom':
      return utf16(`\uFEFF${text}`, false);
    case 'windows-1252':
      return windows1252(text);
  }
}

function utf16(text: string, littleEndian: boolean): Uint8Array {
  const view = new DataView(new ArrayBuffer(text.length * 2));
  for (let index = 0; index < text.length; index += 1) {
    view.setUint16(index * 2, text.charCodeAt(index), littleEndian);
  }
  return new Uint8Array(view.buffer);
}

function windows1252(text: string): Uint8Array {
  const all = Uint8Array.from({ length: 256 }, (_, byte) => byte);
  // Decoded as a stream: at one go, Node 20.20 takes bytes 80 to 9F for Latin-1 (nodejs/node issue 60888).
  const characters = new TextDecoder('windows-1252').decode(all, { stream: true });
  const bytes = new Map([...characters].map((character, byte) => [character, byte]));
  return Uint8Array.from(text, (character) => {
    const byte = bytes.get(character);
    if (byte === undefined) throw new RangeError(`Windows-1252 has no "${character}".`);
    return byte;
  });
}
