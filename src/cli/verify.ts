import { analyse, readJob, readTime, verify } from '../pipeline.ts';
import { shownZone } from '../report/shown-zone.ts';
import { verifyJson } from '../report/verify-json.ts';
import { reportsOf } from '../report/verify-reports.ts';
import { verifyText } from '../report/verify-text.ts';
import type { Verification } from '../vocabulary.ts';
import { type CommonOptions, cliCommand, clocksOf, importAll, limitsOf, type Status } from './command.ts';
import { readText } from './node-files.ts';
import { painterFor } from './paint.ts';
import type { Streams } from './streams.ts';
import { writeReports } from './write-files.ts';

declare const STEADYPAIR_VERSION: string;

interface VerifyOptions extends CommonOptions {
  readonly pair?: string | undefined;
  readonly from?: string | undefined;
  readonly to?: string | undefined;
  readonly job?: string | undefined;
  readonly out?: string | undefined;
}

/** `verify`: finds the swaps, judges them, writes a report for each. */
export const verifyCommand = cliCommand<VerifyOptions>({
  name: 'verify',
  says: 'Verify module swaps: did the pair come back redundant?',
  options: {
    pair: { kind: 'text', takes: 'name', says: 'verify only this pair' },
    from: { kind: 'text', takes: 'time', says: 'verify only swaps from this time on' },
    to: { kind: 'text', takes: 'time', says: 'verify only swaps up to this time' },
    job: { kind: 'text', takes: 'file', says: 'work order, people and plan for the report (YAML)' },
    out: { kind: 'text', takes: 'folder', says: 'write reports to this folder (HTML, Markdown, JSON)' },
  },
  examples: [
    'verify ro1-poll.csv ro1-journal.csv --zone Europe/Lisbon',
    'verify exports/ --pair RO1 --phrasebook site.yaml --job job.yaml --out reports',
  ],
  run: verifyFiles,
});

async function verifyFiles(
  paths: readonly string[],
  options: VerifyOptions,
  streams: Streams,
): Promise<Status> {
  const job = options.job === undefined ? null : readJob(options.job, await readText(options.job));
  const zone = options.zone ?? 'UTC';
  const filter = {
    from: options.from === undefined ? null : readTime('--from', options.from, zone),
    to: options.to === undefined ? null : readTime('--to', options.to, zone),
  };
  const imported = await importAll(paths, options, streams, options.job);
  const analysed = analyse(imported, limitsOf(options), clocksOf(options));
  const verification = verify(analysed, options.pair ?? null, filter, job);
  const shown = shownZone(options.zone ?? null, verification.inputs);
  const asked = { zone: shown, version: STEADYPAIR_VERSION };
  const reports =
    options.out === undefined
      ? []
      : await writeReports(options.out, await reportsOf(verification, asked), imported.read);
  streams.stdout.write(
    options.json === true
      ? verifyJson(verification)
      : verifyText(verification, { zone: shown, paint: painterFor(streams.stdout), reports }),
  );
  return statusOf(verification);
}

/** Where there is a swap its verdict alone decides; with several 1 before 3 before 0. */
export function statusOf({ swaps }: Pick<Verification, 'swaps'>): Status {
  if (swaps.length === 0) return 3;
  if (swaps.some((s) => s.verdict === 'not-verified')) return 1;
  return swaps.some((s) => s.verdict === 'inconclusive') ? 3 : 0;
}
