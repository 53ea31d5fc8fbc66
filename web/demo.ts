import type { NamedFile } from './protocol.ts';

declare const STEADYPAIR_DEMO: string;
declare const STEADYPAIR_DEMO_FLEET: string;

/** The demo site's files, unpacked from the page itself. */
export async function demoFiles(): Promise<readonly NamedFile[]> {
  const unpacked = new Blob([bytesOf(STEADYPAIR_DEMO)]).stream().pipeThrough(new DecompressionStream('gzip'));
  const files: readonly { readonly name: string; readonly text: string }[] = JSON.parse(
    await new Response(unpacked).text(),
  );
  return files.map(({ name, text }) => ({ name, file: new File([text], name) }));
}

/** Two years of the demo site's pairs as stored timelines, unpacked from the page itself. */
export function demoFleet(): readonly NamedFile[] {
  const files: readonly { readonly name: string; readonly base64: string }[] =
    JSON.parse(STEADYPAIR_DEMO_FLEET);
  return files.map(({ name, base64 }) => ({ name, file: new File([bytesOf(base64)], name) }));
}

function bytesOf(base64: string): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
}
