import { darkColours, lightColours, type Colours } from '../page/colours.js';

/**
 * The style of a drawing, inside a page or by itself. Plain selectors and values only: programs that draw and print SVG know
 * little more. What colours tell, words and shapes tell, too.
 */
export const drawingStyle = `svg text{font-family:system-ui,"Segoe UI",Roboto,"Helvetica Neue",Arial,sans-serif}
svg .name{font-weight:700}
svg .wire{fill:none;stroke-width:1.5;stroke-linejoin:round}
svg .frame{fill:none;stroke-width:1;stroke-dasharray:4 3}
svg .parting{fill:none;stroke-width:1}
svg .box rect{stroke-width:1}
svg .pedal>rect:first-child{stroke-width:1.5}
svg .off>rect:first-child{stroke-dasharray:2 3}
svg .box .bar{stroke:none}
svg .box .full{stroke:none}
${drawingColours(lightColours)}
@media screen and (prefers-color-scheme:dark){
${drawingColours(darkColours)}
}
`;

function drawingColours({ ink, soft, paper, panel, line, full }: Colours): string {
  return `svg text{fill:${ink}}
svg .note{fill:${soft}}
svg .ground{fill:${paper}}
svg .wire{stroke:${ink}}
svg .frame{stroke:${soft}}
svg .parting{stroke:${line}}
svg .box rect{fill:${paper};stroke:${soft}}
svg .supply>rect:first-child{fill:${panel}}
svg .mains>rect:first-child{fill:${panel}}
svg .pedal>rect:first-child{stroke:${ink}}
svg .mark>rect:first-child{fill:${ink};stroke:${paper}}
svg .mark text{fill:${paper}}
svg .box .bar{fill:${line}}
svg .box .full{fill:${full}}`;
}
