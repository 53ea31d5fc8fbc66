import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { newFolder, story } from '../../support/demo-story.ts';
import { steadypair } from '../../support/run-command.ts';

describe('bundles beside others', () => {
  test('two that differ in how they are read: neither phrasebook applies, and a line says so', async () => {
    const folder = newFolder();
    const zips = ['clean-swap', 'bad-swap'] as const;
    for (const name of zips)
      await steadypair('verify', ...story(name).args, '--bundle', join(folder, `${name}.zip`));
    const { err } = await steadypair('verify', ...zips.map((name) => join(folder, `${name}.zip`)), '--json');
    expect(err).toMatch(/clean-swap\.zip, .*bad-swap\.zip: they differ in job, and none of these applies\./);
  });

  test('a choice of pair hides nothing in logs that are given beside it', async () => {
    const zip = join(newFolder(), 'case.zip');
    await steadypair('verify', ...story('bad-swap').args, '--pair', 'RO3', '--bundle', zip);
    const { out, err } = await steadypair('verify', zip, story('clean-swap').folder, '--json');
    expect(err).toContain(
      `${zip}: other files are given too: its phrasebook and settings apply to all, its choice of pair and time to none.`,
    );
    expect(JSON.parse(out).swaps.map((s: { pair: string }) => s.pair)).toEqual(['RO1', 'RO3']);
  });
});
