import { join } from 'node:path';
import { run } from '../../src/cli/main.ts';

/** Verifies a swap of the demo site as the demo does, with its reports in `out`; gives what was printed. */
export async function verifySample(name: 'clean-swap' | 'bad-swap', out: string): Promise<string> {
  const logs = join('samples', 'marrow-bay', name);
  let printed = '';
  const write = (text: string): void => {
    printed += text;
  };
  const args = [
    'verify',
    logs,
    '--phrasebook',
    join(logs, 'phrasebook.yaml'),
    '--job',
    join(logs, 'job.yaml'),
    '--out',
    out,
  ];
  await run(args, {
    stdout: { write, isTerminal: false },
    stderr: { write: () => undefined, isTerminal: false },
  });
  return printed;
}
