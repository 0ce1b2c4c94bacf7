import type { RawPart } from '../schema/schema-part.js';
import type { RawPedal } from '../schema/schema-pedal.js';
import type { RawBank, RawSetting, RawSupply, RawTotal } from '../schema/schema-supply.js';

/** How the text of a cell is understood. Each may have the unit that it stands for written out. */
export type CellKind =
  | 'text'
  /** A word of a fixed few, whatever its capitals and blanks. */
  | 'word'
  | 'words'
  | 'polarity'
  | 'connector'
  | 'flag'
  | 'count'
  | 'money'
  /** A single voltage, current or power. */
  | 'voltage'
  | 'current'
  | 'watts'
  | 'wattHours'
  /** Volts between two ends, or one voltage. */
  | 'range'
  /** The adapter that a pedal came with: its mains volts, or yes. */
  | 'adapter'
  /** The batteries that a pedal takes: "9V-block", "2 × AA". */
  | 'battery'
  /** By what a fed supply hangs on another one, written out as YAML does. */
  | 'inlet'
  /** All that a pedal accepts: one voltage, several, or a range. */
  | 'accepts'
  /** One for each setting. */
  | 'voltages'
  | 'currents';

/** The kinds of tables: one row a pedal; or one row a bank of a supply, a lead or a battery. */
export type TableKind = 'pedals' | 'supplies';

/** A kind for every key that a file has, and for no other: a field that the schemas know is asked for here. */
type Of<Key extends string> = Readonly<Record<Key, CellKind>>;

/** The columns that a table of pedals may have, by the keys of a pedal. */
const ofPedals = {
  id: 'text',
  name: 'text',
  power: 'word',
  polarity: 'polarity',
  inlet: 'connector',
  ground: 'word',
  volts: 'accepts',
  prefers: 'voltage',
  maxVolts: 'voltage',
  milliamps: 'currents',
  startup: 'current',
  figure: 'word',
  circuit: 'word',
  digital: 'flag',
  highGain: 'flag',
  alone: 'flag',
  later: 'flag',
  adapter: 'adapter',
  battery: 'battery',
} as const satisfies Of<keyof RawPedal>;

/** Those of a table of supplies that concern the whole supply, by its keys; its total in a column for each unit. */
const ofSupplies = {
  id: 'text',
  name: 'text',
  price: 'money',
  stock: 'count',
  mains: 'range',
  wattHours: 'wattHours',
  inlet: 'inlet',
  regulated: 'flag',
  totalMilliamps: 'current',
  totalWatts: 'watts',
} as const satisfies Of<
  | Exclude<keyof RawSupply, 'charge' | 'total' | 'banks' | 'assumed'>
  | 'wattHours'
  | `total${Capitalize<keyof RawTotal>}`
>;

/** Those that concern one bank; volts, milliamps and openCircuitVolts have one entry for each setting. */
const ofBanks = {
  outputs: 'count',
  isolated: 'flag',
  power: 'word',
  plug: 'connector',
  polarity: 'polarity',
  switch: 'word',
  volts: 'voltages',
  milliamps: 'currents',
  openCircuitVolts: 'voltages',
  joins: 'words',
  bankMilliamps: 'current',
  bankWatts: 'watts',
} as const satisfies Of<
  Exclude<keyof RawBank, 'settings' | 'total'> | keyof RawSetting | `bank${Capitalize<keyof RawTotal>}`
>;

/** Those of leads beside id, name, price and stock; what it joins stands under `joins`. */
const ofParts = { fits: 'connector', gives: 'connector', reverses: 'flag', tails: 'count' } as const satisfies Of<
  Exclude<keyof RawPart, 'id' | 'name' | 'price' | 'stock' | 'joins' | 'assumed'>
>;

/** A column that a table of supplies may have. */
export type SupplyColumn = keyof typeof ofSupplies | keyof typeof ofBanks | keyof typeof ofParts | 'remark';

type Columns = Readonly<Record<string, CellKind>>;

export const columnsOf: Readonly<Record<TableKind, Columns>> = {
  pedals: ofPedals,
  supplies: { ...ofSupplies, ...ofBanks, ...ofParts, remark: 'text' },
};

export const supplyColumns: readonly string[] = Object.keys(ofSupplies);
export const bankColumns: readonly string[] = Object.keys(ofBanks);
export const partColumns: readonly string[] = ['id', 'name', 'price', 'stock', 'joins', ...Object.keys(ofParts)];

const ofLimits: ReadonlySet<CellKind> = new Set(['accepts', 'voltage', 'voltages', 'current', 'currents', 'watts']);

/** Whether what stands in a column limits what can be plugged; what is preferred does not. */
export const limits = (kind: TableKind, key: string): boolean =>
  ['outputs', 'isolated'].includes(key) || (key !== 'prefers' && ofLimits.has(columnsOf[kind][key] ?? 'text'));

/** Without these there is no telling what a row is about. */
export const neededColumns: Readonly<Record<TableKind, readonly string[]>> = {
  pedals: ['name', 'volts', 'milliamps'],
  supplies: ['name', 'price', 'outputs', 'volts', 'milliamps'],
};

/** Those that a table of nothing but leads needs. */
export const neededOfParts: readonly string[] = ['name', 'price'];
