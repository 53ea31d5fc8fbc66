import { eachChunk } from '../bytes/damaged-end.ts';
import type { FileSource, StoredFile } from '../bytes/file-source.ts';
import { InputError } from '../bytes/input-error.ts';
import { figuresHead } from './figures-schema.ts';
import { isParquet, magicBytes, parquetBytes, tailBytes } from './parquet-file.ts';
import { parsedJson } from './sealed-file.ts';
import { isStoredTimeline } from './stored-timeline.ts';
import { asStored, storedPlaces } from './stored-timeline-schema.ts';

/** A pair as a file speaks of it: the site that its unit names, and that of the phrasebook it was read with. */
export interface StoredPlace {
  readonly pair: string;
  readonly unitSite: string | null;
  readonly site: string | null;
}

/** What a file is, before it is read: a log, figures of a fleet, or a stored timeline with the pairs it speaks of. */
export type StoredContent =
  | { readonly kind: 'log' }
  | { readonly kind: 'figures' }
  | { readonly kind: 'timeline'; readonly places: readonly StoredPlace[] };

/** Looks at the end of a file. What is damaged or foreign counts as a timeline without pairs: its reading says what it is. */
export async function storedContent(source: FileSource | StoredFile): Promise<StoredContent> {
  const isParquetFile =
    'slice' in source ? isParquet(await source.slice(0, magicBytes)) : await isStoredTimeline(source);
  if (!isParquetFile) return { kind: 'log' };
  const text = await metadataText(source).catch((error: unknown) => {
    if (error instanceof InputError) return undefined;
    throw error;
  });
  const head = parsedJson(text ?? '');
  if (asStored(figuresHead, head) !== null) return { kind: 'figures' };
  const found = asStored(storedPlaces, head);
  return { kind: 'timeline', places: (found?.files ?? []).flatMap(placesIn) };
}

type StoredPlaces = NonNullable<ReturnType<typeof asStored<typeof storedPlaces>>>['files'][number];

/** Each once. */
function placesIn({ site, streams }: StoredPlaces): readonly StoredPlace[] {
  const places = streams.map(({ subject }) => ({ pair: subject.pair, unitSite: subject.site ?? null, site }));
  return [...new Map(places.map((place) => [`${place.unitSite ?? ''}\n${place.pair}`, place])).values()];
}

async function metadataText(source: FileSource | StoredFile): Promise<string | undefined> {
  const { name } = source;
  // What reads Parquet is loaded where there is any.
  const { openParquet } = await import('./parquet-rows.ts');
  if ('slice' in source) {
    const end = await source.slice(Math.max(0, source.bytes - tailBytes), source.bytes);
    if (end.length < tailBytes) return undefined;
    const length = new DataView(Uint8Array.from(end).buffer).getUint32(end.length - tailBytes, true);
    const tail = await source.slice(Math.max(0, source.bytes - tailBytes - length), source.bytes);
    return openParquet(name, Uint8Array.from(tail).buffer, 'steadypair').text;
  }
  const bytes = parquetBytes(source, 'figures');
  await eachChunk(source, (chunk) => {
    bytes.add(chunk);
    return true;
  });
  return openParquet(name, bytes.whole(), 'steadypair').text;
}
