import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { lastHour, swapsNow } from '../../../src/pipeline.ts';
import { panelText } from '../../../src/report/panel.ts';
import { columnsOf } from '../../../src/report/panel-fit.ts';
import { analyseTexts } from '../../support/read-text.ts';

test.each(['clean-swap/ro1', 'bad-swap/ro3'])(
  'the panel is ten lines of at most 80 columns at every second line of %s',
  async (name) => {
    const lines = readFileSync(`samples/marrow-bay/${name}-events.log`, 'utf8').split(/(?<=\n)/);
    const questions = new Set<string>();
    // The first 21 lines say how the pair stood.
    for (let count = 21; count <= lines.length; count += 2) {
      const analysed = await analyseTexts({ 'events.log': lines.slice(0, count).join('') });
      const [now] = swapsNow(analysed, name.slice(-3).toUpperCase(), null);
      if (now === undefined) throw new Error('The pair is not there.');
      const panel = panelText(now, {
        zone: 'Europe/Lisbon',
        paint: (text) => text,
        clock: { at: now.at, isSilent: false, behindSeconds: 3600 },
        staff: lastHour(analysed, now.pair),
        width: 80,
      });
      expect(panel).toHaveLength(10);
      for (const line of panel) expect(columnsOf(line)).toBeLessThanOrEqual(80);
      questions.add(panel[0] ?? '');
    }
    // Out, in, identity, firmware, ready, steady and more: the question changes with the work.
    expect(questions.size).toBeGreaterThan(6);
  },
);
