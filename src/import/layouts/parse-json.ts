/** A text, which may hold what looks like a number, or a number. */
const stringOrNumber = /"(?:[^"\\]|\\[\s\S])*"|-?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?/g;
/** A number that another text of it would be told by: zeros at its end, more digits than a number holds, a power of ten. */
const mayBeOther = /\.\d*0\b|\d{16}|\d[eE]/;

/**
 * What a JSON text says; undefined for a text that is none. A number whose digits would be others is the text that stands there:
 * firmware 6.10 is not 6.1, and a serial of twenty digits keeps them.
 */
export function parseJson(text: string): unknown {
  try {
    const value: unknown = JSON.parse(text);
    return mayBeOther.test(text) ? JSON.parse(text.replace(stringOrNumber, asWritten)) : value;
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}

function asWritten(token: string): string {
  const number = Number(token);
  const isSame = token.startsWith('"') || String(number) === token;
  const isPower = /e/i.test(token) && Number.isFinite(number);
  return isSame || isPower ? token : `"${token}"`;
}
