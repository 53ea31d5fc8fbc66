import { swapStory } from './support/stories/swap-story.ts';
import { dress, dressings } from './support/stories/dressings.ts';
import { analyseTexts } from './support/read-text.ts';
import { verify } from '../src/pipeline.ts';
export async function dump() {
  const out = [];
  for (const d of dressings) {
    let v: any={}; let t=0;
    for (let s=0;s<30;s++) { const f = dress(swapStory(s,null).story, s, d.id); 
      const a = await analyseTexts(f.files, f.phrasebook===null?{}:{phrasebook:f.phrasebook});
      const r = verify(a,null,{from:null,to:null},null); 
      const k = r.swaps.map(x=>x.verdict+':'+x.checks.filter(c=>c.status!=='pass').map(c=>c.id+'='+c.status+' '+c.statement).join(',')).join('+'); v[k]=(v[k]??0)+1; }
    out.push(d.id+' '+JSON.stringify(v,null,1));
  }
  return out.join('\n');
}
