import * as v from 'valibot';

/** What a manifest names as its schema; the number is that of its version. */
export const bundleSchema = 'steadypair/bundle/1';

/** Where the parts of a bundle stand in it. */
export const bundleParts = {
  manifest: 'manifest.json',
  settings: 'settings.json',
  phrasebook: 'phrasebook.yaml',
  job: 'job.yaml',
  readme: 'README.txt',
  logs: 'logs/',
} as const;

/** ISO 8601 UTC outside, milliseconds inside. */
const instant = v.nullable(
  v.pipe(
    v.string(),
    v.isoTimestamp(),
    v.transform((text) => Date.parse(text)),
    v.safeInteger(),
  ),
);
const text = v.nullable(v.string());

const settings = v.object({
  /** An IANA time zone; `null`, here and below: it was not said. */
  zone: text,
  order: v.nullable(v.picklist(['day-first', 'month-first'])),
  year: v.nullable(v.pipe(v.number(), v.safeInteger())),
  align: v.boolean(),
  /** The name of a log. */
  reference: text,
  /** Seconds. */
  hold: v.nullable(v.pipe(v.number(), v.safeInteger())),
  pair: text,
  /** Milliseconds UTC. */
  from: instant,
  to: instant,
});

/** What besides files, phrasebook and job decides an answer. */
export type Settings = Readonly<v.InferOutput<typeof settings>>;

/** Nothing was said. */
export const noSettings: Settings = {
  zone: null,
  order: null,
  year: null,
  align: false,
  reference: null,
  hold: null,
  pair: null,
  from: null,
  to: null,
};

const refusal = v.object({
  where: v.string(),
  what: v.string(),
  fix: v.string(),
  kind: v.picklist(['unreadable', 'date-order']),
});

const log = v.object({
  /** Its member, `logs/...`. */
  member: v.string(),
  /** What it was called; `null` in a masked bundle. */
  original: text,
  /** Bytes of the original, unpacked. */
  bytes: v.number(),
  /** SHA-256 of the original, unpacked; `null` in a masked bundle. */
  sha256: text,
  /** The lines inside, from and to; the others are left empty. */
  lines: v.union([v.literal('all'), v.array(v.tuple([v.number(), v.number()]))]),
  /** Why its bytes ended too early where it was read. */
  damage: text,
});

const manifest = v.object({
  schema: v.literal(bundleSchema),
  masked: v.boolean(),
  note: v.string(),
  command: v.picklist(['verify', 'diagnose']),
  members: v.array(v.object({ name: v.string(), bytes: v.number(), sha256: v.string() })),
  /** In the order in which they were read. */
  logs: v.array(log),
  /** What was given, and could not be opened. */
  unread: v.array(refusal),
});

/** What a bundle says of itself. */
export type Manifest = v.InferOutput<typeof manifest>;
export type BundledLog = Manifest['logs'][number];

/** The manifest in a text: `null` if it is of another program, `undefined` if it is one of a bundle and cannot be used. */
export function readManifest(text: string): Manifest | null | undefined {
  const found = parsed(text);
  const said = v.safeParse(v.object({ schema: v.string() }), found);
  if (!said.success || !said.output.schema.startsWith('steadypair/bundle/')) return null;
  const result = v.safeParse(manifest, found);
  return result.success ? result.output : undefined;
}

/** The settings in a text; `null` if they cannot be used. */
export function readSettings(text: string): Settings | null {
  const result = v.safeParse(settings, parsed(text));
  return result.success ? result.output : null;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}
