import type { Source } from '../domain/source.js';
import type { Supply } from '../domain/supply.js';

/** What the rules make of a supply by what it stands on: the audit's own view, which asks nobody else. */
type View = {
  /** It counts as a supply in use. */
  readonly isBrick: boolean;
  readonly takesSocket: boolean;
  /** What hangs on it gets there by a plug, so that figures, plugs and polarities have to agree. */
  readonly offersPlug: boolean;
};

const views: Readonly<Record<Source['kind'], View>> = {
  mains: { isBrick: true, takesSocket: true, offersPlug: true },
  adapter: { isBrick: true, takesSocket: true, offersPlug: false },
  charge: { isBrick: true, takesSocket: false, offersPlug: true },
  battery: { isBrick: false, takesSocket: false, offersPlug: false },
};

type OnSource = { readonly supply: Supply };

export const isBrick = ({ supply }: OnSource): boolean => views[supply.source.kind].isBrick;
export const takesSocket = ({ supply }: OnSource): boolean => views[supply.source.kind].takesSocket;
export const offersPlug = ({ supply }: OnSource): boolean => views[supply.source.kind].offersPlug;
