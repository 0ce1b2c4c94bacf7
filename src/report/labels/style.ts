import type { StyleSheet } from '../page/document.js';
import { commonStyle } from '../page/common-style.js';
import { iconStyle } from '../signs/icons.js';

/** Three labels across fit between the margins of A4 and of Letter. */
const text = `${commonStyle}${iconStyle}.labels{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(100%,15.5rem),1fr));gap:.75rem;list-style:none;
margin:1.5rem 0 0;padding:0}
.label{display:flex;gap:.625rem;border:1px dashed var(--soft);padding:.5rem .625rem;min-height:7rem}
.label p{margin:0;line-height:1.25;max-width:none}
.label .what{min-width:0;flex:1}
.label .which{flex:none;width:3rem;text-align:center;overflow-wrap:normal}
.label .mark{padding:.125rem .25rem;border:1.5px solid var(--ink);font-weight:700;font-size:1.25rem;
line-height:1.25}
.label.kept .mark{border-style:dashed}
.supply .mark{background:var(--ink);color:var(--paper)}
.label .end{margin-top:.25rem;color:var(--soft);font-size:.75rem}
.label .here{font-weight:700}
.label .volts{margin:.125rem 0;font-size:.875rem}
.label .there{font-size:.8125rem}
.label .volts .icon{height:1.25rem;vertical-align:-.3rem}
.label .hazards{font-size:.75rem;font-weight:700}
.label .hazards span{display:inline-block;margin-right:.5rem;white-space:nowrap}
.label .hazards .icon{height:1.1em;margin-right:.25em}
@media print{
header p,footer{font-size:8pt}
.labels{grid-template-columns:repeat(3,58mm);gap:3mm;margin-top:4mm}
.label{break-inside:avoid;min-height:30mm;padding:1.5mm 2mm;print-color-adjust:exact;-webkit-print-color-adjust:exact}
.label .here{display:-webkit-box;-webkit-box-orient:vertical;-webkit-line-clamp:2;overflow:hidden}
.label .there{display:-webkit-box;-webkit-box-orient:vertical;-webkit-line-clamp:2;overflow:hidden}
}
`;

/** The style of the sheet of labels. */
export const labelStyle: StyleSheet = { text, digest: 'sj+ymoChrY8V7/h8wga819s0p3ma9WY9BkUncqi0TFI=' };
