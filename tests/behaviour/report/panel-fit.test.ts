import { describe, expect, test } from 'vitest';
import { otherPairLine, panelText } from '../../../src/report/panel.ts';
import { column, columnsOf, cut } from '../../../src/report/panel-fit.ts';
import { options, panel } from '../../support/made-panel.ts';
import { condition, swapNowWith, swapWith } from '../../support/made-swap-now.ts';

describe('no line is wider than 80 columns', () => {
  const long = 'ROW'.repeat(60);
  const wide = '膜'.repeat(100);
  const hostile = '\u001b[2J\u001b[31m\u202eevil\u0007\ttab\r\nnext';
  test.each([long, wide, hostile])('with %j in the log', (text) => {
    const base = swapNowWith();
    const halves = base.halves.map((h) => ({ ...h, half: text, role: text, light: text, firmware: text }));
    const file = `logs/${text}`;
    const lines = [1, 2, 3].map((line) => ({ file, line, text }));
    const conditions = [condition(text, 'waiting', text), condition(text, 'stop', text)] as const;
    const holdPoint = { ...base.holdPoint, half: text, statement: text, conditions };
    const now = {
      ...base,
      pair: text,
      clock: file,
      says: text,
      halves,
      lines,
      holdPoint,
      swap: swapWith({}),
    };
    for (const line of [...panel(now), otherPairLine(now, options())]) {
      expect(columnsOf(line)).toBeLessThanOrEqual(80);
      // biome-ignore lint/suspicious/noControlCharactersInRegex: this is what must not be there
      expect(line).not.toMatch(/[\u0000-\u001f\u202e]/);
    }
    expect(panel(now)).toHaveLength(10);
    expect(panel(now)[0]).toContain('02:37 of 15:00');
    for (const line of panelText(now, { ...options(), width: 40 }))
      expect(columnsOf(line)).toBeLessThanOrEqual(40);
  });

  test('a text is cut by columns, and never in the middle of a character', () => {
    expect(cut('膜膜膜膜', 7)).toBe('膜膜...');
    expect(cut('膜膜膜膜', 8)).toBe('膜膜膜膜');
    expect(cut('abcdef', 2)).toBe('..');
    expect(column('膜', 4)).toBe('膜  ');
  });
});
