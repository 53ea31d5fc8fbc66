const others =
  /(^|[/\\])\.|\.(ya?ml|html?|md|pdf|png|jpe?g|gif|svg|docx?|xlsx?|exe|dll)$|(^|[/\\])(__MACOSX[/\\]|verify\.json$|Thumbs\.db$)/i;

/** What a folder or an archive holds besides logs (this program's own outputs among it), by its path within it. */
export function isNoLog(path: string): boolean {
  return others.test(path);
}
