import { alternate } from './alternate.ts';
import { type Bench, command } from './bench-case.ts';

/** The shortest run of the command; the yardstick is Node with nothing to do. */
export const startBench: Bench = {
  id: 'start',
  measure: async () => {
    const [own, node] = alternate([
      { command: [...command, '--version'] },
      { command: [process.execPath, '-e', '0'] },
    ]);
    if (own === undefined || node === undefined) throw new Error('Nothing was measured.');
    const yardstick = { name: 'node -e 0', seconds: node.seconds };
    const job = 'start';
    return {
      rows: [
        { job, program: 'steadypair --version', ...own, amount: null, yardstick },
        { job, program: 'node -e 0 (floor)', ...node, amount: null, yardstick },
      ],
      notes: [],
      agrees: null,
    };
  },
};
