import { darkColours, lightColours, type Colours } from './colours.js';

const rootColours = ({ ink, soft, paper, panel, line, care }: Colours): string =>
  `--ink:${ink};--soft:${soft};--paper:${paper};--panel:${panel};--line:${line};--care:${care}`;

/** What all pages have in common. On paper, ink is black on white whatever the screen shows. */
export const commonStyle = `:root{color-scheme:light dark;${rootColours(lightColours)}}
@media screen and (prefers-color-scheme:dark){:root{${rootColours(darkColours)}}}
*{box-sizing:border-box}
html{-webkit-text-size-adjust:100%;text-size-adjust:100%}
body{margin:0 auto;padding:1.5rem 1rem 3rem;max-width:54rem;background:var(--paper);color:var(--ink);
font:1rem/1.5 system-ui,"Segoe UI",Roboto,"Helvetica Neue",Arial,sans-serif;overflow-wrap:anywhere}
h1{font-size:1.75rem;line-height:1.2;margin:0 0 .75rem;text-wrap:balance}
h2{font-size:1.25rem;line-height:1.3;margin:0 0 .75rem}
h3{font-size:1rem;line-height:1.3;margin:1.25rem 0 .5rem}
p{margin:0 0 .75rem;max-width:44rem}
.care{color:var(--care)}
.unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
footer{margin-top:2.5rem;padding-top:.75rem;border-top:1px solid var(--line);color:var(--soft);font-size:.875rem}
@page{margin:13mm 12mm}
@media print{
:root{${rootColours(lightColours)};color-scheme:light}
html{font-size:9.5pt}
body{padding:0;max-width:none;line-height:1.4}
h1,h2,h3,caption{break-after:avoid}
}
`;
