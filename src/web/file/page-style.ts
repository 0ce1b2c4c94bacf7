import { drawingStyle } from '../../report/drawing/style.js';
import { iconStyle } from '../../report/signs/icons.js';
import { darkColours, lightColours, type Colours } from '../../report/page/colours.js';

/** The style of the page: its own, with the colours and the drawings of the reports. */
export const pageStyle = (own: string): string =>
  `:root{color-scheme:light dark;${rootColours(lightColours)}}
@media screen and (prefers-color-scheme:dark){:root{${rootColours(darkColours)}}}
${own}${drawingStyle}${iconStyle}`;

/** Those that have a name of their own; the drawing's own style has the colours of leads. */
const rootColours = (colours: Colours): string =>
  Object.entries(colours)
    .flatMap(([name, colour]) => (typeof colour === 'string' ? [`--${name}:${colour}`] : []))
    .join(';');
