import type { Path, Words } from '../../domain/finding.js';
import { buildTree, type TreeFault } from '../text/build-tree.js';
import type { LocatedEntry } from '../text/located-tree.js';
import { parseYaml } from '../text/yaml-document.js';
import { shifted } from './shifted.js';

/**
 * What stands above a table: lines that begin with `#`. One like `# currency: EUR` states a key of the file as YAML would;
 * lines that are indented behind their `#` go on with it; all others are remarks.
 */
type Preamble = {
  readonly entries: ReadonlyMap<string, LocatedEntry>;
  readonly faults: readonly TreeFault[];
  readonly lost: readonly Path[];
};

type ParsedPreamble =
  | {
      readonly kind: 'preamble';
      readonly preamble: Preamble;
      /** Where the table begins. */
      readonly end: number;
    }
  | { readonly kind: 'not yaml'; readonly offset: number; readonly words: Words };

/** One line of YAML and where its text stands in the file. */
type Statement = { readonly text: string; readonly offset: number };

/** The lines above a table that begins at the offset or below. */
export function parsePreamble(text: string, start: number): ParsedPreamble {
  const { statements, end } = statementsIn(text, start);
  const parsed = parseYaml(statements.map((statement) => statement.text).join('\n'));
  const place = placing(statements);
  if (parsed.kind === 'not yaml') return { kind: 'not yaml', offset: place(parsed.offset), words: parsed.words };
  const { contents } = parsed.document;
  if (contents === null) return { kind: 'preamble', preamble: { entries: new Map(), faults: [], lost: [] }, end };
  const { root, faults, lost } = buildTree(contents);
  const located = shifted(root, place);
  const preamble: Preamble = {
    entries: located.kind === 'map' ? located.entries : new Map(),
    faults: faults.map((fault) => ({
      path: fault.path,
      offset: place(fault.offset),
      words: (lineOf) => fault.words((offset) => lineOf(place(offset))),
    })),
    lost,
  };
  return { kind: 'preamble', preamble, end };
}

const isKey = /^[\p{L}_-]+:(?:\s|$)/u;
const goesOn = /^\s{2,}\S/;

function statementsIn(
  text: string,
  start: number,
): { readonly statements: readonly Statement[]; readonly end: number } {
  const statements: Statement[] = [];
  let offset = start;
  while (offset < text.length) {
    const newline = text.indexOf('\n', offset);
    const line = text.slice(offset, newline < 0 ? text.length : newline);
    const remark = remarkOf(line, offset);
    if (remark === null && withoutEmptyCells(line) !== '') break;
    if (remark !== null) {
      const inner = remark.text.replace(/^\s/, '');
      const isStatement = isKey.test(inner) || (statements.length > 0 && goesOn.test(remark.text));
      if (isStatement) statements.push({ text: inner, offset: remark.offset + remark.text.length - inner.length });
    }
    offset += line.length + 1;
  }
  return { statements, end: Math.min(offset, text.length) };
}

/** What follows the `#` that a line begins with, whether or not the line is a quoted cell; null when there is none. */
function remarkOf(line: string, offset: number): Statement | null {
  const quoted = /^"#((?:[^"]|"")*)"/.exec(line);
  if (quoted !== null) return { text: (quoted[1] ?? '').replaceAll('""', '"'), offset: offset + 2 };
  return line.startsWith('#') ? { text: withoutEmptyCells(line.slice(1)), offset: offset + 1 } : null;
}

/** Without the separators that spreadsheets put at a line's end; a comma inside open brackets is none of these. */
function withoutEmptyCells(line: string): string {
  let end = line.length;
  while (end > 0 && ' \t,;'.includes(line[end - 1] ?? '')) end -= 1;
  const text = line.slice(0, end);
  const isOpen = text.split(/[[{]/).length > text.split(/[\]}]/).length;
  return isOpen && line.slice(end).trimStart().startsWith(',') ? `${text},` : text;
}

/** From an offset in the joined statements to one in the file. */
function placing(statements: readonly Statement[]): (offset: number) => number {
  return (offset) => {
    let start = 0;
    for (const statement of statements) {
      if (offset <= start + statement.text.length) return statement.offset + offset - start;
      start += statement.text.length + 1;
    }
    const last = statements.at(-1);
    return last === undefined ? 0 : last.offset + last.text.length;
  };
}
