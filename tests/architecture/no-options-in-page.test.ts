import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

/** The quoted texts of a file that name an option of the command. */
function optionsIn(path: string): readonly string[] {
  const code = readFileSync(path, 'utf8')
    .split('\n')
    .filter((line) => !/^\s*(?:\/\/|\/?\*)/.test(line))
    .join('\n');
  return (code.match(/(['"`>][^'"`\n]*)(?<![\w-])--[a-z][a-z-]*/g) ?? []).filter(
    (found) => !found.includes('var(--'),
  );
}

function filesIn(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => join(folder, name));
}

/** Read or written by the command alone. */
const ofTheCommand: readonly RegExp[] = [
  /^src\/cli\//,
  /^src\/report\/[\w-]*(?:text|inspect|alike-files|draft-job)\.ts$/,
  // Both wordings stand there side by side.
  /^src\/report\/settings\.ts$/,
];

/** The option is named by its name where the page never gives one: a zone or an order that was passed. */
const passed: Readonly<Record<string, readonly string[]>> = {
  'src/import/clock/choose-zone.ts': ["'--zone", "'from --zone"],
  'src/import/clock/choose-order.ts': ["'from --order"],
  'src/import/clock/read-time.ts': ["'--zone"],
  'src/import/import-files.ts': ["'--zone"],
};

test('no text that the page can show names an option of the command', () => {
  const files = ['src', 'web'].flatMap(filesIn).filter((path) => !ofTheCommand.some((own) => own.test(path)));
  expect(files.length).toBeGreaterThan(100);
  const found = files.flatMap((path) => {
    const own = optionsIn(path);
    return JSON.stringify(own) === JSON.stringify(passed[path] ?? []) ? [] : [[path, ...own]];
  });
  expect(found).toEqual([]);
});

test('such a text would be found', () => {
  expect(optionsIn('src/report/settings.ts').length).toBeGreaterThan(3);
});
