import * as v from 'valibot';
import { settings } from '../../vocabulary.ts';
import {
  count,
  failure,
  input,
  instant,
  notice,
  nullable,
  point,
  sourceLine,
} from './stored-timeline-schema.ts';

const finite = v.pipe(v.number(), v.finite());
const maybe = v.nullable(finite);
const interval = { from: instant, to: instant };
const moment = v.object({ time: instant, earliest: instant });
/** Places among the lines of the pair. */
const lines = v.tupleWithRest([count], count);

const year = v.object({ year: v.pipe(v.number(), v.safeInteger()), count, ...interval, first: point });

/** The rest of the row of a file. */
export const fileRest = v.object({
  input: v.object({
    ...{ file: input.entries.file, sha256: input.entries.sha256, bytes: input.entries.bytes },
    container: v.exactOptional(v.object({ file: v.string(), sha256: v.string() })),
    ...input.entries,
  }),
  pairs: v.array(v.string()),
  notices: v.array(notice),
  stamps: v.object({ changes: v.array(year), ends: v.array(year) }),
  strays: v.nullable(v.object({ strays: v.tupleWithRest([point], point), gap: finite, ...interval })),
  offset: v.nullable(
    v.object({
      ...{ file: v.string(), reference: v.string(), ahead: maybe, spread: finite, count, within: finite },
      isBeyond: v.boolean(),
      evidence: v.tupleWithRest([sourceLine], sourceLine),
    }),
  ),
});

/** The rest of the row of a site: how its figures were made, and the names of files that lines of its pairs are of. */
export const siteRest = v.object({
  ...{ holdMs: count, align: v.boolean(), reference: nullable },
  failures: v.array(failure),
  names: v.array(v.string()),
});

/** The rest of the row of a loss. */
export const lossRest = v.object({
  ...{ kind: v.picklist(['planned', 'restart', 'counted']), ...moment.entries, lines },
});

const measure = v.object({
  ...{ seconds: maybe, low: maybe, high: maybe, censored: v.boolean() },
  outcome: v.nullable(v.picklist(['within', 'exceeded', 'inconclusive', 'not-observed'])),
});

/** The rest of the row of a bring-up. */
export const bringUpRest = v.object({
  ...{ pair: v.string(), half: v.string(), cause: v.picklist(['inserted', 'restart', 'reflash']) },
  ...{ start: moment, startDerived: v.boolean(), firmware: nullable, model: nullable, serial: nullable },
  outcome: v.picklist(['settled', 'lost', 'superseded', 'unfinished']),
  ...{ sync: measure, held: measure, settledSeconds: maybe, light: measure },
  ...{ settled: v.nullable(moment), mayHaveSettledAt: v.nullable(instant), ready: v.nullable(moment) },
  ...{ watchedTo: instant, evidence: lines, lightEvidence: lines },
});

const found = {
  ...{ id: v.string(), severity: v.picklist(['critical', 'warning', 'info']), pair: nullable },
  concerns: v.exactOptional(v.array(v.string())),
  ...{ half: nullable, from: v.nullable(instant), to: v.nullable(instant) },
  ...{ setting: v.exactOptional(v.picklist(settings)), advice: v.exactOptional(v.string()) },
  ...{ figures: v.record(v.string(), v.union([finite, nullable])), evidence: lines },
};

/** The rest of the row of a finding: its sentence has a column of its own. */
export const findingRest = v.object({ analyzer: v.string(), ...found });

/** The rest of the row of a question of chance. */
export const questionRest = v.object({
  ...{ analyzer: v.string(), p: v.pipe(finite, v.minValue(0), v.maxValue(1)) },
  finding: v.nullable(v.object({ ...found, statement: v.string() })),
});

const reason = v.object({ said: v.string(), isUnknown: v.exactOptional(v.literal(true)), lines });

/** The rest of the row of a pair, and the lines that it and the rows after it rest on: file, number and text. */
export const pairRest = v.object({
  ...{ ...interval, pair: v.string(), site: nullable },
  observed: v.array(v.object(interval)),
  bouts: v.array(v.object({ time: instant })),
  availability: v.nullable(v.pipe(finite, v.minValue(0), v.maxValue(1))),
  identities: v.array(
    v.object({
      ...{ half: v.string(), signal: v.picklist(['firmware', 'model']) },
      steps: v.array(v.object({ time: instant, value: nullable, initial: v.boolean() })),
    }),
  ),
  activeMonths: v.array(instant),
  fitness: v.object({
    ...{ now: v.nullable(reason), standing: v.array(reason) },
    lastGap: v.nullable(v.object({ to: instant, lines })),
    ...{ ends: lines, ready: lines },
  }),
  lines: v.array(v.tuple([count, count, v.string()])),
});

/** The columns of a row that are read back; the others are for those who query it. */
export const figureRows = v.array(
  v.object({
    kind: v.picklist(['site', 'file', 'pair', 'loss', 'bring-up', 'finding', 'question']),
    statement: v.nullish(v.string(), null),
    rest: v.string(),
  }),
);

/** A row, as far as it is read back. */
export type StoredRow = v.InferOutput<typeof figureRows>[number];

/** The figures of a pair but for what follows in rows of its own. */
export type StoredPairRest = v.InferOutput<typeof pairRest>;

/** What the rests of all rows hold; `null` where one is not what it should be. */
export function allStored<S extends v.GenericSchema>(
  schema: S,
  rests: readonly unknown[],
): readonly v.InferOutput<S>[] | null {
  const result = v.safeParse(v.array(schema), rests);
  return result.success ? result.output : null;
}

/** What the metadata of figures hold. */
export const figuresHead = v.object({ schema: v.literal('steadypair/fleet-figures/1') });
