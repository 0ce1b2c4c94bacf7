import { safeText } from './safe-text.js';

/** The types that files call otherwise than people do. */
const names: Readonly<Record<string, string>> = { '9V-block': '9 V block' };

/** "9 V block battery", "AA batteries". */
export const batteryTypeText = (type: string, count: number): string =>
  `${Object.hasOwn(names, type) ? names[type] : safeText(type)} ${count === 1 ? 'battery' : 'batteries'}`;

/** "1 × 9 V block battery", "6 × AA batteries". */
export const batterySetText = (type: string, count: number): string => `${count} × ${batteryTypeText(type, count)}`;
