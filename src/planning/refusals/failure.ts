import { decimalOfThousandths } from '../../domain/quantities.js';

/** How an attempt fails a rule: the larger the nearness, the nearer it came. */
export type RuleFailure = { readonly nearness: number; readonly message: string };

/** "9 V", of millivolts. */
export const voltsText = (millivolts: number): string => `${decimalOfThousandths(millivolts)} V`;

/** "360 mA", of microamps. */
export const currentText = (microamps: number): string => `${decimalOfThousandths(microamps)} mA`;
