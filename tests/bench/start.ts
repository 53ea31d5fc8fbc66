import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { alternate } from './alternate.ts';
import { type Bench, command, folder } from './bench-case.ts';

const tenLines = Array.from(
  { length: 10 },
  (_, second) => `2026-03-14T10:00:0${second}Z RO1-A partner ${second % 2 === 0 ? 'ready' : 'not ready'}\n`,
).join('');

/** The shortest runs of the command: its help, and a log of ten lines; the yardstick is Node with nothing to do. */
export const startBench: Bench = {
  id: 'start',
  measure: async () => {
    mkdirSync(folder, { recursive: true });
    const log = join(folder, 'ten-lines.log');
    writeFileSync(log, tenLines);
    const [help, small, node] = alternate([
      { command: [...command, '--help'] },
      { command: [...command, 'timeline', log] },
      { command: [process.execPath, '-e', '0'] },
    ]);
    if (help === undefined || small === undefined || node === undefined)
      throw new Error('Nothing was measured.');
    const shared = { amount: null, yardstick: { name: 'node -e 0', seconds: node.seconds } };
    return {
      rows: [
        { job: 'start', program: 'steadypair --help', ...help, ...shared },
        { job: 'a log of ten lines', program: 'steadypair timeline', ...small, ...shared },
        { job: 'start', program: 'node -e 0 (floor)', ...node, ...shared },
      ],
      notes: [],
      agrees: null,
    };
  },
};
