import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { digestOf, platform } from '../../src/cli/platform.ts';
import { importFiles, readPhrasebook } from '../../src/pipeline.ts';
import { timelineParquet } from '../../src/report/timeline-parquet.ts';
import type { ImportedFile } from '../../src/vocabulary.ts';
import { journalCsv, messagesOf } from '../exports.ts';
import { fleetFrom, type PairPlan, tellFleet } from '../fleet.ts';
import { plain } from '../wordings.ts';

/** So many sites are told anew; those after them tell the same under other names. */
const told = 20;
const months = 12;
const dayMs = 86_400_000;

/**
 * Writes the timelines of some sites into a folder, one for each site and month of a year, each pair with two losses, four restarts
 * and one reflash of either half in it; gives the paths, in the order of sites and months. What a site has does not depend on how
 * many there are.
 */
export async function writeManySites(
  folder: string,
  sites: number,
  pairs: number,
): Promise<readonly string[]> {
  mkdirSync(folder, { recursive: true });
  const distinct: (readonly ImportedFile[])[] = [];
  const paths: string[] = [];
  for (let site = 0; site < sites; site += 1) {
    const year = distinct[site % told] ?? (await yearOf(site, pairs));
    if (site < told) distinct.push(year);
    const name = `Site ${String(site + 1).padStart(4, '0')}`;
    for (const file of year) {
      const path = join(
        folder,
        `${name.toLowerCase().replace(' ', '-')}-${file.input.file.slice(8, 15)}.parquet`,
      );
      writeFileSync(path, timelineParquet([atSite(file, name)], [], digestOf));
      paths.push(path);
    }
  }
  return paths;
}

/** The same file as another site would have it: its bytes are its own. */
function atSite(file: ImportedFile, site: string): ImportedFile {
  const sha256 = digestOf(new TextEncoder().encode(`${site} ${file.input.sha256}`));
  return { ...file, site, input: { ...file.input, sha256 } };
}

/** The journals that the station of a site kept over a year, one for each month, as they are read. */
async function yearOf(seed: number, pairs: number): Promise<readonly ImportedFile[]> {
  const plans = Array.from(
    { length: pairs },
    (_, index): PairPlan => ({
      pair: `P${String(index + 1).padStart(3, '0')}`,
      lossesPerYear: index === 0 && seed % 4 === 0 ? 12 : 2,
      growth: 1,
      reflashedAt: Date.UTC(2025, 7, 5 + (index % 20), 9),
      swappedAt: null,
    }),
  );
  const messages = tellFleet(plans, seed + 1).flatMap(({ story }) => messagesOf(story, plain, []));
  const end = fleetFrom + 365 * dayMs;
  const own = messages.filter((m) => m.time < end).sort((a, b) => a.time - b.time);
  const begins = Array.from({ length: months }, (_, month) => Date.UTC(2024, 10 + month, 1));
  const journals = begins.flatMap((from, index) => {
    const to = begins[index + 1] ?? end;
    const rows = own.filter((m) => m.time >= from && m.time < to);
    const stamp = { form: 'iso-offset', zone: 'Europe/Lisbon', decimals: 3 } as const;
    // A month in which nothing happened has no journal.
    if (rows.length === 0) return [];
    return [
      {
        name: `journal-${new Date(from).toISOString().slice(0, 7)}.csv`,
        bytes: new TextEncoder().encode(journalCsv(rows, ['time', 'unit', 'message'], ',', stamp)),
      },
    ];
  });
  const { files, failures } = await importFiles(
    journals.map(({ name, bytes }) => ({
      name,
      bytes: bytes.length,
      async *open() {
        yield bytes;
      },
    })),
    {
      phrasebook: readPhrasebook('built-in phrasebook', null),
      zone: null,
      order: null,
      year: null,
      sha256: platform.sha256,
    },
  );
  if (failures[0] !== undefined) throw failures[0];
  return files;
}
