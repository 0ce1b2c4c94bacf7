import type { StyleSheet } from '../page/document.js';
import { commonStyle } from '../page/style.js';

/** Three labels across fit between the margins of A4 and of Letter. */
const text = `${commonStyle}.labels{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(100%,15.5rem),1fr));gap:.75rem;list-style:none;
margin:1.5rem 0 0;padding:0}
.label{display:flex;gap:.625rem;border:1px dashed var(--soft);padding:.5rem .625rem;min-height:7rem}
.label p{margin:0;line-height:1.25;max-width:none}
.label div{min-width:0;flex:1}
.label .mark{flex:none;align-self:flex-start;min-width:2.25rem;padding:.125rem .25rem;border:1.5px solid var(--ink);font-weight:700;font-size:1.25rem;
text-align:center}
.supply .mark{background:var(--ink);color:var(--paper)}
.label .end{color:var(--soft);font-size:.75rem}
.label .here{font-weight:700}
.label .volts{margin:.125rem 0;font-size:.875rem}
.label .there{font-size:.8125rem}
.sign{display:inline-block;vertical-align:middle;width:4.75rem;height:1.5rem}
.sign circle,.sign path{fill:none;stroke:var(--ink);stroke-width:1.5}
.sign .pin{fill:var(--ink)}
.sign text{fill:var(--ink);font-size:14px;font-weight:700;text-anchor:middle}
@media print{
header p,footer{font-size:8pt}
.labels{grid-template-columns:repeat(3,58mm);gap:3mm;margin-top:4mm}
.label{break-inside:avoid;height:30mm;min-height:0;padding:1.5mm 2mm;overflow:hidden;print-color-adjust:exact;-webkit-print-color-adjust:exact}
.label .here{display:-webkit-box;-webkit-box-orient:vertical;-webkit-line-clamp:2;overflow:hidden}
.label .there{display:-webkit-box;-webkit-box-orient:vertical;-webkit-line-clamp:2;overflow:hidden}
}
`;

/** The style of the sheet of labels. */
export const labelStyle: StyleSheet = { text, digest: '3tODk4X4bE7+Zw3j2oaagDldhsQSOUZzUDQ1uD25HmI=' };
