import { describe, expect, test } from 'vitest';
import { runBuilt } from '../../support/run-built.ts';
import { fileWith, steadypair } from '../../support/run-command.ts';

const header = 'time,unit,parameter,value\n';
/** Sixty readings of one minute, not ready from the thirtieth second on. */
const minute = (hour: string): string =>
  Array.from({ length: 60 }, (_, second) => {
    const clock = `${hour}:00:${String(second).padStart(2, '0')}`;
    return `2026-03-14T${clock}Z,RO1,partner ready,${second < 30 ? 'yes' : 'no'}\n`;
  }).join('');
const good = minute('09');

interface Ran {
  readonly rows: Readonly<Record<string, number>>;
  readonly findings: readonly string[];
  readonly peakMegabytes: number;
}

/** Runs the built command in a process of its own, so that its memory can be told. */
function inspect(content: string | Uint8Array, name = 'x.csv'): Ran {
  const { stdout, peakMegabytes } = runBuilt('inspect', fileWith(content, name), '--json');
  const document: {
    readonly inputs: readonly { readonly rows: Ran['rows'] }[];
    readonly findings: readonly { readonly statement: string }[];
  } = JSON.parse(stdout);
  return {
    rows: document.inputs[0]?.rows ?? {},
    findings: document.findings.map((f) => f.statement),
    peakMegabytes,
  };
}

describe('a damaged file', () => {
  test('with one endless line loses that line, and memory stays bounded', () => {
    const endless = 'x'.repeat(150_000_000);
    const { rows, findings, peakMegabytes } = inspect(`${header}${good}${endless}\n${minute('10')}`);
    expect(rows).toMatchObject({ used: 4, unchanged: 116 });
    // 120 rows and the endless one.
    expect(rows).toMatchObject({ read: 121, rejected: 1 });
    expect(findings.join('\n')).toMatch(
      /one row was rejected; the first is line 62: The row has too few columns/,
    );
    expect(peakMegabytes).toBeLessThan(300);
    expect(inspect(`2026-03-14T09:00:00Z [RO1] partner ready\n${endless}`, 'x.log').rows).toMatchObject({
      read: 2,
      used: 1,
    });
  }, 60_000);

  test('that ends in a line far longer than a total loses that line as any other', async () => {
    const { out } = await steadypair('inspect', fileWith(`${header}${good}${'x'.repeat(1_100_000)}\n`));
    expect(out).toContain('61 rows: 2 used, 58 unchanged, 0 ignored, 0 not recognised, 1 rejected.');
    const total = await steadypair('inspect', fileWith(`${header}${good}60 rows\n`));
    expect(total.out).toContain('61 rows: 2 used, 58 unchanged, 1 ignored, 0 not recognised, 0 rejected.');
  });

  test('whose columns change half-way keeps what fits its header', () => {
    const { rows, findings } = inspect(`${header}${good}${minute('10').replaceAll('Z,', 'Z,note,')}`);
    expect(rows).toMatchObject({ read: 120, used: 2, unchanged: 58, rejected: 60 });
    expect(findings.join('\n')).toContain('the first is line 62: The row has 5 columns, the header 4.');
    expect(inspect(`${header}${good.replaceAll('yes\n', 'yes,,\n')}`).rows).toMatchObject({
      read: 60,
      rejected: 0,
    });
  });

  test('with zeros that a crash left loses that line', () => {
    const { rows } = inspect(`${header}${'\0'.repeat(300)}\n${good}${'\0'.repeat(2000)}\n${minute('10')}`);
    expect(rows).toMatchObject({ read: 122, used: 4, rejected: 2 });
  });

  test('that names a million units is read for the first ten thousand', () => {
    const units = Array.from(
      { length: 1_000_000 },
      (_, i) => `2026-03-14T09:00:00Z,U${i},partner ready,yes\n`,
    );
    const { rows, findings, peakMegabytes } = inspect(`${header}${units.join('')}`);
    expect(rows).toMatchObject({ read: 1_000_000, used: 10_000, unmatched: 990_000 });
    expect(findings.join('\n')).toContain('The file names more than 10000 units');
    expect(peakMegabytes).toBeLessThan(600);
  }, 60_000);

  test('that names a million parameters lists a thousand', () => {
    const names = Array.from({ length: 1_000_000 }, (_, i) => `2026-03-14T09:00:00Z,RO1,p${i},yes\n`);
    const { rows, peakMegabytes } = inspect(`${header}${names.join('')}`);
    expect(rows).toMatchObject({ read: 1_000_000, unmatched: 1_000_000 });
    expect(peakMegabytes).toBeLessThan(300);
  }, 60_000);
});
