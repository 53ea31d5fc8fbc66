import { existsSync, statSync } from 'node:fs';
import { writeBig } from '../../samples/big.ts';
import { alternate } from './alternate.ts';
import { type Bench, command } from './bench-case.ts';
import { pollFile } from './polls.ts';
import { timed } from './programs.ts';

/** `timeline` over a poll in gzip; the yardstick only unpacks it. */
export const gzipBench: Bench = {
  id: 'gzip',
  async measure(megabytes) {
    const input = await pollFile(`poll-quiet-${megabytes}.csv`, (file) =>
      writeBig(file, String(megabytes), '8', '0.0002'),
    );
    const packed = `${input}.gz`;
    if (!existsSync(packed)) timed(['gzip', '--keep', input]);
    const [own, unpacking] = alternate([
      { command: [...command, 'timeline', packed, '--out', `${packed}.events.csv`] },
      { command: ['sh', '-c', 'gzip -dc "$1" > /dev/null', 'sh', packed] },
    ]);
    if (own === undefined || unpacking === undefined) throw new Error('Nothing was measured.');
    const yardstick = { name: 'gzip -dc', seconds: unpacking.seconds };
    const amount = { count: statSync(input).size / 1e6, unit: 'MB' } as const;
    const job = 'the first poll in gzip, MB unpacked';
    return {
      rows: [
        { job, program: 'steadypair timeline', ...own, amount, yardstick },
        { job, program: 'gzip -dc (floor)', ...unpacking, amount, yardstick },
      ],
      notes: [],
      agrees: null,
    };
  },
};
