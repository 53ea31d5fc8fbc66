import { existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { readJob } from '../../../src/pipeline.ts';
import { at } from '../../support/clean-swap.ts';
import { morning, twoDays, without } from '../../support/prepared.ts';
import { fileWith, steadypair } from '../../support/run-command.ts';

const day = 86_400_000;

beforeEach(() => {
  vi.setSystemTime(at('09:30:00'));
});
afterEach(() => {
  vi.useRealTimers();
});

function logWith(text: string): string {
  return fileWith(text, 'ro1.log');
}

function folder(): string {
  return mkdtempSync(join(tmpdir(), 'prepare-'));
}

describe('prepare', () => {
  test('says first which half is standby, as of when and how old, then fit or not, in at most 100 columns', async () => {
    const { status, out, err } = await steadypair('prepare', logWith(twoDays(morning)));
    expect([status, err]).toEqual([0, '']);
    const said = out.replace(/\s+/g, ' ');
    expect(said).toMatch(
      /^Half B of RO1 was standby at 14 Mar 2026 09:00:00, 30 min 00 s before this sheet was made\. RO1 is ready for a swap as of its last line, 14 Mar 2026 09:00:00\. Caution: Never remove a module on the word of a log alone/,
    );
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  });

  test('ends with 1 where the pair is not fit, with the reason', async () => {
    const log = logWith(
      twoDays(morning, ['08:50:00 RO1 configuration pending', '09:00:00 RO1 B supply good']),
    );
    const { status, out } = await steadypair('prepare', log);
    expect(status).toBe(1);
    expect(out).toContain('RO1 is not ready for a swap');
    expect(out).toContain('A configuration is pending.');
  });

  test('ends with 3 where fitness is not known: only one half was ever seen', async () => {
    const { status, out } = await steadypair('prepare', logWith(twoDays(without(morning, 'RO1 B'))));
    expect(status).toBe(3);
    expect(out).toContain('concluded');
    expect(out).toContain('The model of half B is not known.');
  });

  test('names no standby half from a log that ended two days ago, says what would settle it, and makes the rest', async () => {
    vi.setSystemTime(at('09:00:00') + 2 * day);
    const log = logWith(twoDays(morning));
    const { status, out } = await steadypair('prepare', log);
    expect(status).toBe(3);
    const said = out.replace(/\s+/g, ' ');
    expect(said).toContain(
      'Which half of RO1 is standby is not named: its role was last read at 14 Mar 2026 09:00:00, 2 days before this sheet was made. Export the logs again. To name it all the same, pass --allow-old.',
    );
    expect(said).toContain('T2-2');
    expect(said).toContain('Steps');
    expect(out).not.toMatch(/half [AB] is standby|Half [AB] of RO1 was standby/i);
    const asked = await steadypair('prepare', log, '--allow-old');
    expect(asked.status).toBe(0);
    expect(asked.out).toMatch(/^Half B of RO1 was standby at 14 Mar 2026 09:00:00, 2 days before/);
  });

  test('refuses in one line: no such pair, several pairs, a plan for what the logs do not know, nothing readable', async () => {
    const log = logWith(twoDays(morning));
    const both = fileWith(`${twoDays(morning)}${twoDays(morning).replaceAll('RO1', 'RO3')}`, 'both.log');
    const plan = (text: string): string => fileWith(text, 'job.yaml');
    const cases = [
      [[log, '--pair', 'RO9'], /^pair RO9: no file names that pair\. Choose one of RO1\.\n$/],
      [[both], /^prepare: the files name 2 pairs, and a work sheet is of one\. Choose one of RO1, RO3\.\n$/],
      [[log, '--job', plan('plan: { RO9: { A: {} } }\n')], /plan\.RO9: no file names that pair\. [^\n]*\n$/],
      [
        [log, '--job', plan('plan: { RO1: { C: {} } }\n')],
        /plan\.RO1\.C: no file names that half\. [^\n]*\n$/,
      ],
      [[fileWith('', 'empty.log')], /Nothing could be read\.\n$/],
    ] as const;
    for (const [args, line] of cases) {
      const { status, out, err } = await steadypair('prepare', ...args);
      expect([status, out]).toEqual([2, '']);
      expect(err).toMatch(line);
    }
  });

  test('writes the sheet as HTML, Markdown and JSON, the same bytes at the same time', async () => {
    const log = logWith(twoDays(morning));
    const [one, two] = [folder(), folder()];
    const { out } = await steadypair('prepare', log, '--out', one);
    await steadypair('prepare', log, '--out', two);
    const names = ['RO1-work-sheet-2026-03-14.html', 'RO1-work-sheet-2026-03-14.md', 'prepare.json'];
    expect(readdirSync(one).sort()).toEqual(names);
    for (const name of names) {
      expect(out).toContain(`Report: ${join(one, name)}`);
      expect(readFileSync(join(one, name), 'utf8')).toBe(readFileSync(join(two, name), 'utf8'));
    }
    const { out: json } = await steadypair('prepare', log, '--json');
    expect(readFileSync(join(one, 'prepare.json'), 'utf8')).toBe(json);
  });

  test('gives a name of a report that leads nowhere, whatever the pair is called, and writes over no input', async () => {
    const evil = logWith(twoDays(morning).replaceAll(/RO1(-[AB])?/g, 'RO1/../x$1'));
    const out = folder();
    await steadypair('prepare', evil, '--out', out);
    for (const name of readdirSync(out)) expect(name).toMatch(/^[\w.-]+$/);
    const here = folder();
    const input = join(here, 'prepare.json');
    writeFileSync(input, twoDays(morning));
    const { status, err } = await steadypair('prepare', input, '--out', here);
    expect(status).toBe(2);
    expect(err).toContain('it is one of the files to read');
    expect(readFileSync(input, 'utf8')).toBe(twoDays(morning));
    expect(readdirSync(here)).toEqual(['prepare.json']);
  });
});

describe('the job draft', () => {
  test('can be read as it is, and once it is filled in', async () => {
    const draft = join(folder(), 'job.yaml');
    const { out } = await steadypair('prepare', logWith(twoDays(morning)), '--draft-job', draft);
    expect(out).toContain(`Job draft: ${draft}.`);
    const text = readFileSync(draft, 'utf8');
    const plan = {
      RO1: {
        A: { model: 'Tern-2', firmware: '6.4.1' },
        B: { model: 'Tern-2', firmware: '6.4.1' },
      },
    };
    expect(readJob(draft, text)).toEqual({ file: draft, plan });
    const filled = text.replaceAll(/^#(\s*\w+: )___/gm, '$1word');
    expect(readJob(draft, filled)).toEqual({
      file: draft,
      workOrder: 'word',
      site: 'word',
      technician: 'word',
      reviewer: 'word',
      plan,
    });
  });

  test('has blanks for what is not known of a half', async () => {
    const draft = join(folder(), 'job.yaml');
    await steadypair('prepare', logWith(twoDays(without(morning, 'RO1 B'))), '--draft-job', draft);
    const text = readFileSync(draft, 'utf8');
    expect(readJob(draft, text).plan?.RO1).toEqual({
      A: { model: 'Tern-2', firmware: '6.4.1' },
      B: { firmware: '6.4.1' },
    });
    expect(text).toContain('#      model: ___');
  });

  test('keeps what a job said already, and names and values of any kind', async () => {
    const job = fileWith('workOrder: "WO: 7 # x"\ntechnician: Technician 2\n', 'first.yaml');
    const poll = fileWith('time,unit,parameter,value\n2026-03-14T09:00:00.000Z,RO1-A,model,no: #{x}\n');
    const draft = join(folder(), 'job.yaml');
    await steadypair('prepare', logWith(twoDays(morning)), poll, '--job', job, '--draft-job', draft);
    const read = readJob(draft, readFileSync(draft, 'utf8'));
    expect([read.workOrder, read.technician]).toEqual(['WO: 7 # x', 'Technician 2']);
    expect(read.plan?.RO1?.A?.model).toBe('no: #{x}');
  });

  test('is never written over a file that is there, an input or not', async () => {
    const log = logWith(twoDays(morning));
    const { status, err } = await steadypair('prepare', log, '--draft-job', log);
    expect(status).toBe(2);
    expect(err.trim().split('\n')).toHaveLength(1);
    expect(readFileSync(log, 'utf8')).toBe(twoDays(morning));
    const there = fileWith('kept', 'there.yaml');
    expect((await steadypair('prepare', log, '--draft-job', there)).status).toBe(2);
    expect(readFileSync(there, 'utf8')).toBe('kept');
    expect(existsSync(log)).toBe(true);
  });
});
