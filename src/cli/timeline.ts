import { timelinesOf } from '../pipeline.ts';
import { timelineCsv, timelineJson, timelineJsonLines } from '../report/timeline-documents.ts';
import { type CommonOptions, clocksOf, importAll, limitsOf, type Status } from './command.ts';
import { digestOf } from './platform.ts';
import type { Streams } from './streams.ts';
import { parquetIsBinary, writeWhole } from './write-files.ts';

export interface TimelineOptions extends CommonOptions {
  readonly format?: 'csv' | 'jsonl' | 'parquet' | undefined;
  readonly out?: string | undefined;
}

/** `timeline`: every event of every pair. */
export async function timelineFiles(
  paths: readonly string[],
  options: TimelineOptions,
  streams: Streams,
): Promise<Status> {
  if (options.format === 'parquet') return storeTimeline(paths, options, streams);
  const imported = await importAll(paths, options, streams);
  const { settings } = imported;
  const timelines = timelinesOf(imported, limitsOf(settings), clocksOf(settings));
  const format = options.format ?? (options.json === true ? 'json' : 'csv');
  const inputs = imported.files.map((f) => f.input);
  const pieces =
    format === 'json'
      ? [timelineJson(inputs, timelines)]
      : format === 'jsonl'
        ? timelineJsonLines(timelines)
        : timelineCsv(timelines);
  if (options.out !== undefined) await writeWhole(options.out, pieces, imported.read);
  else for (const piece of pieces) streams.stdout.write(piece);
  return 0;
}

/** What the files say, in place of them: every command reads it with the same result. */
async function storeTimeline(
  paths: readonly string[],
  options: TimelineOptions,
  streams: Streams,
): Promise<Status> {
  if (options.out === undefined) throw parquetIsBinary();
  const { files, failures, phrasebookNotices, read } = await importAll(paths, options, streams);
  const { timelineParquet } = await import('../report/timeline-parquet.ts');
  await writeWhole(options.out, timelineParquet(files, failures, digestOf, phrasebookNotices), read);
  return 0;
}
