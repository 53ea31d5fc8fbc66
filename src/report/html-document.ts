import { html } from './escape.ts';
import { style } from './style.ts';

/**
 * One self-contained HTML file of some sections, those that are not empty: no script, no network. `title` is plain text, `sameness` what
 * gives the same bytes again.
 */
export function htmlDocument(
  title: string,
  sections: readonly string[],
  version: string,
  sameness = 'The same files give the same report.',
): string {
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${html(title)}</title>
<style>${style}</style>
</head>
<body>
<main>
${sections.filter((s) => s !== '').join('\n')}
</main>
<footer>Made by Steadypair ${html(version)} from the files listed above. ${sameness}</footer>
</body>
</html>
`;
}
