import type { Pattern } from '../phrasebook/patterns.ts';
import { addressOf, fieldKeys, stampIn } from './line-fields.ts';
import type { LineFormat } from './line-format.ts';

/** Groups of a line pattern that say when, where and what; any other one is a parameter. */
const known: ReadonlySet<string> = new Set(fieldKeys);

/** The format that a phrasebook's own pattern describes; every named group counts. */
export function ownFormat(pattern: Pattern): LineFormat {
  const parameters = pattern.groups.filter((group) => !known.has(group));
  const isApart = pattern.groups.includes('half') || pattern.groups.includes('role');
  return {
    id: 'own',
    title: "the phrasebook's line pattern",
    hasFields: true,
    take(line) {
      const groups = pattern.match(line);
      if (groups === null) return null;
      const { half = '', role = '', message = null, parameter, value } = groups;
      return {
        stamp: stampIn((key) => groups[key]) ?? '',
        ...addressOf(groups.unit ?? '', groups.pair ?? '', isApart),
        half,
        role,
        message,
        reading: parameter === undefined || value === undefined ? undefined : { parameter, value },
        fields: new Map(
          parameters.flatMap((group) =>
            groups[group] === undefined ? [] : [[group, groups[group]] as const],
          ),
        ),
      };
    },
  };
}
