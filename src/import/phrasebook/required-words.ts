const tokens = /\\[\s\S]|\[\^?\]?(?:\\[\s\S]|[^\\\]])*\]|\{[^}]*\}|[\s\S]/g;

/**
 * The longest run of plain ASCII letters, figures and blanks that any text must hold if the pattern is to fit it, in lower case;
 * empty where there is none for sure. Only what stands outside all groups, classes and repeats counts.
 */
export function requiredWords(source: string): string {
  if (/\\[pPxQC\d]/.test(source)) return '';
  let depth = 0;
  let run = '';
  let longest = '';
  for (const [token] of source.matchAll(tokens)) {
    if (token === '|' && depth === 0) return '';
    if (depth === 0 && /^[A-Za-z0-9 _-]$/.test(token)) {
      run += token;
      if (run.length > longest.length) longest = run;
      continue;
    }
    // What is repeated may be there no time at all.
    if (/^[*?{]/.test(token) && run.length === longest.length) longest = longest.slice(0, -1);
    run = '';
    if (token === '(') depth += 1;
    if (token === ')') depth -= 1;
  }
  return longest.toLowerCase();
}

/** A text as required words are searched in it: letters that any folding of case makes alike are alike. */
export function foldedCase(text: string): string {
  return text.toUpperCase().toLowerCase();
}
