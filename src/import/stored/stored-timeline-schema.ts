import * as v from 'valibot';
import { failureKinds, gauges, happenings, settings, stateSignals } from '../../vocabulary.ts';

/** From the year 0 to 9999: no stamp that is read has another. */
const [earliest, latest] = [-62_167_219_200_000, 253_402_300_799_999];
export const instant = v.pipe(v.number(), v.safeInteger(), v.minValue(earliest), v.maxValue(latest));
export const count = v.pipe(v.number(), v.safeInteger(), v.minValue(0));
export const nullable = v.nullable(v.string());
const kind = v.picklist(['reading', 'entry', 'note']);
const signal = v.picklist([...stateSignals, ...happenings]);
const role = v.nullable(v.picklist(['active', 'standby']));
const subject = v.object({ pair: v.string(), half: nullable, role, site: v.exactOptional(v.string()) });
export const point = v.object({ time: instant, line: count, text: v.string() });
export const sourceLine = v.object({ file: v.string(), line: count, text: v.string() });
const wording = { wording: v.string(), count, firstLine: count };
const became = v.array(v.object({ name: v.string(), meaning: nullable }));

export const input = v.object({
  file: v.string(),
  sha256: v.string(),
  bytes: count,
  layout: v.string(),
  encoding: v.string(),
  delimiter: nullable,
  zone: v.string(),
  rows: v.object({
    read: count,
    used: count,
    unchanged: count,
    ignored: count,
    unmatched: count,
    rejected: count,
  }),
  from: v.nullable(instant),
  to: v.nullable(instant),
  units: v.array(v.string()),
  unmatched: v.array(v.object(wording)),
});

const stream = v.object({
  kind,
  unit: v.string(),
  subject,
  signals: v.array(signal),
  first: point,
  last: point,
  spacing: v.number(),
  gaps: v.array(v.object({ before: point, after: point })),
  // Files written before these were kept have none.
  reads: v.optional(v.array(v.object({ subject, signal: v.picklist(stateSignals), to: instant })), []),
  notUnderstood: v.optional(v.array(v.object({ from: instant, count })), []),
});

export const notice = v.object({
  id: v.picklist([
    'rejected-rows',
    'unmatched-wording',
    'damaged-tail',
    'clock-step',
    'clock-fold',
    'date-order',
    'wrong-half',
    'unreadable',
    'zone-assumed',
    'states-not-listed',
    'unused-rules',
  ]),
  what: v.string(),
  fix: v.string(),
  setting: v.exactOptional(v.picklist(settings)),
  count,
  from: v.nullable(instant),
  to: v.nullable(instant),
  lines: v.tupleWithRest([sourceLine], sourceLine),
});

const unknown = v.object({
  ...wording,
  kind: v.picklist(['unit', 'parameter', 'value', 'message']),
  name: v.string(),
  values: v.array(v.string()),
});

const file = v.object({
  input,
  resolution: count,
  site: nullable,
  zone: v.exactOptional(v.string()),
  streams: v.array(stream),
  gauges: v.array(v.object({ subject, gauge: v.picklist(gauges) })),
  notices: v.array(notice),
  reasons: v.array(v.string()),
  columns: became,
  parameters: became,
  unknown: v.array(unknown),
});

/** What could not be read when the timeline was written. Timelines of before the kind was kept do not say it. */
export const failure = v.object({
  where: v.string(),
  what: v.string(),
  fix: v.string(),
  kind: v.optional(v.picklist(failureKinds), 'unreadable'),
  setting: v.exactOptional(v.picklist(settings)),
});

/** What the metadata of a stored timeline hold: of each file all but its changes and gauge bins, which are rows. */
export const storedFiles = v.object({
  schema: v.literal('steadypair/stored-timeline/1'),
  files: v.array(file),
  failures: v.array(failure),
  // Those written before these were kept have none.
  phrasebookNotices: v.optional(v.array(notice), []),
});

/** Of that only what tells which pairs of which sites the files speak of. */
export const storedPlaces = v.object({
  schema: v.literal('steadypair/stored-timeline/1'),
  files: v.array(
    v.object({
      site: nullable,
      streams: v.array(
        v.object({ subject: v.object({ pair: v.string(), site: v.exactOptional(v.string()) }) }),
      ),
    }),
  ),
});

const date = v.pipe(
  v.date(),
  v.transform((value) => value.getTime()),
  instant,
);
const cell = v.nullish(v.string(), null);
const place = { source: count, stream: count, time: date, count };

/** One change. */
const changeRow = v.object({
  ...place,
  kind,
  pair: v.string(),
  half: cell,
  role: v.nullish(v.picklist(['active', 'standby']), null),
  unit_site: cell,
  signal,
  value: cell,
  before: cell,
  earliest: date,
  line: count,
  text: v.string(),
});

/** One five-minute bin of a gauge; `stream` is the place of its series. */
const gaugeRow = v.object({
  ...place,
  kind: v.literal('gauge'),
  minimum: v.number(),
  mean: v.number(),
  maximum: v.number(),
});

/** The rows of a stored timeline; further columns are for those who query it. */
export const storedRows = v.array(v.variant('kind', [changeRow, gaugeRow]));

/** Takes what was read for what it should be; `null` if it is anything else. */
export function asStored<S extends v.GenericSchema>(schema: S, found: unknown): v.InferOutput<S> | null {
  const result = v.safeParse(schema, found);
  return result.success ? result.output : null;
}
