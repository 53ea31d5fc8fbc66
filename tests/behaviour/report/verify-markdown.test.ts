import { expect, test } from 'vitest';
import { verifyHtml } from '../../../src/report/verify-html.ts';
import { verifyMarkdown } from '../../../src/report/verify-markdown.ts';
import type { Finding, Verification } from '../../../src/vocabulary.ts';
import { exampleVerification } from '../../support/example-verification.ts';

const options = { zone: 'UTC', version: '1' };

function report(index: 0 | 1, verification: Verification = exampleVerification()): string {
  const swap = verification.swaps[index];
  if (swap === undefined) throw new Error('the example has two swaps');
  return verifyMarkdown(verification, swap, options);
}

test('has the parts of the report, and ends in lines to sign on', () => {
  const headings = [...report(0).matchAll(/^## (.*)$/gm)].map((m) => m[1]);
  expect(headings).toEqual([
    'Before and after',
    'Steps',
    'Checks',
    'Exposure',
    'Other events',
    'Findings and data quality',
    'Files',
    'Evidence',
    'Cautions',
    'Sign-off',
  ]);
  expect(report(0)).toContain('| Done by | Technician 2 |  |  |\n| Reviewed by |  |  |  |');
});
test('leaves what was not observed, and what is not verified, to the person who signs', () => {
  expect(report(1)).toContain('- \\[ \\] Both links of both halves up, not crossed, checked at the cabinet');
  expect(report(1)).toContain('This swap is not verified');
  expect(report(0)).not.toContain('This swap is not verified');
});
test('numbers its evidence as the HTML report does', async () => {
  const verification = exampleVerification();
  const [swap] = verification.swaps;
  if (swap === undefined) throw new Error('the example has two swaps');
  const page = await verifyHtml(verification, swap, options);
  const numbered = [...page.matchAll(/id="line-(\d+)">line (\d+) /g)].map((m) => `${m[1]}:${m[2]}`);
  expect([...report(0).matchAll(/^(\d+)\. .*?:(\d+) /gm)].map((m) => `${m[1]}:${m[2]}`)).toEqual(numbered);
  // The removal rests on line 1 of the log, its check on line 3.
  expect(report(0)).toContain('Module removed, half B (1) |');
  expect(report(0)).toContain('| Only the standby was removed | pass | What half B did. (3) |');
});
test('tells no finding from before or after the swap', () => {
  const verification = exampleVerification();
  const [told] = verification.findings;
  if (told === undefined) throw new Error('the example has a finding');
  // One hour, from `from`: half an hour after its end, and within it.
  const begin = verification.swaps[1]?.from ?? 0;
  const at = (minutes: number, statement: string): Finding => ({
    ...told,
    from: begin + minutes * 60_000,
    to: begin + minutes * 60_000,
    statement,
  });
  const text = report(1, { ...verification, findings: [at(90, 'too late'), at(30, 'in time')] });
  expect(text).toContain('in time');
  expect(text).not.toContain('too late');
});
