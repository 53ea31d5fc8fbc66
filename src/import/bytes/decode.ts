/** How a file's bytes become text. */
export interface Encoding {
  /** A WHATWG label. */
  readonly label: string;
  readonly because: string;
  /** Only its start was looked at: what comes later may show that it is another. */
  readonly isGuess?: boolean;
}

const replacement = '\uFFFD';

/**
 * The encoding of a file from its first bytes: a byte order mark decides; else text in which every other byte is zero is
 * UTF-16, text that is valid UTF-8 is that, and anything else Windows-1252. `null` if it is no text at all.
 */
export function detectEncoding(head: Uint8Array): Encoding | null {
  const [a, b, c] = head;
  if (a === 0xef && b === 0xbb && c === 0xbf)
    return { label: 'utf-8', because: 'it begins with a UTF-8 byte order mark' };
  if (a === 0xff && b === 0xfe)
    return { label: 'utf-16le', because: 'it begins with a UTF-16 byte order mark' };
  if (a === 0xfe && b === 0xff)
    return { label: 'utf-16be', because: 'it begins with a UTF-16 byte order mark' };
  const zeros = countZeros(head);
  const half = Math.floor((head.length - zeros.inRuns) / 2);
  if (half > 1 && zeros.odd > half * 0.7 && zeros.even < half * 0.1) {
    return { label: 'utf-16le', because: 'every second byte is zero' };
  }
  if (half > 1 && zeros.even > half * 0.7 && zeros.odd < half * 0.1) {
    return { label: 'utf-16be', because: 'every first byte of two is zero' };
  }
  if (isBinary(head, zeros)) return null;
  return isUtf8(head) ? { label: 'utf-8', because: 'its bytes are valid UTF-8', isGuess: true } : windows1252;
}

/** What text is that is no UTF-8. */
export const windows1252: Encoding = { label: 'windows-1252', because: 'its bytes are not valid UTF-8' };

/** Looks over what was decoded as UTF-8, for bytes that are none. */
export interface ForeignWatch {
  /** Gives the text back. */
  see(text: string): string;
  /** True if the only characters beyond ASCII were bytes that could not be read. */
  isForeign(): boolean;
}

export function foreignWatch(): ForeignWatch {
  let hasUnread = false;
  let hasOther = false;
  return {
    see(text) {
      hasUnread = hasUnread || text.includes(replacement);
      hasOther = hasOther || /[\u0080-\ufffc]/.test(text);
      return text;
    },
    isForeign: () => hasUnread && !hasOther,
  };
}

/** Zeros at even and at odd places, and those in runs, which no encoding makes. */
interface Zeros {
  readonly even: number;
  readonly odd: number;
  readonly inRuns: number;
}

/** So many in a row are no text in any encoding, but what a crash leaves. UTF-32 has three in a row. */
const leastRun = 8;

function countZeros(bytes: Uint8Array): Zeros {
  const counts = { even: 0, odd: 0, inRuns: 0 };
  for (let at = 0; at < bytes.length; at += 1) {
    let end = at;
    while (end < bytes.length && bytes[end] === 0) end += 1;
    if (end - at >= leastRun) counts.inRuns += end - at;
    else for (let place = at; place < end; place += 1) counts[place % 2 === 0 ? 'even' : 'odd'] += 1;
    at = end;
  }
  return counts;
}

/**
 * More than a stray control character in a hundred, or mostly zeros: no text that a person or a logger wrote. Blocks of zeros
 * are what a crash leaves in a log; only where there is nothing else there is no text.
 */
function isBinary(bytes: Uint8Array, { even, odd, inRuns }: Zeros): boolean {
  let controls = 0;
  for (const byte of bytes) {
    if (byte !== 0 && byte < 32 && byte !== 9 && byte !== 10 && byte !== 13 && byte !== 27) controls += 1;
  }
  const others = bytes.length - inRuns;
  return others === 0 || controls > Math.max(1, others / 100) || even + odd > others / 2;
}

function isUtf8(bytes: Uint8Array): boolean {
  const text = new TextDecoder('utf-8').decode(bytes, { stream: true });
  return !text.includes(replacement);
}

/** A copy of a string that does not keep the large text alive that it was cut from. */
export function detached(text: string): string {
  return text.length < 13 ? text : decoder.decode(encoder.encode(text));
}

const encoder = new TextEncoder();
const decoder = new TextDecoder('utf-8', { ignoreBOM: true });
