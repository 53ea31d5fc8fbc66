import type { NamedFile } from './protocol.ts';

declare const STEADYPAIR_DEMO: string;

/** The demo site's files, unpacked from the page itself. */
export async function demoFiles(): Promise<readonly NamedFile[]> {
  const packed = Uint8Array.from(atob(STEADYPAIR_DEMO), (character) => character.charCodeAt(0));
  const unpacked = new Blob([packed]).stream().pipeThrough(new DecompressionStream('gzip'));
  const files: readonly { readonly name: string; readonly text: string }[] = JSON.parse(
    await new Response(unpacked).text(),
  );
  return files.map(({ name, text }) => ({ name, file: new File([text], name) }));
}
