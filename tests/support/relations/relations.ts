import type { Relation } from './relation.ts';
import { sameFiles } from './same-files.ts';
import { sameLines } from './same-lines.ts';
import { weakerLines } from './weaker-lines.ts';

/** Every relation between runs: the suite holds the program to them. */
export const relations: readonly Relation[] = [...sameFiles, ...sameLines, ...weakerLines];
