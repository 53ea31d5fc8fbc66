import { InputError } from '../pipeline.ts';
import type { ReadFiles, Report } from './write-files.ts';
import { writeReports } from './write-files.ts';

/** A report that is kept beside a watch, whole at any moment. */
export interface KeptReport {
  /** Writes the reports if `standing` is not what was written last, and not too soon after the last time. */
  keep(standing: string, reports: () => Promise<readonly Report[]>, read: ReadFiles): Promise<void>;
  /** Writes the reports once more; gives their paths, or why they could not be written. */
  finish(reports: () => Promise<readonly Report[]>, read: ReadFiles): Promise<readonly string[]>;
}

const leastApartMs = 2000;

/**
 * Keeps reports in a folder. What stands in the way (a full disk, a folder that vanished) is told once by `tell` and tried again;
 * `thisMoment` is this computer's clock.
 */
export function keptReport(
  folder: string,
  thisMoment: () => number,
  tell: (line: string) => void,
): KeptReport {
  let written = '';
  let last = Number.NEGATIVE_INFINITY;
  let trouble = '';
  const say = (line: string): void => {
    if (line !== '' && line !== trouble) tell(line);
    trouble = line;
  };
  return {
    async keep(standing, reports, read) {
      if (standing === written || thisMoment() - last < leastApartMs) return;
      const refused = await refusalOf(async () => writeReports(folder, await reports(), read));
      last = thisMoment();
      if (typeof refused !== 'string') written = standing;
      say(typeof refused === 'string' ? `${refused} The watch goes on and tries again.` : '');
    },
    async finish(reports, read) {
      const paths = await refusalOf(async () => writeReports(folder, await reports(), read));
      if (typeof paths !== 'string') return paths.map((path) => `Report: ${path}`);
      tell(paths);
      return [];
    },
  };
}

/** What was refused, as a line for the user, in place of a result. */
async function refusalOf<T>(work: () => Promise<T>): Promise<T | string> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
}
