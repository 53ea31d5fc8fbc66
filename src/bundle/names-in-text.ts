import type { Name } from './find-names.ts';

const octet = '(?:25[0-5]|2[0-4]\\d|1?\\d?\\d)';
const addresses: readonly RegExp[] = [
  // IPv4. Source: RFC 3986 (2005), section 3.2.2.
  new RegExp(`(?<![\\w.])(?:${octet}\\.){3}${octet}(?![\\w]|\\.\\d)`, 'g'),
  // IPv6, in full or with one gap. Source: RFC 4291 (2006), section 2.2.
  /(?<![\w:.])(?:[0-9a-f]{1,4}:){7}[0-9a-f]{1,4}(?![\w:])/gi,
  /(?<![\w:.])(?:[0-9a-f]{1,4}:){1,6}(?::[0-9a-f]{1,4}){1,6}(?![\w:])/gi,
  // MAC, by octets. Source: IEEE 802-2014, section 8.1.
  /(?<![\w:-])[0-9a-f]{2}(?:[:-][0-9a-f]{2}){5}(?![\w:-])/gi,
  /(?<![\w.])[0-9a-f]{4}\.[0-9a-f]{4}\.[0-9a-f]{4}(?![\w.])/gi,
];

/** E-mail, as it is usually written. Source: RFC 5322 (2008), section 3.4.1. */
const mail = /[\w.+-]{1,64}@[\w-]+(?:\.[\w-]+)+/g;

/** Who was logged on, by the words that logs have for it: common practice, no source. */
const users: readonly RegExp[] = [
  /\buser(?:name)? +["']?([\p{L}\p{N}_][\p{L}\p{N}_. \\-]{0,38}?)["']? +(?:has )?(?:logged|signed|log[io]n|log ?out|connected|disconnected|authenticated)\b/giu,
  /\b(?:user(?:name|id)?|usr|login|account|operator)\s*[=:]\s*["']?([\p{L}\p{N}_][\p{L}\p{N}_.\\-]{0,38})/giu,
  /\b(?:logged|signed) ?(?:on|off|in|out) by (?:user )?["']?([\p{L}\p{N}_][\p{L}\p{N}_.\\-]{0,38})/giu,
  /\b(?:log[io]n|logout|password|session opened|session closed)(?: \w+)? (?:of|by|from|for) (?:user )?["']?([\p{L}\p{N}_][\p{L}\p{N}_.\\-]{0,38})/giu,
  /\bby user ["']?([\p{L}\p{N}_][\p{L}\p{N}_.\\-]{0,38})/giu,
];

/** Accounts that are nobody's own, and what is no account. */
const nobody =
  /^(?:root|admin|administrator|system|operator|engineer|service|guest|user|users|none|null|nobody|unknown|n\/?a|the|a|was|is|has|on|off|in|out|by|from|for|failed|ok|true|false|\d+)$/i;

/** No one's address: any, this computer's, all, and masks of networks. */
const noAddress = /^(?:0\.|127\.|255\.|22[4-9]\.|::1?$)/;

/** Addresses and users that a text names. `known` are texts that look like one and are firmware. */
export function namesInText(text: string, known: ReadonlySet<string>): readonly Name[] {
  const found = new Map<string, Name>();
  const add = (kind: Name['kind'], given: string): void => {
    const original = given.trim().replace(/[.\\-]+$/, '');
    if (original.length > 1 && !known.has(original))
      found.set(`${kind} ${original.toLowerCase()}`, { kind, original, isExact: false });
  };
  for (const pattern of text.includes('@') ? [...addresses, mail] : addresses)
    for (const [address] of text.matchAll(pattern))
      if (!noAddress.test(address) && isNoStamp(address)) add('address', address);
  for (const pattern of users)
    for (const [, user = ''] of text.matchAll(pattern)) if (!nobody.test(user.trim())) add('user', user);
  return [...found.values()];
}

/** Six pairs of digits may be a date with a clock: an address of that form has a letter, or colons. */
function isNoStamp(text: string): boolean {
  return /[a-f@:]/i.test(text) || /^\d+(?:\.\d+){3}$/.test(text);
}
