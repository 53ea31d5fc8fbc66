import type { Subject } from '../../vocabulary.ts';
import { InputError } from '../bytes/input-error.ts';
import { fitsFile, pathOf } from './file-names.ts';
import type { FileRule, FileSubject, Phrasebook, UsedRules } from './phrasebook-rules.ts';
import { roleNamed, subjectOf, type UnitMeant, type UnitParts, unitMeant } from './subjects.ts';

/**
 * The rule for a file of that name, and whose file it is where the rule says so; undefined where none is for it. Throws
 * InputError where the rule should say whose file it is, and its path does not.
 */
export function ruleFor(phrasebook: Phrasebook, name: string): FileRule | undefined {
  const rule = phrasebook.files.find(({ match }) => fitsFile(match, name));
  if (rule === undefined || (rule.unit === undefined && rule.path === undefined)) return rule;
  return { ...rule, of: fileSubject(phrasebook, rule, name) };
}

function fileSubject(phrasebook: Phrasebook, rule: FileRule, name: string): FileSubject {
  const groups = rule.path?.match(pathOf(name)) ?? (rule.path === undefined ? {} : null);
  if (groups === null) throw unfitting(rule, name, 'does not fit it');
  const { half = '', role = '', unit = rule.unit ?? '' } = groups;
  const isPairAlone = !(rule.path?.groups ?? []).some((group) => group === 'half' || group === 'role');
  const pair = groups.pair ?? '';
  if (role !== '' && roleNamed(role) === null)
    throw unfitting(rule, name, `gives the role "${role}", which is not a role`);
  const subject =
    isPairAlone && pair !== ''
      ? subjectOf(phrasebook, { unit: pair, half, role })
      : subjectOf(phrasebook, { unit, pair, half, role });
  if (subject === null) throw unfitting(rule, name, saysNoPair(pair, unit));
  const { line, columns, header } = rule;
  const groupsOfRows = [...(line?.groups ?? []), ...(header?.groups ?? [])];
  return {
    text: [pair === '' ? unit : pair, half, role].filter((part) => part !== '').join(' '),
    subject: { ...subject, ...(groups.site === undefined ? {} : { site: groups.site }) },
    hasUnits:
      columns.unit !== undefined ||
      columns.pair !== undefined ||
      groupsOfRows.some((group) => group === 'unit' || group === 'pair'),
  };
}

function saysNoPair(pair: string, unit: string): string {
  const said = pair === '' ? unit : pair;
  return said === '' ? 'gives no pair' : `gives "${said}", which names no pair`;
}

function unfitting({ match }: FileRule, name: string, what: string): InputError {
  return new InputError(
    name,
    `its pair cannot be found: the pattern \`path\` of the rule for "${match}" ${what}.`,
    'Correct the pattern in the phrasebook, or put a rule for this file before it.',
  );
}

/** What a row is about, and whether it is about a half only since its file is of that half. */
export interface RowSubject {
  readonly subject: Subject | null;
  readonly isHalfOfFile: boolean;
  /** What says so; `column` where the rule for the file does. */
  readonly by: UnitMeant['by'] | 'column';
}

/**
 * The subject of a row: what it says itself comes before what its file says. A name that stands where units stand in most logs
 * (a host, a first word) is one here only if a unit pattern of the site fits it, or if it is of the pair whose file it is.
 */
export function subjectIn(
  phrasebook: Phrasebook,
  parts: UnitParts,
  of: FileSubject | undefined,
  used?: UsedRules,
): RowSubject {
  const meant =
    of === undefined || saysUnit(phrasebook, parts, of) ? unitMeant(phrasebook, parts, used) : null;
  const own = meant?.subject ?? null;
  const by = meant?.by ?? 'word';
  if (of === undefined) return { subject: own, isHalfOfFile: false, by };
  const { half, role } = parts;
  if (!saysUnit(phrasebook, parts, of)) {
    const held = role === '' ? of.subject.role : roleNamed(role);
    const subject = { ...of.subject, half: half === '' ? of.subject.half : half, role: held };
    return { subject, isHalfOfFile: half === '' && of.subject.half !== null, by: 'column' };
  }
  const isOfFile = own?.pair === of.subject.pair && own.half === null && own.role === null;
  return isOfFile
    ? {
        subject: { ...own, half: of.subject.half, role: of.subject.role },
        isHalfOfFile: of.subject.half !== null,
        by: 'column',
      }
    : { subject: own, isHalfOfFile: false, by };
}

/** True if a row says its unit itself, in a file of which it is known whose it is. */
export function saysUnit(phrasebook: Phrasebook, parts: UnitParts, of: FileSubject): boolean {
  const { unit, pair = '' } = parts;
  if (pair !== '') return true;
  if (unit.trim() === '') return false;
  if (of.hasUnits) return true;
  const { units } = phrasebook;
  return (
    subjectOf({ units: units.filter((rule) => rule.isBuiltIn !== true) }, parts) !== null ||
    subjectOf(phrasebook, parts)?.pair === of.subject.pair
  );
}

/** The phrasebook with what the rule for one file says of its stamps in place of what it says of all. */
export function withStamps(phrasebook: Phrasebook, rule: FileRule | undefined): Phrasebook {
  if (rule?.time === undefined) return phrasebook;
  const { zone, order, year, pattern } = rule.time;
  return {
    ...phrasebook,
    zone: zone ?? phrasebook.zone,
    order: order ?? phrasebook.order,
    year: year ?? phrasebook.year,
    pattern: pattern ?? phrasebook.pattern,
  };
}
