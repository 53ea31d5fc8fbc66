import { dirname } from 'node:path';
import { InputError } from '../pipeline.ts';
import type { FoundFile } from './folder-files.ts';
import {
  continues,
  type FollowedFile,
  goOnElsewhere,
  goOnWith,
  isRemoved,
  letGo,
  newFollowed,
} from './followed-file.ts';
import { inBatches } from './in-batches.ts';

/** The files that are followed from now on, in their order, and what could not be read of those that are new. */
export interface MatchedFiles {
  readonly files: readonly FollowedFile[];
  readonly failures: readonly InputError[];
}

interface Match {
  readonly known: readonly FollowedFile[];
  readonly found: readonly FoundFile[];
  readonly identities: ReadonlySet<string>;
  readonly now: number;
  /** Which file lies at a path. */
  readonly at: Map<string, FollowedFile>;
  readonly taken: Set<FollowedFile>;
  readonly failures: InputError[];
}

/** After so long without growth a file that lies elsewhere is not read on. Chosen here. */
const restMs = 60_000;

/**
 * Finds out which of the files that are followed lies where now. The same device and inode, and a content that goes on: the same
 * file, whatever its name. The same path, and such a content: the same, where it was away. A content that goes on with a file that is gone: a
 * copy of it, which takes its place. Anything else is a new file; what lay at its path before was replaced by it.
 */
export async function matchFiles(
  known: readonly FollowedFile[],
  found: readonly FoundFile[],
  now: number,
): Promise<MatchedFiles> {
  const match: Match = {
    known,
    found,
    identities: new Set(found.map((f) => f.identity)),
    now,
    at: new Map(),
    taken: new Set(),
    failures: [],
  };
  const rest = await claimByIdentity(match);
  const unknown = await claimByPath(match, rest);
  const fresh = await claimCopies(match, unknown);
  await inBatches(fresh, (one) => add(match, one));
  for (const file of known) if (!match.taken.has(file)) await goOnUnfound(match, file);
  return { files: inOrder(match), failures: match.failures };
}

/** Goes on with a file where what was found continues it; where it cannot be read now, `orElse` says whether it stays as it is. */
async function claims(match: Match, file: FollowedFile, found: FoundFile, orElse: boolean): Promise<boolean> {
  try {
    if (!(await continues(file, found))) return false;
    await goOnWith(file, found, match.now);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    if (!orElse) return false;
  }
  match.taken.add(file);
  match.at.set(found.name, file);
  return true;
}

async function claimByIdentity(match: Match): Promise<readonly FoundFile[]> {
  const byIdentity = new Map(match.known.filter((f) => f.life === 'grows').map((f) => [f.identity, f]));
  // Of thousands most are as they were.
  const others = match.found.filter((found) => {
    const file = byIdentity.get(found.identity);
    const isSame = file !== undefined && isUnchanged(file, found);
    if (isSame) {
      match.taken.add(file);
      match.at.set(found.name, file);
    }
    return !isSame;
  });
  const isClaimed = await inBatches(others, async (found) => {
    const file = byIdentity.get(found.identity);
    return file !== undefined && claims(match, file, found, true);
  });
  return others.filter((_, index) => isClaimed[index] !== true);
}

function isUnchanged(file: FollowedFile, { name, bytes, modified }: FoundFile): boolean {
  return (
    file.name === name &&
    file.bytes === bytes &&
    file.modified === modified &&
    !file.isElsewhere &&
    file.replacedBy === null
  );
}

async function claimByPath(match: Match, rest: readonly FoundFile[]): Promise<readonly FoundFile[]> {
  const away = match.known.filter((f) => f.life === 'grows' && !match.taken.has(f));
  const byPath = new Map(away.map((f) => [f.path, f]));
  const isClaimed = await inBatches(rest, async (found) => {
    const file = byPath.get(found.name);
    return file !== undefined && claims(match, file, found, false);
  });
  return rest.filter((_, index) => isClaimed[index] !== true);
}

