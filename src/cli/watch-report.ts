import { InputError } from '../pipeline.ts';
import type { ReadFiles, Report } from './write-files.ts';
import { writeReports } from './write-files.ts';

/** What is written now: the reports, how their swaps stand, and what they must not be written over. */
export interface ToKeep {
  readonly standing: string;
  readonly read: ReadFiles;
  reports(): Promise<readonly Report[]>;
}

/** A report that is kept beside a watch, whole at any moment. */
export interface KeptReport {
  /** Writes the reports if they stand otherwise than what was written last, and not too soon after the last time. */
  keep(now: ToKeep): Promise<void>;
  /** Writes the reports once more; gives a line on each, none where they could not be written. */
  finish(now: ToKeep): Promise<readonly string[]>;
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
  const write = async ({ reports, read }: ToKeep): Promise<readonly string[] | string> => {
    try {
      return await writeReports(folder, await reports(), read);
    } catch (error) {
      if (error instanceof InputError) return error.message;
      throw error;
    } finally {
      last = thisMoment();
    }
  };
  return {
    async keep(now) {
      if (now.standing === written || thisMoment() - last < leastApartMs) return;
      const paths = await write(now);
      const line = typeof paths === 'string' ? paths : '';
      if (line === '') written = now.standing;
      else if (line !== trouble) tell(`${line} The watch goes on and tries again.`);
      trouble = line;
    },
    async finish(now) {
      const paths = await write(now);
      if (typeof paths !== 'string') return paths.map((path) => `Report: ${path}`);
      tell(paths);
      return [];
    },
  };
}
