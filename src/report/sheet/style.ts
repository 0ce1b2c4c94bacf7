import { chartStyle } from '../charts/chart.js';
import { drawingStyle } from '../drawing/style.js';
import type { StyleSheet } from '../page/document.js';
import { commonStyle } from '../page/common-style.js';

const text = `${commonStyle}${drawingStyle}${chartStyle}main{font-size:1em}
h1{font-size:1.5em;margin:0 0 .25em}
h2{font-size:1.0625em;margin:0 0 .25em}
h3{font-size:.9375em;margin:.5em 0 .125em}
p{margin:0 0 .25em;max-width:none}
section{margin-top:1em;padding-top:.375em;border-top:1.5px solid var(--ink)}
header{display:grid;grid-template-columns:1fr auto;gap:0 1.5em}
header>*{grid-column:1/-1}
header h1{grid-column:1}
header .from{grid-column:2;text-align:right}
.from span{margin-left:.75em}
ul,ol{margin:0 0 .25em;padding-left:1.4em}
li{margin:.125em 0}
table{width:100%;border-collapse:collapse;margin:0 0 .25em}
caption{text-align:left;color:var(--soft);font-size:.875em}
th,td{text-align:left;vertical-align:top;padding:.1875em .625em .1875em 0;border-bottom:1px solid var(--line)}
th:last-child,td:last-child{padding-right:0}
thead th{overflow-wrap:normal;border-bottom:1px solid var(--ink);font-size:.875em;vertical-align:bottom}
tfoot th,tfoot td{border-bottom:0;font-weight:700}
.figures{text-align:right;font-variant-numeric:tabular-nums;white-space:nowrap}
.looks{list-style:none;padding:0}
.tick{display:inline;font-weight:700;white-space:nowrap}
.tick>span{white-space:normal}
.tick input{width:1em;height:1em;margin:0 .125em 0 0;font:inherit;vertical-align:-.125em;accent-color:var(--ink)}
.where{color:var(--soft);font-size:.875em}
#buy caption,.choices caption{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
.ruled{height:1.75em;border-bottom:1px solid var(--soft)}
svg{display:block;max-width:100%;height:auto}
svg.narrow{display:none}
.columns{columns:18em 2;column-gap:1.5em;margin-top:1em;border-top:1.5px solid var(--ink);padding-top:.375em}
.columns section{border-top:0;padding-top:0}
.columns section:first-child{margin-top:0}
.columns :is(h2,h3){break-after:avoid}
.columns :is(p,li,#buy){break-inside:avoid}
#buy:only-child{column-span:all}
footer{margin-top:1em;padding-top:.375em}
@media screen and (max-width:48rem){
header h1,header .from{grid-column:1/-1;text-align:left}
svg.sheet,svg.dense{display:none}
svg.narrow{display:block}
.cards,.cards tbody,.cards tr,.cards th,.cards td{display:block}
.cards caption{display:block}
.cards thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
.cards tr{border-top:1px solid var(--ink);padding:.5rem 0}
.cards th[scope=row],.cards td{display:flex;width:auto;gap:.75rem;border:0;padding:.1875rem 0}
.cards th[scope=row]::before,.cards td::before{content:attr(data-label);flex:0 0 6.5rem;color:var(--soft);font-weight:400}
.cards td.empty{display:none}
}
.note{color:var(--soft);font-size:.875em}
.choices{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,16em),1fr));gap:0 1.5em}
.choices svg{margin-top:.375em}
.choices.flat{grid-template-columns:1fr}
svg.small{max-width:92mm}
svg.sheet,svg.dense{max-width:190mm}
@page{margin:9mm 10mm}
@media print{
body,svg text{font-family:Arial,"Helvetica Neue",Helvetica,"Liberation Sans","DejaVu Sans Condensed",sans-serif}
main{font-size:8.5pt;line-height:1.17}
main.largest{font-size:10.5pt}
main.large{font-size:9.5pt}
main.small{font-size:7.75pt}
main.least{font-size:7.1pt}
h3,caption,thead th,.where,.note,footer{font-size:max(.875em,7.05pt)}
.side{display:flex;flex-direction:column;height:100vh;break-after:page}
.side:last-child{break-after:auto}
.side>*{flex:none}
.side>#wiring{flex:0 1 auto;min-height:30mm;display:flex;flex-direction:column}
.choices svg{width:100%}
.choices{grid-template-columns:1fr 1fr}
.choices.flat{grid-template-columns:1fr}
#chart svg{max-height:60mm;margin:0 auto}
#wiring :is(.sheet,.dense){flex:0 1 auto;min-height:0;width:100%;height:auto}
section{margin-top:3pt;padding-top:2pt;border-top-width:.75pt}
h2{margin-bottom:1pt}
h3{margin:2pt 0 0}
p{margin-bottom:1pt}
ul{margin-bottom:0}
.columns{columns:2;border-top-width:.75pt;margin-top:3pt;padding-top:2pt}
th,td{padding-top:.75pt;padding-bottom:.75pt}
.checks td:nth-child(1),.checks td:nth-child(4),.checks td:nth-child(6),.checks b{white-space:nowrap}
.ruled{height:6mm}
#notes{display:flex;gap:1em}
#notes .ruled{flex:1}
footer{margin-top:auto;padding-top:2pt}
}
`;

/** The style of a sheet. */
export const sheetStyle: StyleSheet = { text, digest: '9RaWEU91EzPXIsMqbiaGi9MX0jD51uNH8aYGVVBdh3k=' };
