import { chartStyle } from '../charts/chart.js';
import { drawingStyle } from '../drawing/style.js';
import { iconStyle } from '../signs/icons.js';
import { commonStyle } from './common-style.js';
import type { StyleSheet } from './document.js';

const text = `${commonStyle}${drawingStyle}${chartStyle}${iconStyle}section{margin-top:2.25rem;padding-top:1rem;border-top:2px solid var(--ink)}
ul,ol{margin:0 0 .75rem;padding-left:1.25rem;max-width:46rem}
li{margin:.25rem 0}
nav{margin-top:1.5rem}
nav ul{display:flex;flex-wrap:wrap;gap:.25rem 1.25rem;margin:0;padding:0;list-style:none;max-width:none}
nav li{margin:0}
nav a{display:inline-block;padding:.25rem 0;color:inherit;text-underline-offset:.2em}
a:focus-visible,input:focus-visible{outline:2px solid var(--ink);outline-offset:2px}
.standing{padding:.5rem .75rem;border-left:4px solid currentColor;background:var(--panel)}
.facts{display:grid;grid-template-columns:repeat(auto-fit,minmax(7rem,1fr));gap:.75rem 1.25rem;margin:1.25rem 0 0}
.facts dt{color:var(--soft);font-size:.875rem}
.facts dd{margin:0;font-weight:700;font-size:1.125rem}
table{width:100%;border-collapse:collapse;margin:0 0 .75rem;font-size:.9375rem}
caption{text-align:left;color:var(--soft);font-size:.875rem;padding-bottom:.375rem}
th,td{text-align:left;vertical-align:top;padding:.4375rem .75rem .4375rem 0;border-bottom:1px solid var(--line)}
th:last-child,td:last-child{padding-right:0}
thead th{overflow-wrap:normal;border-bottom:1px solid var(--ink);font-size:.8125rem;vertical-align:bottom}
tbody th{font-weight:700}
tfoot th,tfoot td{border-bottom:0;font-weight:700}
.figures{text-align:right;font-variant-numeric:tabular-nums}
td.figures,th.figures{overflow-wrap:normal}
.whole,td .tick{white-space:nowrap}
.feeds th:nth-child(1){width:5%}
.feeds th:nth-child(2){width:15%}
.feeds th:nth-child(3){width:20%}
.feeds th:nth-child(4){width:19%}
.feeds th:nth-child(5){width:19%}
.checks th:nth-child(2){width:24%}
.options th:nth-child(1){width:6%}
.options th:nth-child(2){width:34%}
.moves th:nth-child(1){width:18%}
.moves th:nth-child(2),.moves th:nth-child(3){width:23%}
figure{margin:0 0 1.75rem}
figure svg{display:block;max-width:100%;height:auto}
.narrow{display:none}
.tick{display:inline-flex;align-items:flex-start;gap:.5rem;min-height:1.5rem}
.tick input{flex:none;width:1.25rem;height:1.25rem;margin:.125rem 0 0;accent-color:var(--ink)}
.ticks{list-style:none;padding-left:0}
.ticks li{margin:.375rem 0}
.steps{list-style:none;counter-reset:step;padding:0;max-width:none}
.steps>li{counter-increment:step;position:relative;padding-left:2.5rem;margin:0 0 1.5rem}
.steps>li::before{content:counter(step);position:absolute;left:0;top:0;width:1.75rem;line-height:1.75rem;text-align:center;
border:1.5px solid var(--ink);border-radius:50%;font-weight:700}
.steps>li>h3{margin:0 0 .25rem;line-height:1.75rem}
@media screen and (max-width:48rem){
.wide{display:none}
.narrow{display:block}
th,td{padding-right:.5rem}
.cards,.cards tbody,.cards tr,.cards th,.cards td{display:block}
.cards caption{display:block}
.cards thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
.cards tr{border-top:1px solid var(--ink);padding:.5rem 0}
.cards th[scope=row],.cards td{display:flex;width:auto;gap:.75rem;border:0;padding:.1875rem 0}
.cards th[scope=row]::before,.cards td::before{content:attr(data-label);flex:0 0 6.5rem;color:var(--soft);font-weight:400;
font-size:.875rem}
.cards td.figures{text-align:left}
.cards td.empty{display:none}
.steps>li{padding-left:0}
.steps>li>h3{padding-left:2.5rem}
}
@media print{
nav{display:none}
section{margin-top:14pt;padding-top:7pt;border-top-width:1pt}
figure,tr,li,.facts,.standing,h2+p,h3+p{break-inside:avoid}
h2+p,h3+p{break-after:avoid}
.steps>li{break-inside:auto}
p,li{orphans:3;widows:3}
thead{display:table-header-group}
thead,tbody tr:first-child:not(:last-child),tbody tr:nth-last-child(2){break-after:avoid}
tbody tr:last-child,tfoot{break-before:avoid}
li:first-child:not(:last-child){break-after:avoid}
.note{break-before:avoid}
li:last-child{break-before:avoid}
th,td{padding-top:3pt;padding-bottom:3pt}
figure svg{max-height:230mm}
.standing{background:none}
}
`;

/** The style of a plan's page. */
export const pageStyle: StyleSheet = { text, digest: 'J+3uw/G6KRP9/Dkyj7iaUK4rS4M4z/uOMDQ9YxH3BTc=' };
