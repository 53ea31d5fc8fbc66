import type { Imported } from '../src/pipeline.ts';
import { rowsNotKnown } from '../src/report/not-known.ts';
import { sayCount, sayInstant } from '../src/report/words.ts';
import type { ImportedFile } from '../src/vocabulary.ts';
import { givenIn } from './bundles-inside.ts';
import { hashOf } from './given-store.ts';
import type { GivenFile, GivenModel } from './protocol.ts';
import type { ReadFrom } from './read-from.ts';
import type { Twin } from './same-content.ts';

type Became = Pick<GivenModel, 'became' | 'twin'>;

/** What became of each file that was given, in the order they were given in. */
export function givenModels(
  from: ReadFrom,
  imported: Imported,
  twins: readonly Twin[],
): Promise<readonly GivenModel[]> {
  return Promise.all(
    from.question.files.map(async (given): Promise<GivenModel> => {
      const { id, name, file } = given;
      const sha256 = hashIn(imported.files, name) ?? (await hashOf(from.store, given));
      const found = becameOf(from, { ...given, sha256 }, imported, twins);
      return { id, name, size: file.size, sha256, ...found };
    }),
  );
}

/** The hash of a file, or of the archive it is, where its reading made one. */
function hashIn(files: readonly ImportedFile[], name: string): string | null {
  const own = files.find(({ input }) => input.file === name && input.container === undefined);
  const held = files.find(({ input }) => input.container?.file === name);
  return own?.input.sha256 ?? held?.input.container?.sha256 ?? null;
}

function becameOf(
  { texts, opened, phrasebook }: ReadFrom,
  { id, name, sha256 }: GivenFile & Pick<GivenModel, 'sha256'>,
  { files, failures }: Imported,
  twins: readonly Twin[],
): Became {
  const said = (became: string): Became => ({ became, twin: null });
  const failure = failures.find(({ where }) => isOf(where, name));
  const text = texts.find(({ file }) => file === name);
  if (text !== undefined && failure === undefined)
    return said(text.job === null ? phrasebookUse(name, phrasebook?.file) : 'Job file');
  const own = opened.find(({ given }) => given.id === id);
  if (own?.session != null)
    return said(
      `Session saved ${sayInstant(Date.parse(own.session.saved), 'UTC')} UTC: ${sayCount(own.session.inputs.length, 'file')}`,
    );
  const twin = twins.find(({ file }) => file === name) ?? inSession(opened, name, sha256);
  if (twin !== undefined) return { became: `Same content as ${twin.of}: used once`, twin: twin.of };
  const read = files.filter(({ input }) => givenIn(input, opened) === name);
  if (read.length > 0) return said(sayRead(read, name));
  if (own?.unpacked.reports.includes(name) === true) return said('Written by this program: not read again');
  return said(failure === undefined ? 'Nothing of it was used' : `Left out: ${failure.what}`);
}

/** A session that holds the file of that name and content. */
function inSession(opened: ReadFrom['opened'], name: string, sha256: string | null): Twin | undefined {
  const holds = opened.find(({ session }) =>
    session?.inputs.some((input) => input.file === name && input.sha256 === sha256),
  );
  return holds === undefined ? undefined : { file: name, of: holds.given.name };
}

/** A place in the file, or a member of the archive. */
function isOf(where: string, name: string): boolean {
  return where === name || where.replace(/:\d+$/, '') === name || where.startsWith(`${name}/`);
}

function phrasebookUse(name: string, used: string | undefined): string {
  return name === used ? 'Phrasebook, in use' : 'Phrasebook, not in use';
}

function sayRead(read: readonly ImportedFile[], name: string): string {
  const rows = rowsNotKnown(read.map(({ input }) => input));
  const odd = [
    ...(rows.unmatched === 0 ? [] : [`${rows.unmatched.toLocaleString('en')} not recognised`]),
    ...(rows.rejected === 0 ? [] : [`${rows.rejected.toLocaleString('en')} rejected`]),
  ];
  const isArchive = read.some(({ input }) => input.file !== name);
  const files = isArchive ? `${sayCount(read.length, 'file')}, ` : `${read[0]?.input.layout ?? ''}, `;
  return `${files}${rows.read === 1 ? 'one row' : `${rows.read.toLocaleString('en')} rows`}${odd.length === 0 ? '' : `: ${odd.join(', ')}`}`;
}
