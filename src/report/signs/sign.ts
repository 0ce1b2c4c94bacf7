import type { Polarity } from '../../domain/pedal.js';
import type { Markup } from '../page/markup.js';
import { batterySign, batterySignSize } from './battery-sign.js';
import { polaritySign, polaritySignSize } from './polarity-sign.js';

/** What has a sign of the trade: the polarity of a plug, and a battery. */
export type Sign = Polarity | 'battery';

/** How large a sign is drawn, in its own units. */
export const signSize = (sign: Sign): { readonly width: number; readonly height: number } =>
  sign === 'battery' ? batterySignSize : polaritySignSize;

export const signShape = (sign: Sign): Markup => (sign === 'battery' ? batterySign() : polaritySign(sign));
