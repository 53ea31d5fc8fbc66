/** A section of a report under its heading; `body` is HTML. */
export function section(id: string, title: string, body: string): string {
  return `<section id="${id}">\n<h2>${title}</h2>\n${body}\n</section>`;
}
