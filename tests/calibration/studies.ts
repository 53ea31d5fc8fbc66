import { driftStudy } from './drift.ts';
import { coincidenceStudy, rhythmStudy } from './fleet-questions.ts';
import type { Study } from './study.ts';

/** Every study, in the order of the table. */
export const studies: readonly Study[] = [coincidenceStudy, rhythmStudy, driftStudy];
