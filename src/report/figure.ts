import { html } from './escape.ts';
import type { picture } from './picture.ts';

/** A drawn chart with its caption as HTML; `name` keeps its clips apart from those of other pictures of the page. */
export async function figure(
  spec: Parameters<typeof picture>[0],
  caption: string,
  name: string,
): Promise<string> {
  // What draws is half of the program: it is loaded by what draws alone.
  const drawn = await import('./picture.ts');
  const svg = await drawn.picture(spec);
  // Vega names its clips clip0, clip1: two pictures in one page must not share them.
  const own = svg
    .replace(/ (?:aria-[a-z]+|xmlns:xlink)="[^"]*"| role="graphics-[a-z]+"/g, '')
    .replace(/(id="|url\(#)((?:clip|gradient_)\d+)/g, `$1${name}-$2`)
    // A function: a `$` in a half's name must not be read as a pattern.
    .replace('<svg ', () => `<svg role="img" aria-label="${html(caption)}" `);
  return `<figure><div class="picture">${own}</div><figcaption>${html(caption)}</figcaption></figure>`;
}
