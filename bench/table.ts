export type Alignment = 'left' | 'right';
export type TableColumn = { readonly title: string; readonly align: Alignment };

/** A plain table: a line of titles, a rule, a line a row; two spaces between columns. Every row has a cell a column. */
export function tableText(columns: readonly TableColumn[], rows: readonly (readonly string[])[]): string {
  const titles = columns.map(({ title }) => title);
  const widths = columns.map((_, index) => Math.max(...[titles, ...rows].map((cells) => (cells[index] ?? '').length)));
  const line = (cells: readonly string[]): string =>
    columns
      .map(({ align }, index) => {
        const [cell, width] = [cells[index] ?? '', widths[index] ?? 0];
        return align === 'left' ? cell.padEnd(width) : cell.padStart(width);
      })
      .join('  ')
      .trimEnd();
  return [line(titles), widths.map((width) => '-'.repeat(width)).join('  '), ...rows.map(line)].join('\n');
}
