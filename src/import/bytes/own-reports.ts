/** So many bytes tell a report of this program from a log. */
export const reportBytes = 256;

/** How the documents and tables of this program begin; a stored timeline is none of them, since it stands for its logs. */
const beginnings = [
  /^\{\s*"schema":\s*"steadypair\//,
  /^\{"time":"[^"]+Z","earliest":"[^"]+Z","pair":/,
  /^time,earliest,pair,half,signal,value,before,/,
  /^pair,site,observedSeconds,losses,/,
  /^pair,half,cause,start,model,firmware,serial,outcome,/,
  /^pair,month,observedSeconds,losses(,bouts)?\r?\n/,
  /^time,signal,value,halves\r?\n/,
  /^swaps,hours,low,high\r?\n/,
  /^(model|firmware|site),cause,attempts,censored,(superseded,)?median,/,
  /^(model|firmware|site),pairs,observedSeconds,losses,/,
];

/** Whether a file that begins with these bytes is a report that this program wrote: it is no log, and is not read again. */
export function isOwnReport(head: Uint8Array): boolean {
  const text = new TextDecoder('windows-1252').decode(head.subarray(0, reportBytes));
  return beginnings.some((beginning) => beginning.test(text));
}
