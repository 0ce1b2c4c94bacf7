/** The cells of a CSV text as RFC 4180 has it. @throws Error where it is not. */
export function readCsv(text: string): readonly (readonly string[])[] {
  const rows: string[][] = [];
  let rest = text;
  while (rest !== '') {
    const row: string[] = [];
    for (;;) {
      const match = /^(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/.exec(rest);
      if (match === null) throw new Error(`no cell at: ${rest.slice(0, 80)}`);
      const [whole, quoted, bare = '', end = ''] = match;
      row.push(quoted === undefined ? bare : quoted.replaceAll('""', '"'));
      rest = rest.slice(whole.length);
      if (end !== ',') break;
    }
    rows.push(row);
  }
  return rows;
}
