import { describe, expect, test } from 'vitest';
import { type StaffAction, staffAction, staffKeys } from '../../../web/staff-keys.ts';
import { afterAction, type StaffGround, type StaffPosition } from '../../../web/staff-moves.ts';

const second = 1000;
const mark = (time: number): StaffGround['marks'][number] => ({
  time,
  earliest: time,
  half: 'B',
  what: 'restart',
  evidence: [{ file: 'a.log', line: 1, text: '' }],
});
const ground: StaffGround = {
  whole: { from: 0, to: 1000 * second },
  home: { from: 200 * second, to: 400 * second },
  marks: [mark(250 * second), mark(700 * second)],
};
const home: StaffPosition = { shown: ground.home, marked: null, cursor: null, anchor: null };

function press(
  key: string,
  held: { readonly shift?: boolean; readonly ctrl?: boolean } = {},
  hasMarked = false,
): StaffAction | null {
  return staffAction(
    { key, shiftKey: held.shift ?? false, ctrlKey: held.ctrl ?? false, metaKey: false, altKey: false },
    hasMarked,
  );
}

function stand(...keys: readonly (readonly [string, ('shift' | 'ctrl')?])[]): StaffPosition {
  return keys.reduce((position, [key, held]) => {
    const action = press(key, { shift: held === 'shift', ctrl: held === 'ctrl' }, position.marked !== null);
    if (action === null) throw new Error(`${key} does nothing.`);
    return afterAction(position, action, ground);
  }, home);
}

describe('the keys of the staff', () => {
  test('move a cursor from the middle by a hundredth of what is shown', () => {
    // 300 s is the middle; 200 s are shown: two seconds a step.
    expect(stand(['ArrowRight'], ['ArrowRight'], ['ArrowLeft']).cursor).toBe(302 * second);
  });

  test('take the cursor from one happening to the next, and the window with it', () => {
    expect(stand(['ArrowLeft', 'ctrl']).cursor).toBe(250 * second);
    const { cursor, shown } = stand(['ArrowRight', 'ctrl']);
    expect([cursor, shown]).toEqual([700 * second, { from: 500 * second, to: 700 * second }]);
    expect(stand(['ArrowRight', 'ctrl'], ['ArrowRight', 'ctrl']).cursor).toBe(700 * second);
  });

  test('zoom at the cursor, pan, and fit', () => {
    // At 302 s, 51 in 100: half of 200 s begins at 302 - 51.
    expect(stand(['ArrowRight'], ['+']).shown).toEqual({ from: 251 * second, to: 351 * second });
    expect(stand(['-']).shown).toEqual({ from: 100 * second, to: 500 * second });
    expect(stand(['PageDown']).shown).toEqual({ from: 300 * second, to: 500 * second });
    expect(stand(['End']).shown).toEqual(ground.whole);
    expect(stand(['End'], ['Home']).shown).toEqual(ground.home);
  });

  test('mark a span with Shift, zoom to it, and let go of it before the cursor', () => {
    const marked = stand(['ArrowLeft'], ['ArrowRight', 'shift'], ['ArrowRight', 'shift']);
    expect(marked.marked).toEqual({ from: 298 * second, to: 302 * second });
    const back = stand(['ArrowLeft'], ['ArrowRight', 'shift'], ['Escape']);
    expect([back.marked, back.cursor]).toEqual([null, 300 * second]);
    expect(afterAction(back, { kind: 'let-go' }, ground).cursor).toBeNull();
    // No less than ten seconds are shown, about the middle of the four that are marked.
    const zoomed = stand(['ArrowLeft'], ['ArrowRight', 'shift'], ['ArrowRight', 'shift'], ['Enter']);
    expect([zoomed.shown, zoomed.marked]).toEqual([{ from: 295 * second, to: 305 * second }, null]);
  });

  test('leave the keys of the browser to it', () => {
    expect(press('+', { ctrl: true })).toBeNull();
    expect(press('Tab')).toBeNull();
    expect(
      staffAction({ key: 'ArrowLeft', shiftKey: false, ctrlKey: false, metaKey: false, altKey: true }, false),
    ).toBeNull();
    expect(press('Enter')).toEqual({ kind: 'lines' });
  });

  test('are listed, each with what it does', () => {
    const listed = staffKeys.map(({ keys }) => keys).join(' ');
    for (const key of ['Left', 'Page Up', '+', '-', 'Home', 'End', 'Enter', 'Escape', 'Shift', 'Ctrl'])
      expect(listed).toContain(key);
  });
});
