import type { Path, Words } from '../../domain/finding.js';
import type { TablePlaces } from './table-places.js';

/**
 * What is wrong with a table, in the words of a table: ranges, lists and flags as its cells hold them, headings for keys, and
 * where to put what stands in no row.
 */
export function tableWords(table: TablePlaces, path: Path, { message, remedy }: Words): Words {
  return { message: inCells(withoutName(message)), remedy: inCells(placed(table, path, message, remedy)) };
}

const inCells = (text: string): string =>
  text
    .replace(/\{from: ([\d.]+), to: ([\d.]+)\}/g, '$1-$2')
    .replace(/\[([\d.]+), ([\d.]+)\]/g, '$1/$2')
    .replace(/\{9: 300, 12: 230\}/g, '300/230')
    .replace(/\btrue or false\b/g, 'yes or no');

/** The row is named before the message. */
const withoutName = (message: string): string => message.replace(/^(missing|unknown) for "[^"]*"(?=[;,])/, '$1');

function placed(table: TablePlaces, path: Path, message: string, remedy: string): string {
  const [key] = path;
  if (path.length === 1 && message.startsWith('missing'))
    return `Add a line \`# ${String(key)}: …\` above the header, or make a file in YAML with boardfeed convert.`;
  const heading = table.headingOf(path);
  const mended = heading === null ? remedy : inColumns(remedy, heading, table.hasHeading(path));
  return mended
    .replace(/add it to `assume`\.$/, `state it once for all in ${assumeLine}.`)
    .replace(/^Add to `assume` what is likely/, `State what is likely in ${assumeLine}`);
}

const assumeLine = 'a line `# assume: {…}` above the header';

/** What files have as keys, tables have as columns. */
function inColumns(remedy: string, heading: string, isThere: boolean): string {
  const mend = isThere ? 'fill in the cell' : `add a column "${heading}"`;
  return remedy
    .replace('Add `switch: each`', `Write each under "${heading}"`)
    .replace('`switch: together`', 'together')
    .replace(/^Add `\w+`/, `${mend.charAt(0).toUpperCase()}${mend.slice(1)}`)
    .replace(/\badd `\w+`(?: to this setting)?/, mend);
}
