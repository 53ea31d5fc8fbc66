import { strToU8, Zip, ZipDeflate } from 'fflate';

/** A text to be saved under a name. */
export interface TextFile {
  readonly name: string;
  readonly text: string;
}

/** The day that every file of a zip bears: the same reports give the same bytes. The format knows no earlier one. */
const day = new Date(1980, 0, 1);

/** A zip of text files, each packed as it comes, so that not all of their texts are held at once. */
export async function zipOf(files: AsyncIterable<TextFile> | Iterable<TextFile>): Promise<Blob> {
  const parts: Blob[] = [];
  const zip = new Zip((error, bytes) => {
    if (error !== null) throw error;
    parts.push(new Blob([bytes.slice()]));
  });
  for await (const { name, text } of files) {
    const packed = new ZipDeflate(name, { level: 6 });
    packed.mtime = day;
    zip.add(packed);
    packed.push(strToU8(text), true);
  }
  zip.end();
  return new Blob(parts, { type: 'application/zip' });
}
