import type { Source } from '../domain/source.js';
import type { Supply } from '../domain/supply.js';

/** What the rules make of a supply by what it stands on: the audit's own view, which asks nobody else. */
type View = {
  /** It counts as a supply in use. */
  readonly isBrick: boolean;
  readonly takesSocket: boolean;
  /** What hangs on it gets there by a plug, so that figures, plugs and polarities have to agree. */
  readonly offersPlug: boolean;
  /** The inlet of a fed supply may hang on it. */
  readonly feedsInlets: boolean;
};

const views: Readonly<Record<Source['kind'], View>> = {
  mains: { isBrick: true, takesSocket: true, offersPlug: true, feedsInlets: true },
  adapter: { isBrick: true, takesSocket: true, offersPlug: false, feedsInlets: false },
  charge: { isBrick: true, takesSocket: false, offersPlug: true, feedsInlets: true },
  fed: { isBrick: true, takesSocket: false, offersPlug: true, feedsInlets: false },
  battery: { isBrick: false, takesSocket: false, offersPlug: false, feedsInlets: false },
};

type OnSource = { readonly supply: Supply };

export const isBrick = ({ supply }: OnSource): boolean => views[supply.source.kind].isBrick;
export const takesSocket = ({ supply }: OnSource): boolean => views[supply.source.kind].takesSocket;
export const offersPlug = ({ supply }: OnSource): boolean => views[supply.source.kind].offersPlug;
export const feedsInlets = ({ supply }: OnSource): boolean => views[supply.source.kind].feedsInlets;
