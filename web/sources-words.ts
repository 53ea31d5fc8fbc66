import { rowsNotKnown, sayRowsNotKnown } from '../src/report/not-known.ts';
import { sayCount } from '../src/report/words.ts';
import type { SiteModel, Trial } from './protocol.ts';

type Read = Pick<SiteModel, 'files' | 'failures'>;

/** The rows of all files, and how many of them were not recognised or were rejected. */
export function rowsOf({ files }: Pick<SiteModel, 'files'>): Trial['rows'] {
  return rowsNotKnown(files.map(({ input }) => input));
}

/** The first line of Sources: what was read, and what was not. */
export function sayRead(site: Read): string {
  const { files, failures } = site;
  const leftOut = failures.filter(({ kind }) => kind === 'left-out').length;
  const left = leftOut === 0 ? '' : `, ${leftOut === 1 ? 'one' : leftOut.toLocaleString('en')} left out`;
  if (files.length === 0)
    return leftOut <= 1
      ? 'No file could be read.'
      : `None of ${leftOut.toLocaleString('en')} files could be read.`;
  const read =
    files.length === 1 ? 'One file was read' : `${files.length.toLocaleString('en')} files were read`;
  const rows = rowsOf(site);
  if (rows.unmatched + rows.rejected === 0)
    return `${read}${left}; ${rows.read === 1 ? 'its row was' : `all ${rows.read.toLocaleString('en')} rows were`} recognised.`;
  const [first = '', ...others] = sayRowsNotKnown(rows).map((said) => said.replace(/\.$/, ''));
  return `${[`${read}${left}`, first, ...others].join('; ')}.`;
}

/** Something that is still to do, and the section of Sources where it is done. */
export interface ToDo {
  readonly section: string;
  readonly says: string;
}

/** What is to do, in the order of the sections; empty where all was recognised. */
export function toDo(
  { files, failures }: Read,
  unknownWordings: number | null,
  guessed: number,
): readonly ToDo[] {
  const of = (kind: string): number => failures.filter((f) => f.kind === kind).length;
  const [leftOut, refused] = [of('left-out'), of('refused')];
  const rows = rowsOf({ files });
  const openZones = files.filter(({ notices }) => notices.some(({ id }) => id === 'zone-assumed')).length;
  const wordings = unknownWordings ?? 0;
  return [
    ...(refused === 0
      ? []
      : [
          {
            section: 'left-out',
            says: `Correct ${refused === 1 ? 'the phrasebook or job file that was' : `${refused} phrasebooks or job files that were`} refused`,
          },
        ]),
    ...(leftOut === 0
      ? []
      : [
          {
            section: 'left-out',
            says: `Say how ${leftOut === 1 ? 'the file left out is' : `the ${leftOut} files left out are`} read`,
          },
        ]),
    ...(guessed === 0
      ? []
      : [
          {
            section: 'left-out',
            says: `Check how ${sayCount(guessed, 'file')} ${guessed === 1 ? 'is' : 'are'} read: a guess`,
          },
        ]),
    ...(rows.unmatched === 0 && wordings === 0
      ? []
      : [
          {
            section: 'wordings',
            says:
              wordings === 0
                ? 'Add rules for the rows not recognised'
                : `Add rules for ${sayCount(wordings, 'wording')} not recognised`,
          },
        ]),
    ...(openZones === 0
      ? []
      : [{ section: 'time-zone', says: `Set the time zone: ${sayCount(openZones, 'file')} read as UTC` }]),
    ...(rows.rejected === 0
      ? []
      : [{ section: 'files-read', says: `Look at ${sayCount(rows.rejected, 'row')} rejected` }]),
  ];
}

/** What some rules would come to: `With these 3 rules 1,204 of 1,310 rows would be recognised; now 1,100 of 1,310.` */
export function sayTrial(rules: number, { rows, leftOut }: Trial, now: Trial['rows']): string {
  const with_ = rules === 1 ? 'With this rule' : `With these ${rules.toLocaleString('en')} rules`;
  const known = (r: Trial['rows']): string => (r.read - r.unmatched - r.rejected).toLocaleString('en');
  const would = `${with_}, ${known(rows)} of ${rows.read.toLocaleString('en')} rows would be recognised`;
  const before =
    now.read === rows.read ? `now ${known(now)}` : `now ${known(now)} of ${now.read.toLocaleString('en')}`;
  const still = leftOut.slice(0, 3).map(({ where, what }) => ` ${where} would still be left out: ${what}`);
  const more = leftOut.length > 3 ? ` So would ${leftOut.length - 3} more.` : '';
  return `${would}; ${before}.${still.join('')}${more}`;
}
