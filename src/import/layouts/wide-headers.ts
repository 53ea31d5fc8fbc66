import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { isQualityName } from './quality.ts';
import { type Tag, tagNamed } from './tag-names.ts';

/** A column whose header names the unit and the parameter. */
export interface WideColumn extends Tag {
  readonly index: number;
  /** Where the quality of its values stands; -1 without one. */
  readonly quality: number;
}

/**
 * The columns whose headers name a unit and a parameter, each with the quality beside it: the next column, if that is named as
 * one, or any that is named like it and its quality. `tagOf` takes a header apart; without one the built-in words do.
 */
export function wideColumns(
  names: readonly string[],
  phrasebook: Phrasebook,
  tagOf: (header: string) => Tag | null = (header) => tagNamed(phrasebook, header),
): readonly WideColumn[] {
  return names.flatMap((name, index) => {
    if (isQualityName(name)) return [];
    const tag = tagOf(name);
    return tag === null ? [] : [{ ...tag, index, quality: qualityOf(names, name, index) }];
  });
}

function qualityOf(names: readonly string[], name: string, index: number): number {
  const beside = names[index + 1];
  if (beside !== undefined && isQualityName(beside)) return index + 1;
  return names.findIndex((other) => isQualityName(other) && other.startsWith(name) && other !== name);
}
