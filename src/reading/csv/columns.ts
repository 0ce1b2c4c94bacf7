/** How the text of a cell is understood. */
export type CellKind = 'text' | 'number' | 'numbers' | 'volts' | 'range' | 'flag' | 'words';

/** The kinds of tables: one row a pedal, or one row a bank of a supply. */
export type TableKind = 'pedals' | 'supplies';

/** The columns that a table of pedals may have, by the keys of a pedal. */
const ofPedals = {
  id: 'text',
  name: 'text',
  power: 'text',
  polarity: 'text',
  inlet: 'text',
  ground: 'text',
  volts: 'volts',
  prefers: 'number',
  maxVolts: 'number',
  milliamps: 'numbers',
  startup: 'number',
  figure: 'text',
  digital: 'flag',
  highGain: 'flag',
  alone: 'flag',
} as const;

/** Those of a table of supplies that concern the whole supply, by its keys; its total in a column for each unit. */
const ofSupplies = {
  id: 'text',
  name: 'text',
  price: 'number',
  stock: 'number',
  mains: 'range',
  regulated: 'flag',
  totalMilliamps: 'number',
  totalWatts: 'number',
} as const;

/** Those that concern one bank; volts, milliamps and openCircuitVolts have one entry for each setting. */
const ofBanks = {
  outputs: 'number',
  isolated: 'flag',
  power: 'text',
  plug: 'text',
  polarity: 'text',
  switch: 'text',
  volts: 'numbers',
  milliamps: 'numbers',
  openCircuitVolts: 'numbers',
  joins: 'words',
  bankMilliamps: 'number',
  bankWatts: 'number',
} as const;

type Columns = Readonly<Record<string, CellKind>>;

export const columnsOf: Readonly<Record<TableKind, Columns>> = {
  pedals: ofPedals,
  supplies: { ...ofSupplies, ...ofBanks },
};

export const supplyColumns: readonly string[] = Object.keys(ofSupplies);

/** Without these there is no telling what a row is about. */
export const neededColumns: Readonly<Record<TableKind, readonly string[]>> = {
  pedals: ['name', 'volts', 'milliamps'],
  supplies: ['name', 'price', 'outputs', 'isolated', 'volts', 'milliamps'],
};

/** A header as it is compared: capitals, blanks, hyphens and underscores make no difference. */
export const plainHeader = (text: string): string => text.toLowerCase().replace(/[\s_-]+/gu, '');

/** The key of the column that a header names; null when the table has no such column. */
export const columnNamed = (kind: TableKind, header: string): string | null =>
  Object.keys(columnsOf[kind]).find((key) => key.toLowerCase() === plainHeader(header)) ?? null;

/** The kind of table whose columns the header names; of pedals when it could be either. */
export function tableKindOf(headers: readonly string[]): TableKind {
  const known = (kind: TableKind): number => headers.filter((header) => columnNamed(kind, header) !== null).length;
  return known('supplies') > known('pedals') ? 'supplies' : 'pedals';
}
