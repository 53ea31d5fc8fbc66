import { describe, expect, test } from 'vitest';
import { cutLog } from '../../../src/bundle/cut-log.ts';
import { noSettings } from '../../../src/bundle/inside.ts';
import { lineEndsOf } from '../../../src/bundle/line-blocks.ts';
import { makeBundle } from '../../../src/bundle/make-bundle.ts';
import { platform } from '../../../src/cli/platform.ts';
import type { FileSource } from '../../../src/pipeline.ts';
import { sourceOf } from '../../support/read-text.ts';
import { membersOf, textIn } from '../../support/zip-members.ts';

async function bytesOf(source: FileSource): Promise<Buffer> {
  const parts: Uint8Array[] = [];
  for await (const chunk of source.open()) parts.push(chunk.slice());
  return Buffer.concat(parts);
}

describe('a log that is cut', () => {
  test.each([
    ['utf-8', '\n'],
    ['utf-8', '\r\n'],
    ['utf-16le', '\n'],
    ['utf-16le', '\r\n'],
    ['utf-16be', '\r\n'],
  ])('keeps the number and the end of every line: %s, %j', async (encoding, end) => {
    const encode = (text: string): Buffer => {
      if (encoding === 'utf-8') return Buffer.from(text);
      const bytes = Buffer.from(text, 'utf16le');
      return encoding === 'utf-16be' ? bytes.swap16() : bytes;
    };
    // U+0A0D and U+0D0A hold the bytes of a line end and are none.
    const lines = ['head', 'one \u0A0D\u0D0A', 'two', 'three', 'last'];
    const whole = encode(lines.join(end));
    for (const chunk of [1, 3, 7, 4096]) {
      const ranges = [
        [1, 1],
        [4, 4],
      ] as const;
      const cut = cutLog(sourceOf('x.log', whole, chunk), ranges, lineEndsOf(encoding));
      expect(await bytesOf(cut)).toEqual(encode(['head', '', '', 'three', ''].join(end)));
    }
  });

  test('holds the time of the swap whole, and leads to the same verdict', async () => {
    const { log, swapLines } = longLog();
    const one = {
      command: 'verify' as const,
      sources: [sourceOf('events.log', log)],
      failures: [],
      phrasebook: null,
      job: null,
      settings: noSettings,
    };
    const { bytes } = await makeBundle(
      one,
      { platform, version: '0' },
      { place: 'case.zip', isMasked: false, mostWhole: 1_000_000 },
    );
    const members = await membersOf(bytes);
    const inside = textIn(members, 'logs/events.log').split('\n');
    const lines = log.split('\n');
    expect(inside.length).toBe(lines.length);
    expect(inside.filter((line, index) => line !== '' && line !== lines[index])).toEqual([]);
    for (const index of swapLines) expect(inside[index]).toBe(lines[index]);
    const empty = inside.filter((line) => line === '').length;
    expect(empty).toBeGreaterThan(lines.length / 4);
    const [logged] = JSON.parse(textIn(members, 'manifest.json')).logs;
    expect(logged.lines.length).toBeGreaterThan(1);
    expect(logged.bytes).toBe(log.length);
    expect(
      JSON.parse(textIn(members, 'verify.json')).swaps.map((s: { verdict: string }) => s.verdict),
    ).toEqual(['not-verified']);
  });
});

/** Sixty days of heartbeats, one a minute, and on day 30 a swap whose firmware is not aligned. */
function longLog(): { readonly log: string; readonly swapLines: readonly number[] } {
  const begin = Date.UTC(2026, 0, 1);
  const at = (minute: number, second = 0): string =>
    new Date(begin + minute * 60_000 + second * 1000).toISOString();
  const swap = [
    'A role active',
    'B role standby',
    'A firmware 6.4.1',
    'B firmware 6.4.1',
    'A partner ready',
    'B removed',
    'B inserted',
    'B firmware 6.2.0',
    'A partner ready',
  ];
  const lines: string[] = [];
  const swapLines: number[] = [];
  for (let minute = 0; minute < 60 * 1440; minute += 1) {
    lines.push(`${at(minute)} RO1-A heartbeat of the pair, all counters as they were`);
    const step = minute - 30 * 1440;
    if (step < 0 || step % 10 !== 0 || step / 10 >= swap.length) continue;
    swapLines.push(lines.length);
    lines.push(`${at(minute, 30)} RO1-${swap[step / 10]}`);
  }
  return { log: `${lines.join('\n')}\n`, swapLines };
}
