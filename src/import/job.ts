import * as v from 'valibot';
import type { Job } from '../vocabulary.ts';
import { readYaml } from './phrasebook/yaml-file.ts';

const text = v.pipe(
  v.union([v.string(), v.number()]),
  v.transform((value) => String(value)),
);

/** The shape of a job file. Source: design.md, section 5. */
const jobSchema = v.strictObject({
  workOrder: v.optional(text),
  site: v.optional(text),
  technician: v.optional(text),
  reviewer: v.optional(text),
  plan: v.optional(
    v.record(
      v.string(),
      v.record(v.string(), v.strictObject({ model: v.optional(text), firmware: v.optional(text) })),
    ),
  ),
});

/** Reads a job file (YAML 1.2). Throws InputError with the file, the place inside it and what was expected. */
export function readJob(file: string, yaml: string): Job {
  const job = readYaml(file, yaml, jobSchema, 'Its keys are workOrder, site, technician, reviewer and plan.');
  return { ...job, file };
}
