import { analyse } from '../pipeline.ts';
import { timelineCsv, timelineJson, timelineJsonLines } from '../report/timeline-documents.ts';
import { type CommonOptions, clocksOf, importAll, limitsOf, type Status } from './command.ts';
import { writeWhole } from './node-files.ts';
import type { Streams } from './streams.ts';

export interface TimelineOptions extends CommonOptions {
  readonly format?: 'csv' | 'jsonl' | undefined;
  readonly out?: string | undefined;
}

/** `timeline`: every event of every pair. */
export async function timelineCommand(
  paths: readonly string[],
  options: TimelineOptions,
  streams: Streams,
): Promise<Status> {
  const imported = await importAll(paths, options, streams);
  const { timelines } = analyse(imported, limitsOf(options), clocksOf(options));
  const format = options.format ?? (options.json === true ? 'json' : 'csv');
  const inputs = imported.files.map((f) => f.input);
  const text =
    format === 'json'
      ? timelineJson(inputs, timelines)
      : format === 'jsonl'
        ? timelineJsonLines(timelines)
        : timelineCsv(timelines);
  if (options.out === undefined) streams.stdout.write(text);
  else await writeWhole(options.out, text);
  return 0;
}
