import { markup, type Markup } from '../page/markup.js';

/** How large the sign is drawn, in its own units. */
export const batterySignSize = { width: 40, height: 20 } as const;

/** A battery lying on its side, plus to the right. The words stand beside it. */
export const batterySign = (): Markup =>
  markup`<path d="M1.5 3.5H33V16.5H1.5ZM33 7H38V13H33M8 10H14M21 10H28M24.5 6.5V13.5"/>`;
