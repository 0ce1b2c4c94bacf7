import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));

/** The full path of a path inside the checkout. */
export const absolute = (path) => join(root, path);

/** The text of a file, or null when there is no such file. */
export const textOf = (path) => unlessMissing(() => readFileSync(absolute(path), 'utf8'), null);

/** Every file below a folder, as paths inside the checkout with forward slashes, sorted; none when there is no such folder. */
export function filesBelow(folder) {
  const entries = unlessMissing(() => readdirSync(absolute(folder), { withFileTypes: true }), []);
  const paths = entries.flatMap((entry) => {
    const path = `${folder}/${entry.name}`;
    return entry.isDirectory() ? filesBelow(path) : [path];
  });
  return paths.sort();
}

function unlessMissing(read, otherwise) {
  try {
    return read();
  } catch (error) {
    if (error.code === 'ENOENT') return otherwise;
    throw error;
  }
}
