import { darkColours, lightColours, type Colours } from '../page/colours.js';

/**
 * The style of a drawing, inside a page or by itself. Plain selectors and values only: programs that draw and print SVG know
 * little more. What colours tell, words and shapes tell, too.
 */
export const drawingStyle = `svg text{font-family:system-ui,"Segoe UI",Roboto,"Helvetica Neue",Arial,sans-serif}
svg .name{font-weight:700}
svg .wire,svg .gap,svg .rail,svg .mark,svg .sign path{fill:none;stroke-linejoin:round;stroke-linecap:round}
svg .wire{stroke-width:1.8}
svg .gap{stroke-width:4.5;stroke-linecap:butt}
svg .kept .wire{stroke-dasharray:5 4}
svg .rail{stroke-width:2.25}
svg .mark{stroke-width:1.9}
svg .sign path{stroke-width:1.7}
svg .parting{fill:none;stroke-width:1}
svg .box rect{stroke-width:1}
svg .pedal>rect:first-child{stroke-width:1.5}
svg .output.free>rect:first-child{fill:none;stroke:none}
svg .kept>rect:first-child{stroke-dasharray:5 4}
svg .off>rect:first-child{stroke-dasharray:1.5 3}
svg .output circle{stroke-width:1.5}
svg .box .bar{stroke:none}
svg .box .full{stroke:none}
${drawingColours(lightColours)}
@media screen and (prefers-color-scheme:dark){
${drawingColours(darkColours)}
}
`;

function drawingColours({ ink, soft, paper, panel, line, full, care, leads }: Colours): string {
  return `svg text{fill:${ink}}
svg .soft{fill:${soft}}
svg .ground{fill:${paper}}
svg .gap{stroke:${paper}}
svg .rail{stroke:${ink}}
svg .parting{stroke:${line}}
svg .mark{stroke:${care}}
svg .sign path{stroke:${ink}}
svg .sign circle{fill:${ink}}
svg .box rect{fill:${paper};stroke:${soft}}
svg .strip>rect:first-child{fill:${panel}}
svg .pedal>rect:first-child{stroke:${ink}}
svg .cap>rect:first-child{fill:${panel}}
svg .output circle{fill:${ink};stroke:${ink}}
svg .free circle{fill:${paper};stroke:${soft}}
svg .tag>rect:first-child{fill:${ink};stroke:${paper}}
svg .tag text{fill:${paper}}
svg .box .bar{fill:${line}}
svg .box .full{fill:${full}}
${leads.map((colour, tone) => `svg .tone-${tone} .wire{stroke:${colour}}\nsvg .tone-${tone} circle{fill:${colour}}`).join('\n')}`;
}
