import { digestOf, platform } from '../../src/cli/platform.ts';
import {
  analyse,
  diagnose,
  fleet,
  type Imported,
  InputError,
  importFiles,
  readJob,
  readPhrasebook,
  surveyFiles,
  unpackFiles,
  verify,
} from '../../src/pipeline.ts';
import { diagnoseReports } from '../../src/report/diagnose-reports.ts';
import { draftPhrasebook } from '../../src/report/draft-phrasebook.ts';
import { foundText } from '../../src/report/find-wordings.ts';
import { fleetReports } from '../../src/report/fleet-reports.ts';
import { inspectText } from '../../src/report/inspect.ts';
import { timelineCsv } from '../../src/report/timeline-documents.ts';
import { timelineParquet } from '../../src/report/timeline-parquet.ts';
import { reportsOf } from '../../src/report/verify-reports.ts';
import type { Job } from '../../src/vocabulary.ts';
import type { Role } from './seeds.ts';

/** One input as it is given to the program. */
export interface Given {
  readonly name: string;
  readonly role: Role;
  readonly bytes: Uint8Array;
  /** Of a log its phrasebook, of a phrasebook its log. */
  readonly beside?: Company;
}

/** A log that phrasebooks and jobs are tried on. */
export interface Company {
  readonly name: string;
  readonly bytes: Uint8Array;
}

const howRead = { zone: null, order: null, year: 2026, sha256: platform.sha256 };

/**
 * Puts one input through all of the program, as the commands do: `used` where something of it could be read, `refused`
 * where it was told why not. Throws where the program breaks a promise: any error but InputError, rows that do not add
 * up, a figure that is none. `isWhole` goes on to every report.
 */
export async function putThrough(
  given: Given,
  company: Company,
  isWhole: boolean,
): Promise<'used' | 'refused'> {
  try {
    const text = new TextDecoder().decode(given.bytes);
    const job = given.role === 'job' ? readJob(given.name, text) : null;
    const phrasebook = phrasebookOf(given, text);
    const log = given.role === 'log' ? given : (given.beside ?? company);
    const stored = {
      name: log.name,
      bytes: log.bytes.length,
      async *open() {
        yield log.bytes;
      },
      slice: async (from: number, to: number) => log.bytes.slice(from, to),
    };
    const { sources, failures } = await unpackFiles([stored], platform);
    const imported = await importFiles(sources, { ...howRead, phrasebook });
    for (const { input } of imported.files) addUp(input.rows);
    await documents(imported, job, isWhole);
    if (isWhole) await drafted(sources, imported, phrasebook);
    return imported.files.length > 0 && failures.length === 0 ? 'used' : 'refused';
  } catch (error) {
    if (error instanceof InputError) return 'refused';
    throw error;
  }
}

function phrasebookOf({ name, role, beside }: Given, text: string): Phrasebook {
  if (role === 'phrasebook') return readPhrasebook(name, text);
  if (beside === undefined) return readPhrasebook(name, null);
  return readPhrasebook(beside.name, new TextDecoder().decode(beside.bytes));
}

type Phrasebook = ReturnType<typeof readPhrasebook>;

/** Drafts, finds, and reads with the draft, which must be a phrasebook, as `inspect` does. */
async function drafted(sources: Sources, { files }: Imported, phrasebook: Phrasebook): Promise<void> {
  const survey = await surveyFiles(sources, { files, phrasebook, order: null, year: 2026, now: 2026 });
  proper(foundText(survey, 'o'));
  const draft = draftPhrasebook(survey);
  proper(draft);
  const read = await importFiles(sources, { ...howRead, phrasebook: whole(draft) });
  for (const { input } of read.files) addUp(input.rows);
}

type Sources = Parameters<typeof surveyFiles>[0];

/** No refusal either may come of a phrasebook that the program wrote. */
function whole(draft: string): Phrasebook {
  try {
    return readPhrasebook('draft.yaml', draft);
  } catch (error) {
    throw new Error(`The draft is no phrasebook: ${error instanceof Error ? error.message : error}`);
  }
}

function addUp({ read, ...parts }: Imported['files'][number]['input']['rows']): void {
  const sum = Object.values(parts).reduce((all, count) => all + count, 0);
  if (sum !== read) throw new Error(`The five counts add up to ${sum}, and ${read} rows were read.`);
}

async function documents(imported: Imported, job: Job | null, isWhole: boolean): Promise<void> {
  const analysed = analyse(imported);
  for (const { statement } of analysed.findings) proper(statement);
  if (!isWhole) return;
  const { files, timelines, findings } = analysed;
  const options = { zone: 'UTC', version: 'test' };
  const pairs = timelines.map((t) => t.pair);
  proper([...timelineCsv(timelines)].join(''));
  timelineParquet(imported.files, [], digestOf);
  proper(inspectText(files, timelines, findings));
  const swaps = verify(analysed, null, { from: null, to: null }, job);
  const reviewed = fleet(analysed, { by: 'firmware', swaps: 3 });
  const reports = [
    ...(await reportsOf(swaps, options)),
    ...(await fleetReports(reviewed, options)),
    ...(pairs.length === 0 ? [] : await diagnoseReports(diagnose(analysed, null), options)),
  ];
  for (const { name, text } of reports) if (!name.endsWith('.json')) proper(text);
}

/** No seed and no mutation writes these: where they stand the program did. */
function proper(text: string): void {
  const found = /\bNaN\b|\bundefined\b|\[object |\bInfinity\b/.exec(text);
  if (found === null) return;
  const around = text.slice(Math.max(0, found.index - 60), found.index + 60);
  throw new Error(`The program says "${around}".`);
}
