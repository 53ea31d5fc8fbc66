import fc from 'fast-check';
import { expect, test } from 'vitest';
import { noSettings } from '../../src/bundle/inside.ts';
import { makeBundle } from '../../src/bundle/make-bundle.ts';
import { platform } from '../../src/cli/platform.ts';
import { analyse, importFiles, readPhrasebook, verify } from '../../src/pipeline.ts';
import { sourceOf } from '../support/read-text.ts';
import { membersOf, textIn } from '../support/zip-members.ts';

/** Names as sites give them: letters with a number, or a word in capitals; never a word that logs are made of. */
const pairName = fc.oneof(
  fc
    .tuple(fc.stringMatching(/^[A-Z]{2,5}$/), fc.integer({ min: 1, max: 99 }))
    .map(([word, number]) => `${word}${number}`),
  fc.stringMatching(/^[QXZJ][A-Z]{4,9}$/),
);
const serial = fc.stringMatching(/^[A-Z]{1,3}[0-9]-[0-9]{4,6}$/);
const user = fc.stringMatching(/^[qxzj][a-z]{4,8}[0-9]?$/);
const address = fc.ipV4().filter((ip) => !/^(?:0|127|255|22[4-9])\./.test(ip));
const site = fc.stringMatching(/^[QXZJ][a-z]{4,8} [QXZJ][a-z]{3,6}$/);
const encoding = fc.constantFrom('utf8', 'utf16le');

interface Told {
  readonly pair: string;
  readonly other: string;
  readonly serials: readonly string[];
  readonly user: string;
  readonly address: string;
  readonly site: string;
  readonly encoding: 'utf8' | 'utf16le';
  readonly isGood: boolean;
}

const told: fc.Arbitrary<Told> = fc
  .record({
    pair: pairName,
    other: pairName,
    serials: fc.uniqueArray(serial, { minLength: 3, maxLength: 3 }),
    user,
    address,
    site,
    encoding,
    isGood: fc.boolean(),
  })
  .filter(({ pair, other }) => pair.toLowerCase() !== other.toLowerCase());

/** A swap of half B that is sound or has a firmware that differs, with all those names in it. */
function logOf({
  pair,
  other,
  serials: [a = '', old = '', fitted = ''],
  user: who,
  address: from,
  isGood,
}: Told): string {
  const line = (minute: number, text: string): string =>
    `${new Date(Date.UTC(2026, 2, 14, 8) + minute * 60_000).toISOString()} ${text}`;
  return `${[
    ...[
      `${pair}-A role active`,
      `${pair}-B role standby`,
      `${pair}-A serial ${a}`,
      `${pair}-B serial ${old}`,
    ].map((t) => line(0, t)),
    ...[`${pair}-A firmware 6.4.1`, `${pair}-B firmware 6.4.1`, `${pair}-A partner ready`].map((t) =>
      line(0, t),
    ),
    line(1, `${other}-A role active`),
    line(20, `${pair}-A user ${who} logged on from ${from}`),
    line(30, `${pair}-B removed`),
    line(32, `${pair}-B inserted`),
    line(33, `${pair}-B serial ${fitted}`),
    line(33, `${pair}-B firmware ${isGood ? '6.4.1' : '6.2.0'}`),
    line(34, `${pair}-B role standby`),
    line(34, `${pair}-A partner ready`),
    line(80, `${other}-A role active`),
  ].join('\r\n')}\r\n`;
}

test('of generated names nothing is left in a masked bundle, and the verdict is the same', async () => {
  await fc.assert(
    fc.asyncProperty(told, async (one) => {
      const bytes = Buffer.from(logOf(one), one.encoding);
      const name = `/home/${one.user}/${one.pair.toLowerCase()}-events.log`;
      const phrasebook = {
        file: 'site.yaml',
        text: `name: ${one.site}\nunits:\n  - pattern: '^(?<pair>${one.pair}|[A-Z]+[0-9]*)-(?<half>[AB])$'\nignore: ['^user .* logged on']\n`,
      };
      const { bytes: zip, key } = await makeBundle(
        {
          command: 'verify',
          sources: [sourceOf(name, bytes)],
          failures: [],
          phrasebook,
          job: {
            file: 'job.yaml',
            text: `technician: ${one.user}\nplan: { ${one.pair}: { B: { firmware: 6.4.1 } } }\n`,
          },
          settings: { ...noSettings, pair: one.pair },
        },
        { platform, version: '0' },
        { place: 'case.zip', isMasked: true },
      );
      const members = await membersOf(zip);
      const texts = [...members].flatMap(([member, content]) =>
        ['utf-8', 'utf-16le'].map((label) =>
          `${member} ${new TextDecoder(label).decode(content)}`.toLowerCase(),
        ),
      );
      const { pair, other, serials, user: who, address: from, site: place } = one;
      // Between letters or digits of others a name may stand by chance: in a hash, in a number of a drawing.
      for (const original of [pair, other, ...serials, who, from, place]) {
        const word = new RegExp(`(?<![a-z0-9])${original.toLowerCase().replaceAll('.', '\\.')}(?![a-z0-9])`);
        expect(texts.filter((text) => word.test(text)).map((text) => text.slice(0, 40))).toEqual([]);
        expect(key).toContain(JSON.stringify(original));
      }
      const imported = await importFiles([sourceOf(name, bytes)], {
        phrasebook: readPhrasebook(phrasebook.file, phrasebook.text),
        zone: null,
        order: null,
        year: null,
        sha256: platform.sha256,
      });
      const plain = verify(
        analyse(imported),
        pair,
        { from: null, to: null },
        { plan: { [pair]: { B: { firmware: '6.4.1' } } } },
      );
      const inside = JSON.parse(textIn(members, 'verify.json'));
      const outline = (
        swaps: readonly { verdict: string; checks: readonly { id: string; status: string }[] }[],
      ): unknown =>
        swaps.map(({ verdict, checks }) => [verdict, checks.map(({ id, status }) => [id, status])]);
      expect(outline(inside.swaps)).toEqual(outline(plain.swaps));
      expect(plain.swaps.length).toBe(1);
    }),
    { numRuns: 10, seed: 19 },
  );
});
