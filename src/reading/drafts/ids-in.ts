import { idFromName } from '../resolve/resolve-id.js';

type Data = Readonly<Record<string, unknown>>;

/** The ids of the entries of a list, stated or made from their names. */
export function idsIn(data: Data, key: string): readonly string[] {
  const list = Array.isArray(data[key]) ? (data[key] as readonly unknown[]) : [];
  return list.flatMap((entry) => {
    const { id, name } = (typeof entry === 'object' && entry !== null ? entry : {}) as Data;
    const found = typeof id === 'string' ? id : typeof name === 'string' ? idFromName(name) : null;
    return found === null ? [] : [found];
  });
}
