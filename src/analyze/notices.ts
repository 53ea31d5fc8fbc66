import type {
  ClockOffset,
  FailureFigures,
  FileFigures,
  Finding,
  Notice,
  Setting,
  Severity,
} from '../vocabulary.ts';
import { sayDuration } from '../vocabulary.ts';

const severities: Readonly<Record<Notice['id'], Severity>> = {
  'rejected-rows': 'info',
  'unmatched-wording': 'info',
  'damaged-tail': 'info',
  'clock-fold': 'info',
  'zone-assumed': 'info',
  'unused-rules': 'info',
  'states-not-listed': 'warning',
  'clock-step': 'warning',
  'date-order': 'warning',
  'wrong-half': 'warning',
  unreadable: 'warning',
};

/** What was odd in the files, as findings that concern no one pair. */
export function noticesOf(files: readonly FileFigures[]): readonly Finding[] {
  return files.flatMap((file) =>
    file.notices.map((notice) => ({ ...toFinding(file.input.file, notice), ...concerns(file) })),
  );
}

/** What must be said of the phrasebook of a run, as findings that concern no one pair. */
export function phrasebookFindings(notices: readonly Notice[]): readonly Finding[] {
  return notices.map((notice) => toFinding(notice.lines[0].file, notice));
}

/** The pairs that all of the files speak of; of a file with a unit of no known pair, or without any, any pair may be meant. */
function concerns(...files: readonly FileFigures[]): Pick<Finding, 'concerns'> {
  const named = files.map((file) => file.pairs).filter((pairs) => pairs.length > 0 && !pairs.includes(''));
  const [first, ...others] = named;
  if (first === undefined) return {};
  return { concerns: first.filter((pair) => others.every((pairs) => pairs.includes(pair))) };
}

function toFinding(file: string, notice: Notice): Finding {
  return {
    id: notice.id,
    severity: severities[notice.id],
    pair: null,
    half: null,
    from: notice.from,
    to: notice.to,
    statement: `${file}: ${notice.what} ${notice.fix}`,
    ...besides(notice.setting, notice.fix),
    figures: { count: notice.count },
    evidence: notice.lines,
  };
}

/** How far the clocks of the files are apart; a warning where it is beyond what spread and spacing explain. */
export function offsetFindings(files: readonly FileFigures[], isAligned: boolean): readonly Finding[] {
  const places = new Map(files.map(({ input }, place) => [input.file, place]));
  return files.flatMap(({ offset }) => {
    if (offset === null) return [];
    const both = [offset.file, offset.reference].flatMap((name) => places.get(name) ?? []);
    const inOrder = both.sort((a, b) => a - b).flatMap((place) => files.slice(place, place + 1));
    return [{ ...offsetFinding(offset, isAligned), ...concerns(...inOrder) }];
  });
}

function offsetFinding(offset: ClockOffset, isAligned: boolean): Finding {
  const { file, reference, ahead, spread, count, isBeyond, evidence } = offset;
  if (ahead === null) return notMeasured(offset);
  const agrees = Math.abs(ahead) < 50;
  const way = ahead < 0 ? 'behind that' : 'ahead of that';
  const apart = agrees ? 'agrees with that' : `is ${sayDuration(Math.abs(ahead) / 1000)} ${way}`;
  const done = isAligned
    ? 'It was corrected.'
    : 'Lines are matched with this offset, and events from this file alone have it in their bounds.';
  return {
    id: 'clock-offset',
    severity: isBeyond ? 'warning' : 'info',
    pair: null,
    half: null,
    from: null,
    to: null,
    statement: `${file}: its clock ${apart} of ${reference} (spread ${sayDuration(spread / 1000)}, from ${count === 1 ? 'one change' : `${count} changes`} in both).${isBeyond ? ` ${done}` : ''}`,
    ...besides(isBeyond && !isAligned ? 'clocks' : undefined, ''),
    figures: { aheadSeconds: ahead / 1000, spreadSeconds: spread / 1000, count },
    evidence,
  };
}

function notMeasured({ file, reference, count, evidence }: ClockOffset): Finding {
  const changes = count === 0 ? 'no change' : count === 1 ? 'one change' : `only ${count} changes`;
  return {
    id: 'clock-offset',
    severity: 'info',
    pair: null,
    half: null,
    from: null,
    to: null,
    statement: `${file}: its clock offset to ${reference} could not be measured: ${changes} could be found in both. Both were used as they are.`,
    figures: { aheadSeconds: null, spreadSeconds: null, count },
    evidence,
  };
}

/** A file that could not be used: the loss is told with the results. */
export function failureFinding({ where, what, fix, kind, setting }: FailureFigures): Finding {
  const [, file = where, line = '1'] = /^(.*?)(?::(\d+))?$/.exec(where) ?? [];
  return {
    id: kind,
    severity: 'warning',
    pair: null,
    half: null,
    from: null,
    to: null,
    statement: `${where}: ${what} It was left out. ${fix}`,
    ...besides(setting, fix),
    figures: {},
    evidence: [{ file, line: Number(line), text: '' }],
  };
}

function besides(setting: Setting | undefined, advice: string): Pick<Finding, 'setting' | 'advice'> {
  return setting === undefined ? {} : { setting, advice };
}
