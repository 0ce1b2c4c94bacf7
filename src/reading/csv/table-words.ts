import type { Path, Words } from '../../domain/finding.js';

/**
 * What is wrong with a table, in the words of a table: ranges and lists as its cells hold them, and where to put what
 * stands in no row.
 */
export function tableWords(path: Path, { message, remedy }: Words): Words {
  return { message: inCells(message), remedy: inCells(placed(path, message, remedy)) };
}

const inCells = (text: string): string =>
  text
    .replace(/\{from: ([\d.]+), to: ([\d.]+)\}/g, '$1-$2')
    .replace(/\[([\d.]+), ([\d.]+)\]/g, '$1/$2')
    .replace(/\{9: 300, 12: 230\}/g, '300/230');

function placed(path: Path, message: string, remedy: string): string {
  const [key] = path;
  if (path.length === 1 && message.startsWith('missing'))
    return `Add a line \`# ${String(key)}: …\` above the header, or make a file in YAML with boardfeed convert.`;
  return remedy.replace(/add it to `assume`\.$/, 'state it once for all in a line `# assume: {…}` above the header.');
}
