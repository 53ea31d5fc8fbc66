import { html, nothing, type TemplateResult } from 'lit';
import { abnormal, columns, plain, type ShownRow, type ShownTable } from '../../src/report/shown-table.ts';
import { sayCount } from '../../src/report/words.ts';
import { sayDuration } from '../../src/vocabulary.ts';
import type { SiteModel } from '../protocol.ts';
import './part-fold.ts';
import './shown-table.ts';

type Offset = SiteModel['offsets'][number];

/** How far the clocks of the files are apart: those that disagree, and the others folded to their count. */
export function clockTable(offsets: readonly Offset[]): TemplateResult {
  const beyond = offsets.filter((o) => o.isBeyond);
  const others = offsets.filter((o) => !o.isBeyond);
  const agree = others.filter((o) => o.ahead !== null).length;
  const words = `${sayCount(agree, 'clock')} ${agree === 1 ? 'agrees' : 'agree'}, ${others.length - agree} not measured. Show`;
  return html`${beyond.length === 0 ? nothing : tableOf(beyond, 'clocks')}
    ${others.length === 0 ? nothing : html`<part-fold .summary=${words} .content=${() => tableOf(others, 'clocks-agreeing')}></part-fold>`}`;
}

function tableOf(offsets: readonly Offset[], name: string): TemplateResult {
  const table: ShownTable = {
    columns: columns('File', 'Its clock, against the reference', 'Spread#', 'Changes both saw#'),
    rows: offsets.map(rowOf),
    file: '',
    note: '',
  };
  return html`<shown-table .table=${table} .name=${name}></shown-table>`;
}

function rowOf({ file, reference, ahead, spread, count, isBeyond, evidence }: Offset): ShownRow {
  const said = sayOffset(ahead, isBeyond, reference);
  return {
    cells: [
      plain(file),
      isBeyond ? abnormal(said, 'warning') : plain(said),
      plain(ahead === null ? '' : sayDuration(spread / 1000)),
      plain(count),
    ],
    lines: evidence,
  };
}

function sayOffset(ahead: number | null, isBeyond: boolean, reference: string): string {
  if (ahead === null) return `not measured against ${reference}: too few changes are in both`;
  const by = sayDuration(Math.abs(ahead) / 1000);
  return isBeyond
    ? `${by} ${ahead > 0 ? 'ahead of' : 'behind'} ${reference}`
    : `agrees with ${reference}, ${by} apart`;
}
