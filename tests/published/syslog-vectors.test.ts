/**
 * Source: npm package nsyslog-parser 0.10.1 (MIT), test/examples.js: lines that others' devices wrote, with their parts.
 * Taken: of version 1 (RFC 5424, section 9.1) and of RFC 3164 those in which the host it found stands where the standard
 * puts it, after the stamp. Exact, but for blanks at the end: priority, host and message.
 */
import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import { readRfc3164, readRfc5424 } from '../../src/import/layouts/syslog.ts';

interface Vector {
  readonly originalMessage: string;
  readonly type: string;
  readonly prival?: number;
  readonly host?: string;
  readonly appName?: string;
  readonly header?: string;
  readonly message: string;
}

const require = createRequire(import.meta.url);
const vectors: readonly Vector[] = require('nsyslog-parser/test/examples.js');
const stamped = (host: string): RegExp => new RegExp(`(?:T|:)\\S+ ${host.replace(/[.[\]]/g, '\\$&')}:? `);
const of = (type: string): readonly Vector[] =>
  vectors.filter(
    ({ type: own, host, originalMessage, header }) =>
      own === type &&
      host !== undefined &&
      stamped(host).test(header ?? '') &&
      (type === 'BSD' || /^<\d+>1 /.test(originalMessage)),
  );

describe('nsyslog-parser', () => {
  test('has vectors of both kinds', () => {
    expect([of('RFC5424').length, of('BSD').length]).toEqual([4, 10]);
  });

  test.each(of('RFC5424'))('RFC 5424: $originalMessage', ({ originalMessage, prival, host, message }) => {
    expect(readRfc5424(originalMessage)).toMatchObject({ priority: prival, host, message });
  });

  test.each(of('BSD'))('RFC 3164: $originalMessage', ({ originalMessage, prival, host, message }) => {
    const parts = readRfc3164(originalMessage);
    expect(parts).toMatchObject({ priority: prival ?? null, host });
    expect(parts?.message.trimEnd().endsWith(message.trimEnd())).toBe(true);
  });
});
