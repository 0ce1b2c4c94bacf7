import type { Kit } from '../../domain/kit.js';
import { inventoryOf } from '../words/inventory.js';
import { safeJson } from '../words/safe-text.js';
import type { Codec } from './codec.js';
import type * as z from 'zod/mini';

/** The value as an object of the format. */
export const printedObject = <From, Schema extends z.ZodMiniType>(
  codec: Codec<From, Schema>,
  kit: Kit,
  value: From,
): z.input<Schema> => codec.print(value, { kit, board: kit.board, inventory: inventoryOf(kit) });

/** The same as JSON with a line break at its end. */
export const printed = <From>(codec: Codec<From>, kit: Kit, value: From): string =>
  `${safeJson(JSON.stringify(printedObject(codec, kit, value), null, 2))}\n`;
