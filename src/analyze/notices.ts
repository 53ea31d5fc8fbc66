import type { Finding, ImportedFile, Notice, Severity } from '../vocabulary.ts';

const severities: Readonly<Record<Notice['id'], Severity>> = {
  'rejected-rows': 'info',
  'unmatched-wording': 'info',
  'damaged-tail': 'info',
  'clock-fold': 'info',
  'zone-assumed': 'info',
  'clock-step': 'warning',
  'date-order': 'warning',
  'wrong-half': 'warning',
  unreadable: 'warning',
};

/** What was odd in the files, as findings that concern no one pair. */
export function noticesOf(files: readonly ImportedFile[]): readonly Finding[] {
  return files.flatMap((file) => file.notices.map((notice) => toFinding(file.input.file, notice)));
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
    figures: { count: notice.count },
    evidence: notice.lines,
  };
}
