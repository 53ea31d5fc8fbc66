import { InputError } from '../pipeline.ts';
import { toJson } from '../report/json.ts';
import type { ReportFile } from '../report/verify-reports.ts';
import { type Answer, answerTo, type BundleCase, type BundleTools } from './case.ts';
import type { BundledLog, Manifest } from './inside.ts';
import { type Mask, maskOf } from './mask.ts';
import { bundleWriter } from './pack-members.ts';
import { cutsOf, type Prepared, prepared, withReadableLogs } from './prepare-logs.ts';
import { sameAnswer, sameVerdict } from './same-answer.ts';

/** How a bundle is to be made. */
export interface BundleOptions {
  /** What it is called where it must be refused. */
  readonly place: string;
  /** Stand-ins for names, serials and addresses. */
  readonly isMasked: boolean;
  /** What the logs say, if that is known. */
  readonly answer?: Answer;
  /** A log of more bytes, unpacked, is cut to the time of the answer. */
  readonly mostWhole?: number;
}

/** The zip, and the key of a masked one: a JSON text that is to be kept beside it. */
export interface MadeBundle {
  readonly bytes: Uint8Array;
  readonly key: string | null;
}

const usualWhole = 67_108_864;

/** A bundle that wants its reports. */
export interface BundleToPack {
  readonly answer: Answer;
  /** The zone that was said. */
  readonly zone: string | null;
  /** Packs all of it with the reports of that answer; those that are JSON stand at the top. */
  pack(documents: readonly ReportFile[]): Promise<MadeBundle>;
}

/**
 * A case as it goes into a bundle, up to its reports. Throws InputError where what is inside would lead to another answer, or
 * where names cannot be masked.
 */
export async function prepareBundle(
  one: BundleCase,
  tools: BundleTools,
  options: BundleOptions,
): Promise<BundleToPack> {
  const { place, isMasked, mostWhole = usualWhole } = options;
  const answer = options.answer ?? (await answerTo(one, tools));
  const readable = await withReadableLogs(one, answer);
  const { mask, usable } = isMasked
    ? await maskOf(readable, answer, place)
    : { mask: null, usable: readable };
  const cuts = await cutsOf(usable, answer, tools, mostWhole);
  const first = await tried(answer, prepared(usable, cuts, mask), tools, mask);
  const found =
    first ?? (cuts.size === 0 ? null : await tried(answer, prepared(usable, new Map(), mask), tools, mask));
  if (found === null) throw otherAnswer(place, isMasked);
  return {
    answer: found.answer,
    zone: found.prepared.inside.settings.zone,
    pack: (documents) => packed(found.prepared, documents, tools, { place, mask }),
  };
}

/** The answer from inside, if it is the same. */
async function tried(
  answer: Answer,
  inside: Prepared,
  tools: BundleTools,
  mask: Mask | null,
): Promise<{ readonly prepared: Prepared; readonly answer: Answer } | null> {
  const again = await answerTo(inside.inside, tools).catch(asFailure);
  if (again instanceof InputError) return null;
  const isSame = mask === null ? sameAnswer(answer, again, inside.renamed) : sameVerdict(answer, again);
  return isSame ? { prepared: inside, answer: again } : null;
}

function asFailure(error: unknown): InputError {
  if (error instanceof InputError) return error;
  throw error;
}

function otherAnswer(place: string, isMasked: boolean): InputError {
  return isMasked
    ? new InputError(
        place,
        'with names masked the logs lead to another verdict: a rule of the phrasebook needs a name, or a name is also a word of the logs. Nothing was written.',
        'Make it without a mask, or write the rule for any name.',
      )
    : new InputError(
        place,
        'the logs in the bundle would lead to another verdict: a rule for files needs a path that cannot stand in it. Nothing was written.',
        'Write the rule under `files` for the end of the path.',
      );
}

async function packed(
  { logs, inside }: Prepared,
  documents: readonly ReportFile[],
  tools: BundleTools,
  { place, mask }: { readonly place: string; readonly mask: Mask | null },
): Promise<MadeBundle> {
  const writer = bundleWriter(place, tools.platform, mask);
  await writer.readme(inside, mask !== null);
  for (const { name, text } of documents)
    await writer.text(name.endsWith('.json') ? name : `reports/${name}`, text, true);
  if (inside.phrasebook !== null) await writer.text(inside.phrasebook.file, inside.phrasebook.text);
  if (inside.job !== null) await writer.text(inside.job.file, inside.job.text);
  await writer.text('settings.json', toJson({ schema: 'steadypair/settings/1', ...inside.settings }), true);
  const packedLogs: BundledLog[] = [];
  for (const log of logs) {
    packedLogs.push(await writer.log(log));
    await tools.pause?.();
  }
  const unread: Manifest['unread'] = inside.failures.map(({ where, what, fix, kind }) => ({
    where,
    what,
    fix,
    kind,
  }));
  const bytes = await writer.end({ command: inside.command, logs: packedLogs, unread });
  return { bytes, key: mask?.key ?? null };
}
