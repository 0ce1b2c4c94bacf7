import { batteryTypeSaid } from '../../reading/typed/source-words.js';
import { safeText } from './safe-text.js';

/** "9 V block battery", "AA batteries". */
export const batteryTypeText = (type: string, count: number): string =>
  `${safeText(batteryTypeSaid(type))} ${count === 1 ? 'battery' : 'batteries'}`;

/** "1 × 9 V block battery", "6 × AA batteries". */
export const batterySetText = (type: string, count: number): string => `${count} × ${batteryTypeText(type, count)}`;
