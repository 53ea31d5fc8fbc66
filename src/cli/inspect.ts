import { analyse } from '../pipeline.ts';
import { inspectJson, inspectText } from '../report/inspect.ts';
import { type CommonOptions, clocksOf, importAll, limitsOf, type Status } from './command.ts';
import type { Streams } from './streams.ts';

/** `inspect`: how each file was understood. */
export async function inspectCommand(
  paths: readonly string[],
  options: CommonOptions,
  streams: Streams,
): Promise<Status> {
  const imported = await importAll(paths, options, streams);
  const { findings, timelines } = analyse(imported, limitsOf(options), clocksOf(options));
  const ofData = findings.filter((f) => f.pair === null || f.id === 'unobserved');
  streams.stdout.write(
    options.json === true
      ? inspectJson(imported.files, ofData)
      : inspectText(imported.files, timelines, ofData),
  );
  return 0;
}
