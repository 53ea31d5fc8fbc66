import { documentsOf } from '../src/bundle/documents.ts';
import { diagnoseReports } from '../src/report/diagnose-reports.ts';
import { fleetReports } from '../src/report/fleet-reports.ts';
import { reportsOf, reportsOfSwap, safeName } from '../src/report/verify-reports.ts';
import type { Diagnosis, Fleet, Swap } from '../src/vocabulary.ts';
import type { Choice, Reports } from './components/save-bar.ts';
import type { PageState } from './page-state.ts';
import type { PairModel, SiteModel } from './protocol.ts';
import type { Session } from './session.ts';
import type { TextFile } from './zip-files.ts';

declare const STEADYPAIR_VERSION: string;

const report: Choice = { id: 'save-report', ending: '.html', words: 'Save report' };
const summary: Choice = { id: 'save-markdown', ending: '.md', words: 'Save summary (Markdown)' };
const figures: Choice = { id: 'save-json', ending: '.json', words: 'Save figures (JSON)' };

/** What the command writes of a fleet with `--out`, as a person would call it. */
const fleetChoices: readonly Choice[] = [
  ['fleet.html', 'report'],
  ['fleet.md', 'summary (Markdown)'],
  ['fleet.json', 'figures (JSON)'],
  ['fleet-pairs.csv', 'pairs (CSV)'],
  ['fleet-losses.csv', 'losses by group (CSV)'],
  ['fleet-groups.csv', 'sync times by group (CSV)'],
  ['fleet-attempts.csv', 'bring-ups (CSV)'],
  ['fleet-months.csv', 'months (CSV)'],
  ['fleet-census.csv', 'census (CSV)'],
  ['fleet-forecast.csv', 'forecast (CSV)'],
].map(([ending = '', words = '']) => ({
  id: ending === 'fleet.html' ? 'save-report' : `save-${ending.replace('.', '-')}`,
  ending,
  words: `Save ${words}`,
}));

/** Written at most once. */
function once(write: () => Promise<readonly TextFile[]>): Reports['own'] {
  let written: ReturnType<typeof write> | null = null;
  return () => {
    written ??= write();
    return written;
  };
}

/** The way to a bundle of one pair: the worker has the logs, and this page draws the reports. */
function bundleWay(session: Session, command: 'verify' | 'diagnose', pair: string): Reports['bundle'] {
  const name = `${safeName(pair)}-${command === 'verify' ? 'swap' : 'diagnosis'}-bundle.zip`;
  return {
    name,
    async make(isMasked) {
      const { answer, zone } = await session.ask<'bundle'>({
        kind: 'bundle',
        command,
        pair,
        isMasked,
        place: name,
      });
      const documents = await documentsOf(answer, zone, STEADYPAIR_VERSION);
      return session.ask<'pack'>({ kind: 'pack', documents });
    },
  };
}

/** The reports of one swap, and those of all swaps of the site as it is when they are asked for. */
export function swapReports(
  state: () => Pick<PageState, 'site' | 'session'>,
  { verification }: PairModel,
  swap: Swap,
): Reports {
  const site = (): SiteModel => state().site;
  const options = { zone: site().zone, version: STEADYPAIR_VERSION };
  return {
    own: once(() => reportsOfSwap(verification, swap, options)),
    all: () => swapsOfSite(site()),
    zipName: 'swap-records.zip',
    choices: [report, summary],
    bundle: bundleWay(state().session, 'verify', swap.pair),
  };
}

/** The page stays alive while many reports are written. */
function pause(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve));
}

/** A folder for each pair with a swap, as the command writes it; of two whose names differ only in other signs the later is counted. */
async function* swapsOfSite({ pairs, zone }: SiteModel): AsyncGenerator<TextFile> {
  const taken = new Map<string, number>();
  for (const { health, verification } of pairs) {
    if (verification.swaps.length === 0) continue;
    const base = safeName(health.pair);
    const before = taken.get(base.toLowerCase()) ?? 0;
    taken.set(base.toLowerCase(), before + 1);
    const folder = before === 0 ? base : `${base}_${before + 1}`;
    for (const { name, text } of await reportsOf(verification, { zone, version: STEADYPAIR_VERSION }))
      yield { name: `${folder}/${name}`, text };
    await pause();
  }
}

/** The reports of a diagnosis. */
export function diagnosisReports(
  diagnosis: Diagnosis,
  { site: { zone }, session }: Pick<PageState, 'site' | 'session'>,
): Reports {
  const own = once(() => diagnoseReports(diagnosis, { zone, version: STEADYPAIR_VERSION }));
  return {
    own,
    all: () => eachOf(own),
    zipName: `${safeName(diagnosis.pair)}-diagnosis.zip`,
    choices: [{ ...report, id: 'save-diagnosis' }, summary, figures],
    bundle: bundleWay(session, 'diagnose', diagnosis.pair),
  };
}

/** The reports and tables of a fleet review. */
export function fleetReportsOf(fleet: Fleet, zone: string): Reports {
  const own = once(() => fleetReports(fleet, { zone, version: STEADYPAIR_VERSION, pause }));
  return { own, all: () => eachOf(own), zipName: 'fleet-review.zip', choices: fleetChoices };
}

async function* eachOf(own: Reports['own']): AsyncGenerator<TextFile> {
  yield* await own();
}

/** The HTML file among some reports: what is printed. */
export async function htmlOf({ own }: Reports): Promise<string> {
  return (await own()).find(({ name }) => name.endsWith('.html'))?.text ?? '';
}
