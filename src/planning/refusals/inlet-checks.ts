import { isFed } from '../../domain/inlet.js';
import type { Attempt } from './attempts.js';
import type { RuleFailure } from './failure.js';

/** A fed supply is of no use where nothing at hand can feed it. */
export function failsInlet({ supply, shop }: Attempt): RuleFailure | null {
  if (!isFed(supply) || shop.canBeFed(supply)) return null;
  return {
    nearness: 0,
    message: `${supply.name} hangs by its inlet on another supply, and no output here can feed it`,
  };
}
