import { readFileSync } from 'node:fs';
import { test } from 'vitest';
import { verify } from '../src/pipeline.ts';
import { analyseTexts } from './support/read-text.ts';
test('03', async()=>{
  const f='03-soaked-log-ends-early/ro1-journal.csv';
  const a = await analyseTexts({[f]:readFileSync('/work/shared/faults/'+f,'utf8')});
  for(const s of verify(a,null,{from:null,to:null},null).swaps){console.log(s.statement, s.open?.conditions.map(c=>c.status+' '+c.statement)); for(const c of s.checks) if(c.status!=='pass') console.log(' ',c.id,c.status,c.statement);}
});
test('cuts', async()=>{
  const t=readFileSync('samples/marrow-bay/clean-swap/ro1-journal.csv','utf8').trimEnd().split('\n');
  const pb=readFileSync('samples/marrow-bay/clean-swap/phrasebook.yaml','utf8');
  for(let n=12;n<=t.length;n+=1){ const a=await analyseTexts({'ro1-journal.csv':t.slice(0,n).join('\n')+'\n'},{phrasebook:pb});
   const s=verify(a,null,{from:null,to:null},null).swaps[0]; console.log(n,t[n-1]?.slice(0,90),'\n     ',s?.statement??'none'); }
});
