import type { Stats } from 'node:fs';
import { stat } from 'node:fs/promises';

/** What there is at a path, whatever it is; null where it leads nowhere. */
export const fileAt = (path: string): Promise<Stats | null> => stat(path).catch(() => null);