/**
 * A file that was copied and then cut goes on as its copy, which may hold what was written just before; one that came back with its
 * share under another name, as what it is called now.
 */
async function claimCopies(match: Match, unknown: readonly FoundFile[]): Promise<readonly FoundFile[]> {
  const { known, taken, found } = match;
  const claimed = new Set<FoundFile>();
  for (const file of known) {
    if (taken.has(file) || file.bytes === 0) continue;
    const isCut = file.life === 'gone' || isCutNow(match, file) || (await isRemoved(file));
    if (!isCut) continue;
    // What was known already can be the copy of one that was cut just now.
    const some = file.isElsewhere ? unknown : found;
    const beside = some.filter((f) => f.name !== file.path && dirname(f.name) === dirname(file.path));
    for (const copy of beside) {
      const own = match.at.get(copy.name);
      if (claimed.has(copy) || (own !== undefined && !isAlike(own, file))) continue;
      if (!(await claims(match, file, copy, false))) continue;
      if (own !== undefined) await letGo(own);
      claimed.add(copy);
      break;
    }
  }
  return unknown.filter((f) => !claimed.has(f));
}

/** The same file is there and does not go on with what was read. */
function isCutNow({ identities }: Match, file: FollowedFile): boolean {
  return identities.has(file.identity);
}

/** Only a file that begins alike needs to be looked into. */
function isAlike(one: FollowedFile, other: FollowedFile): boolean {
  return one !== other && one.bytes >= other.bytes && other.start.every((byte, at) => one.start[at] === byte);
}

async function add(match: Match, found: FoundFile): Promise<void> {
  try {
    match.at.set(found.name, await newFollowed(found));
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    match.failures.push(error);
  }
}

/** A file that was not found: replaced, moved to where nobody looks, removed, or away with its share. */
async function goOnUnfound(match: Match, file: FollowedFile): Promise<void> {
  const { at, now } = match;
  const instead = at.get(file.path);
  if (instead !== undefined && file.replacedBy === null) {
    file.replacedBy = instead;
    file.name = earlierName(match, file);
  }
  if (file.life !== 'grows') return;
  if (isCutNow(match, file)) await letGo(file);
  if (!file.isElsewhere) file.changedAt = now;
  file.isElsewhere = true;
  const isRead = await goOnElsewhere(file, now);
  if (isRead && now - file.changedAt < restMs) return;
  await letGo(file);
  if (file.replacedBy !== null) file.life = 'gone';
}

/** "ro1.log (before 14 Mar 2026 09:14:05 UTC)", once. */
function earlierName({ known, now }: Match, { path }: FollowedFile): string {
  const [, day, month, year, clock] =
    /^\w+, (\d+) (\w+) (\d+) ([\d:]+)/.exec(new Date(now).toUTCString()) ?? [];
  const said = `${path} (before ${day} ${month} ${year} ${clock} UTC)`;
  const names = new Set(known.map((f) => f.name));
  for (let count = 1; ; count += 1) {
    const name = count === 1 ? said : `${said.slice(0, -1)}, ${count})`;
    if (!names.has(name)) return name;
  }
}

/** As they were found, what was replaced before what came in its place; what was not found after all others. */
function inOrder({ known, found, at, taken }: Match): readonly FollowedFile[] {
  const present = new Set(at.values());
  // Of one that was empty nothing is left.
  const earlier = known.filter((f) => !taken.has(f) && !(f.life === 'gone' && f.bytes === 0));
  const byPath = new Map<string, FollowedFile[]>();
  for (const file of earlier) byPath.set(file.path, [...(byPath.get(file.path) ?? []), file]);
  const there = found.flatMap(({ name }) => [...(byPath.get(name) ?? []), ...[at.get(name) ?? []].flat()]);
  const kept = new Set(there);
  return [...there, ...earlier.filter((f) => !kept.has(f) && !present.has(f))];
}
