import { expect, test } from 'vitest';
import { inPlace } from '../../../src/cli/in-place.ts';

/** A terminal that keeps what is written to it. */
function terminalOf(size: { columns: number; rows: number }) {
  let said = '';
  const place = inPlace(
    {
      write: (text) => {
        said += text;
      },
    },
    { columns: () => size.columns, rows: () => size.rows, onResize: () => () => undefined },
  );
  /** What was written since it was last asked. */
  const fresh = (): string => {
    const text = said;
    said = '';
    return text;
  };
  return { place, fresh };
}

test('writes over its lines, and clears what is left of those before', () => {
  const { place, fresh } = terminalOf({ columns: 80, rows: 24 });
  place.draw(['one', 'two']);
  expect(fresh()).toBe('\u001b[?25l\rone\u001b[K\ntwo\u001b[K\n\u001b[J');
  place.draw(['three']);
  expect(fresh()).toBe('\u001b[?25l\r\u001b[2Athree\u001b[K\n\u001b[J');
  place.clear();
  expect(fresh()).toBe('\r\u001b[1A\u001b[J');
  place.draw(['four']);
  expect(fresh()).toContain('\rfour');
});

test('goes up over lines that a narrower terminal has broken, but never beyond its top', () => {
  const size = { columns: 80, rows: 24 };
  const { place, fresh } = terminalOf(size);
  // 80 columns are two rows of 40; what paints a line takes none.
  place.draw(['x'.repeat(80), `\u001b[1m${'y'.repeat(40)}\u001b[0m`, '']);
  size.columns = 40;
  fresh();
  place.draw(['z']);
  expect(fresh()).toContain('\r\u001b[4Az');
  place.draw(['a', 'b', 'c', 'd']);
  size.rows = 3;
  fresh();
  place.draw(['e']);
  expect(fresh()).toContain('\r\u001b[2Ae');
});

test('gives the cursor back once, and draws nothing after that', () => {
  const { place, fresh } = terminalOf({ columns: 80, rows: 24 });
  place.draw(['one']);
  fresh();
  place.end();
  place.end();
  place.draw(['two']);
  place.clear();
  expect(fresh()).toBe('\r\u001b[K\u001b[?25h');
});
