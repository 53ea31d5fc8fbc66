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

  test('of two pairs in work the newest has the panel, or the one that is named, and the other a line', async () => {
    const line = (clock: string, text: string) => ({
      file: 'a.log',
      time: Date.parse(`2026-03-14T${clock}Z`),
      text: `2026-03-14T${clock}.000Z ${text}\n`,
    });
    const both = written([
      ...['RO1', 'RO2'].flatMap((pair) => [
        line('09:00:00', `${pair}-A role active`),
        line('09:00:00', `${pair}-B role standby`),
        line('09:00:00', `${pair} partner ready`),
      ]),
      line('09:20:00', 'RO1-B module removed'),
      line('09:21:00', 'RO2-B module removed'),
      line('09:22:00', 'RO2 partner not ready'),
    ]);
    const panelOf = async (pair?: string): Promise<readonly string[]> => {
      const { out } = await watchGrowing([both], pair === undefined ? {} : { pair }, terminal24);
      const frame = out.split('\u001b[?25l')[1] ?? '';
      return frame.split('\u001b[K\n').slice(0, -1);
    };
    const newest = await panelOf();
    expect(newest).toHaveLength(11);
    // The newest row of the file, which tells of both, is of 09:22:00.
    expect(newest[0]).toBe('\rRO2  01:00 of 15:00  Waiting for a module in half B');
    expect(newest[10]).toBe(
      'RO1  02:00 of 15:00  Waiting for a module in half B. Hold point before switch...',
    );
    const named = await panelOf('RO1');
    expect(named).toHaveLength(11);
    expect(named[0]).toContain('RO1  02:00 of 15:00');
    expect(named[10]).toContain('RO2  01:00 of 15:00');
  });
});
