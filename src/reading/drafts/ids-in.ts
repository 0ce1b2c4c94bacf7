import { idFromName } from '../resolve/resolve-id.js';
import { listOf, mapOf, type Data } from '../text/data.js';

/** The ids of the entries of a list, stated or made from their names. */
export function idsIn(data: Data, key: string): readonly string[] {
  return listOf(data[key]).flatMap((entry) => {
    const { id, name } = mapOf(entry);
    const found = typeof id === 'string' ? id : typeof name === 'string' ? idFromName(name) : null;
    return found === null ? [] : [found];
  });
}
