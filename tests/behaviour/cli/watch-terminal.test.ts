import { describe, expect, test } from 'vitest';
import { columnsOf } from '../../../src/report/panel-fit.ts';
import {
  type Happening,
  partsOf,
  settingsOf,
  terminal24,
  watchGrowing,
  written,
} from '../../support/growing-watch.ts';

const clean = partsOf('clean-swap', ['09:13:00', '09:15:00', '09:20:00', '09:25:00', '09:45:00', '09:55:00']);
const quiet: Happening = () => Date.UTC(2026, 2, 14, 10, 40);
const lastLine = (text: string): string => text.trimEnd().split('\n').at(-1) ?? '';

describe('on a terminal', () => {
  test('draws ten lines in place of those before, rings at the end of a wait, and gives the cursor back', async () => {
    const { out } = await watchGrowing(clean, settingsOf('clean-swap'), terminal24);
    const frames = out.split('\u001b[?25l').slice(1);
    // The first has no lines to go up over; from then on the cursor goes up over what was drawn.
    expect(frames[0]?.startsWith('\r')).toBe(true);
    expect(frames[0]).toContain('No pair in work');
    expect(frames.at(-1)?.startsWith('\r\u001b[10A')).toBe(true);
    for (const frame of frames)
      for (const line of frame
        .replace(/^\r(\S\[\d+A)?/, '')
        .split('\n')
        .slice(0, -1))
        expect(columnsOf(line.replace('\u001b[K', ''))).toBeLessThanOrEqual(80);
    // In, right firmware or ready or steady, second half, soak, over: a bell for each that a look finds ended.
    expect(out.split('\u0007').length - 1).toBeGreaterThanOrEqual(4);
    expect(out.lastIndexOf('\u001b[?25h')).toBeGreaterThan(out.lastIndexOf('\u001b[?25l'));
    expect(lastLine(out)).toContain('is verified');
  });

  test('gives the cursor back where it ends by an error', async () => {
    const seen: string[] = [];
    const broken: Happening = () => {
      throw new Error('broken');
    };
    const [first] = clean;
    if (first === undefined) throw new Error('no part');
    const screen = { ...terminal24, onResize: () => () => void seen.push('off') };
    await expect(watchGrowing([first, broken], settingsOf('clean-swap'), screen)).rejects.toThrow('broken');
    expect(seen).toEqual(['off']);
  });

  test('shows a hostile line without its controls', async () => {
    const hostile = written([
      { file: 'a.log', time: Date.UTC(2026, 2, 14, 9), text: '2026-03-14T09:00:00Z RO1-A role active\n' },
      { file: 'a.log', time: 0, text: '2026-03-14T09:00:00Z RO1-B firmware 6\u001b[2J\u202e\u0007x\n' },
    ]);
    const { out } = await watchGrowing([hostile, quiet], { pair: 'RO1' }, terminal24);
    expect(out).toContain('‹001B›[2J');
    expect(out).not.toContain('\u001b[2J');
    expect(out).not.toContain('\u202e');
    expect(out).not.toContain('\u0007');
  });
});
