/**
 * Sources: RFC 5424, The Syslog Protocol (2009), section 6.5 examples 1 to 3, section 6.2.1 (PRI), section 6.2.3.1
 * examples 1 to 4; RFC 3164, The BSD syslog Protocol (2001), section 5.4 examples 1 and 2. All exact; a microsecond is
 * finer than the millisecond kept here.
 */
import { describe, expect, test } from 'vitest';
import { timeReader } from '../../src/import/clock/time-reader.ts';
import { zoneOf } from '../../src/import/clock/zones.ts';
import { readRfc3164, readRfc5424 } from '../../src/import/layouts/syslog.ts';

const read = (stamp: string | null): number | string =>
  timeReader(zoneOf('UTC', ''), undefined, undefined).read(stamp ?? '');

describe('RFC 5424', () => {
  test('example 1: byte order mark before the message', () => {
    const line =
      "<34>1 2003-10-11T22:14:15.003Z mymachine.example.com su - ID47 - \uFEFF'su root' failed for lonvick on /dev/pts/8";
    const parts = readRfc5424(line);
    expect(parts).toEqual({
      priority: 34,
      facility: 4,
      severity: 2,
      stamp: '2003-10-11T22:14:15.003Z',
      host: 'mymachine.example.com',
      application: 'su',
      process: null,
      messageId: 'ID47',
      structuredData: null,
      message: "'su root' failed for lonvick on /dev/pts/8",
    });
    expect(read(parts?.stamp ?? null)).toBe(1_065_910_455_003);
  });
  test('example 2: process id, offset', () => {
    const parts = readRfc5424(
      "<165>1 2003-08-24T05:14:15.000003-07:00 192.0.2.1 myproc 8710 - - %% It's time to make the do-nuts.",
    );
    expect(parts).toMatchObject({
      facility: 20,
      severity: 5,
      host: '192.0.2.1',
      process: '8710',
      messageId: null,
      message: "%% It's time to make the do-nuts.",
    });
    expect(read(parts?.stamp ?? null)).toBe(1_061_727_255_000);
  });
  test('example 3: structured data', () => {
    const data = '[exampleSDID@32473 iut="3" eventSource="Application" eventID="1011"]';
    const parts = readRfc5424(
      `<165>1 2003-10-11T22:14:15.003Z mymachine.example.com evntslog - ID47 ${data} \uFEFFAn application event log entry...`,
    );
    expect(parts).toMatchObject({ structuredData: data, message: 'An application event log entry...' });
  });
  test.each([
    [0, 0, 0],
    [13, 1, 5],
    [34, 4, 2],
    [165, 20, 5],
    [191, 23, 7],
  ])('PRI %i is facility %i, severity %i', (pri, facility, severity) => {
    expect(readRfc5424(`<${pri}>1 - - - - - -`)).toMatchObject({ facility, severity });
  });
  test('PRI past 191 is none', () => {
    expect(readRfc5424('<192>1 - - - - - -')).toBeNull();
  });
  test.each([
    ['1985-04-12T23:20:50.52Z', 482_196_050_520],
    ['1985-04-12T19:20:50.52-04:00', 482_196_050_520],
    ['2003-10-11T22:14:15.003Z', 1_065_910_455_003],
    ['2003-08-24T05:14:15.000003-07:00', 1_061_727_255_000],
  ])('time stamp %s', (stamp, expected) => {
    expect(read(stamp)).toBe(expected);
  });
});

describe('RFC 3164', () => {
  test('example 1', () => {
    const parts = readRfc3164("<34>Oct 11 22:14:15 mymachine su: 'su root' failed for lonvick on /dev/pts/8");
    expect(parts).toMatchObject({
      facility: 4,
      severity: 2,
      stamp: 'Oct 11 22:14:15',
      host: 'mymachine',
      message: "su: 'su root' failed for lonvick on /dev/pts/8",
    });
  });
  test('example 2: a bare line is none; as relayed it has a day below ten with a space', () => {
    expect(readRfc3164('Use the BFG!')).toBeNull();
    const parts = readRfc3164('<13>Feb  5 17:32:18 10.0.0.99 Use the BFG!');
    expect(parts).toMatchObject({
      facility: 1,
      severity: 5,
      stamp: 'Feb  5 17:32:18',
      host: '10.0.0.99',
      message: 'Use the BFG!',
    });
    expect(timeReader(zoneOf('UTC', ''), undefined, 2026).read(parts?.stamp ?? '')).toBe(
      Date.UTC(2026, 1, 5, 17, 32, 18),
    );
  });
});
