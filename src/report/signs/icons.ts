import { markup, type Markup } from '../page/markup.js';
import type { Hazard } from '../words/hazards.js';
import { hazardShapes, hazardShapeSize } from './hazard-shape.js';
import { signShape, signSize, type Sign } from './sign.js';

/** The style of the icons on a page; `--ink` is its colour of text. */
export const iconStyle = `.icon{display:inline-block;vertical-align:-.15em;height:1em;width:auto;overflow:visible}
.icon path{fill:none;stroke:currentColor;stroke-width:1.6;stroke-linecap:round;stroke-linejoin:round}
.icon .pin{fill:currentColor}
`;

/** The shape of a hazard beside its word on a page. */
export const hazardIcon = (hazard: Hazard): Markup =>
  icon(hazardShapeSize, hazardShapeSize, markup`<path d="${hazardShapes[hazard]}"/>`);

/** The sign of a plug or of a battery beside its words on a page. */
export const signIcon = (sign: Sign): Markup => icon(signSize(sign).width, signSize(sign).height, signShape(sign));

const icon = (width: number, height: number, inside: Markup): Markup =>
  markup`<svg class="icon" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" aria-hidden="true" focusable="false">${inside}</svg>`;
