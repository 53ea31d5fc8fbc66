import { analyse } from '../pipeline.ts';
import { draftPhrasebook } from '../report/draft-phrasebook.ts';
import { inspectJson, inspectText } from '../report/inspect.ts';
import { type CommonOptions, cliCommand, clocksOf, importAll, limitsOf, type Status } from './command.ts';
import type { Streams } from './streams.ts';
import { writeNew } from './write-files.ts';

interface InspectOptions extends CommonOptions {
  readonly draftPhrasebook?: string | undefined;
}

/** `inspect`: how each file was understood; with `--draft-phrasebook` also a phrasebook to start from. */
export const inspectCommand = cliCommand<InspectOptions>({
  name: 'inspect',
  says: 'Say how each file was understood.',
  options: {
    draftPhrasebook: { kind: 'text', takes: 'file', says: 'write a phrasebook to start from there' },
  },
  examples: [
    'inspect ro1-poll.csv --draft-phrasebook site.yaml',
    'inspect exports.zip --phrasebook site.yaml --json',
  ],
  run: inspectFiles,
});

async function inspectFiles(
  paths: readonly string[],
  options: InspectOptions,
  streams: Streams,
): Promise<Status> {
  const imported = await importAll(paths, options, streams);
  const { findings, phrasebook, timelines } = analyse(imported, limitsOf(options), clocksOf(options));
  const ofData = [...findings.filter((f) => f.pair === null || f.id === 'unobserved'), ...phrasebook];
  const draft = options.draftPhrasebook;
  if (draft !== undefined) await writeNew(draft, draftPhrasebook(imported.files));
  streams.stdout.write(
    options.json === true
      ? inspectJson(imported.files, ofData)
      : inspectText(imported.files, timelines, ofData),
  );
  if (draft !== undefined && options.json !== true)
    streams.stdout.write(
      `\nThe draft of a phrasebook lies in ${draft}. Fill it in and read again with --phrasebook.\n`,
    );
  return 0;
}
