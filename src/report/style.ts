/** The look of a report: ground and ink, light, dark and in print. Colours and measures are those of look.md. */
export const style = `
:root{--ground:#f5f3ee;--ink:#1c2024;--second:#5b6168;--rule:#d9d5cb;--rust:#9a3b1c;--ochre:#7a5600;color-scheme:light dark}
@media (prefers-color-scheme:dark){:root{--ground:#16191c;--ink:#e7e3da;--second:#a2a7ab;--rule:#33383c;--rust:#e59372;--ochre:#d6ab52}
.picture svg [stroke="#1c2024"]{stroke:#e7e3da}.picture svg [fill="#1c2024"]{fill:#e7e3da}.picture svg [stroke="#5b6168"]{stroke:#a2a7ab}
.picture svg [fill="#5b6168"]{fill:#a2a7ab}.picture svg [fill="#d9d5cb"]{fill:#4a5056}.picture svg [stroke="#d9d5cb"]{stroke:#4a5056}
.picture svg [stroke="#9a3b1c"]{stroke:#e59372}.picture svg [fill="#9a3b1c"]{fill:#e59372}.picture svg [stroke="#7a5600"]{stroke:#d6ab52}.picture svg [fill="#7a5600"]{fill:#d6ab52}}
*{box-sizing:border-box}
html{background:var(--ground);color:var(--ink);font:16px/1.45 system-ui,-apple-system,"Segoe UI",Roboto,Helvetica,Arial,sans-serif;font-variant-numeric:tabular-nums}
body{max-width:50rem;margin:0 auto;padding:2rem 1.25rem 4rem}
h1,h2,.verdict{font-family:ui-serif,Georgia,"Times New Roman",serif;font-weight:600}
h1{font-size:1rem;font-weight:400;color:var(--second);margin:0 0 .5rem}
.verdict{font-size:1.75rem;line-height:1.25;margin:0 0 1rem;overflow-wrap:anywhere}
h2{font-size:1.2rem;margin:2.2rem 0 .6rem;padding-top:.7rem;border-top:1px solid var(--rule);break-after:avoid}
p{margin:.4rem 0}
a{color:inherit;text-underline-offset:2px}
a:focus-visible{outline:2px solid var(--ink);outline-offset:2px}
.fail{color:var(--rust);font-weight:600}
.inconclusive{color:var(--ochre);font-weight:600}
.second,caption,figcaption{color:var(--second);font-size:.875rem;text-align:left}
table{border-collapse:collapse;width:100%;font-size:.9375rem}
th,td{text-align:left;vertical-align:top;padding:.28rem .7rem .28rem 0;border-bottom:1px solid var(--rule);overflow-wrap:break-word}
.long{overflow-wrap:anywhere}.joined>*{border-bottom:0;padding-bottom:0}.joined th{min-width:11.5rem}.named{min-width:7.2rem}.shown .number+:not(.number){padding-left:.8rem}#pairs .shown td:last-child{min-width:9.5rem}
th{font-weight:600;color:var(--second);font-size:.8125rem}th[scope=row]{color:inherit;font-size:inherit;font-weight:400}
h3{font-size:.875rem;font-weight:600;margin:.8rem 0 .2rem;overflow-wrap:anywhere;break-after:avoid}
td.number,th.number{text-align:right}
td.clock,td.outcome,td.number{white-space:nowrap}.checks th[scope=row]{width:13.5rem}.steps td:last-child{width:15rem}.took{width:7.5rem}
tr{break-inside:avoid}
dl{display:grid;grid-template-columns:max-content 1fr;gap:.2rem 1.2rem;margin:0}
dt{color:var(--second)}dd{margin:0;overflow-wrap:anywhere}
.blank{display:inline-block;min-width:14rem;border-bottom:1px solid var(--ink);height:1.2em}
figure{margin:0;break-inside:avoid}
.scroll{overflow-x:auto}
.picture svg{display:block;max-width:100%;height:auto}
.key{display:flex;flex-wrap:wrap;gap:.2rem 1.2rem;list-style:none;padding:0;margin:.4rem 0 0;color:var(--second);font-size:.8125rem}
.key b{color:var(--ink);font-weight:600}
.lines{padding-left:2.4rem;margin:.4rem 0;font-size:.8125rem}
.lines li{margin:.1rem 0;overflow-wrap:anywhere}
code{font-family:ui-monospace,SFMono-Regular,Menlo,Consolas,"DejaVu Sans Mono",monospace;font-size:.8125rem;overflow-wrap:anywhere}
sup{font-size:.75rem}
.cautions{break-inside:avoid;border-left:3px solid var(--ink);padding-left:1rem}
.sign{display:grid;grid-template-columns:2fr 2fr 1fr;gap:1.4rem 2rem;break-inside:avoid;margin-top:1rem}
.sign div{border-top:1px solid var(--ink);padding-top:.2rem;margin-top:1.8rem}
.fit{font-size:1.125rem}
.filled{width:100%}.filled td{padding-top:.5rem;padding-bottom:.5rem}.filled .by-hand{border:1px solid var(--rule);min-width:5rem}.filled .hold td{border-top:2px solid var(--ink)}.filled .hold p{margin:.1rem 0}
footer{margin-top:2rem;color:var(--second);font-size:.8125rem}
@media print{
@page{margin:14mm 15mm}
:root{--ground:#fff;--ink:#000;--second:#333;--rule:#bbb;--rust:#000;--ochre:#000}
html{font-size:11px;line-height:1.35;background:#fff;color:#000}body{max-width:none;padding:0}
h2{margin:1.1rem 0 .4rem;padding-top:.4rem}
th,td{padding:.12rem .6rem .12rem 0}table{font-size:10.5px}.steps td:last-child{width:23rem}.took{width:12rem}.checks th[scope=row]{width:18rem}#cautions,#sign-off{break-inside:avoid}.sign div{margin-top:1.2rem}dl{gap:.05rem 1.2rem}
.picture svg{max-width:150mm;max-height:54mm}#staff svg{max-height:72mm}#bring-ups svg{max-width:140mm}#pairs svg,#months svg,#sync-times svg,#drifts svg,#census svg,#forecast svg{max-width:250mm;max-height:none;zoom:.7}h3{margin:.5rem 0 .1rem;font-size:9.5px}
.lines{columns:2;column-gap:8mm;font-size:9px;line-height:1.25;padding-left:1.8rem}.lines li{break-inside:avoid;margin:0}.lines code{font-size:8.5px}sup{font-size:7.5px}
.verdict{font-size:1.6rem}.short{columns:1;list-style-position:inside;padding-left:0}.short li{white-space:nowrap;overflow:hidden;text-overflow:ellipsis}
.sheet .verdict{font-size:15px;margin:0 0 .3rem}.sheet .fit{font-size:12px}.sheet p{margin:.1rem 0}.sheet h1{margin:0 0 .2rem}.sheet ul{margin:.1rem 0;padding-left:1.2rem}.sheet h2{font-size:12px;margin:.55rem 0 .1rem;padding-top:.2rem}.sheet h3{margin:.15rem 0 0}
.sheet dl{grid-template-columns:max-content 1fr max-content 1fr}.sheet .blank{min-width:9rem}.sheet table{font-size:9.5px}.sheet td,.sheet th{padding:.06rem .5rem .06rem 0}.hash code{font-size:8px}
#work-steps{break-before:page}#work-steps h2{margin:0;padding:0;border:0}#work-steps p{margin:.15rem 0;font-size:10px}main:has(#work-steps)+footer{margin-top:.4rem}.filled .number{padding-left:.5rem}.filled td:first-child{padding-left:0}.filled td{height:22px;padding:.05rem .5rem .05rem 0}.filled{font-size:10px}.filled th.number{width:56px}.filled td:nth-child(2):not([colspan]){width:368px}.filled .by-hand{border-color:#000;width:52px;min-width:0}.filled .hold p{font-size:9.5px;line-height:1.25;margin:0}#sign-off h2{margin-top:.3rem}#sign-off .sign{gap:.4rem 2rem;margin-top:0}
.picture svg :is([stroke="#9a3b1c"],[stroke="#7a5600"],[stroke="#5b6168"],[stroke="#1c2024"]){stroke:#000}.picture svg :is([fill="#9a3b1c"],[fill="#7a5600"],[fill="#5b6168"],[fill="#1c2024"]){fill:#000}
}
`.trim();
