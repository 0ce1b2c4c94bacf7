import { columnsOf, type CellKind, type TableKind } from './columns.js';

/** What a heading says of the cells below it. */
export type Heading = {
  /** The key of the column. */
  readonly key: string;
  /** The unit of figures without one; null where it is the plain unit of the key. */
  readonly unit: 'A' | null;
  /** Whether nothing says if figures without a unit are mA or A. */
  readonly isVague: boolean;
};

/** What headings mean that are not understood, as somebody has said: the key of a column, or `nothing`. */
export type Meanings = Readonly<Record<string, string>>;

/** What limits nothing, and is not used. */
export const meansNothing = 'nothing';

/** A heading as it is compared: capitals, blanks and punctuation make no difference. */
export const plainHeading = (text: string): string => text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '');

/** What a heading means; null when it is none that is known. Near spellings are not taken for what they are near to. */
export function headingOf(kind: TableKind, text: string, meanings: Meanings = {}): Heading | null {
  const { base, unit } = partsOf(text);
  const keys = Object.keys(columnsOf[kind]);
  const key =
    keys.find((one) => Object.hasOwn(meanings, text) && one === meanings[text]) ??
    keys.find((one) => one.toLowerCase() === plainHeading(text)) ??
    keys.find((one) => one.toLowerCase() === base && bears(columnsOf[kind][one], unit)) ??
    keys.find((one) => trade[kind][one]?.includes(base) === true && bears(columnsOf[kind][one], unit)) ??
    keys.find((one) => withUnit[kind][one]?.includes(`${base} ${unit ?? ''}`) === true);
  if (key === undefined) return null;
  const isCurrent = columnsOf[kind][key] === 'current' || columnsOf[kind][key] === 'currents';
  const isAmps = isCurrent && (unit === 'a' || /\bamp(?:s|ere?s?)?\b/i.test(text));
  return { key, unit: isAmps ? 'A' : null, isVague: isCurrent && !isAmps && unit === null && !/milliamp/i.test(text) };
}

type HeadingParts = { readonly base: string; readonly unit: string | null };

const unitBehind = /^(.*?)(?:[([]\s*(?:in\s+)?|\bin\s+|(?:^|\s))(mA|A|VDC|V\s*DC|V|W)\s*[)\]]?\s*$/i;
const currencyBehind = /^(.*?)(?:[([]\s*|\bin\s+|\s)(?:\p{Sc}|[A-Z]{3})\s*[)\]]?\s*$/u;

function partsOf(text: string): HeadingParts {
  const [, before, unit] = unitBehind.exec(text) ?? [];
  if (before !== undefined && unit !== undefined)
    return { base: plainHeading(before), unit: unit.toLowerCase().replace(/^v.*/, 'v') };
  const [, price] = currencyBehind.exec(text) ?? [];
  if (price !== undefined && plainHeading(price) !== '') return { base: plainHeading(price), unit: 'money' };
  return { base: plainHeading(text), unit: null };
}

/** Whether figures of that kind may have that unit in their heading. */
const bears = (kind: CellKind | undefined, unit: string | null): boolean =>
  unit === null || (kind !== undefined && (unitsOf[kind] ?? []).includes(unit));

const unitsOf: Partial<Readonly<Record<CellKind, readonly string[]>>> = {
  current: ['ma', 'a'],
  currents: ['ma', 'a'],
  voltage: ['v'],
  voltages: ['v'],
  accepts: ['v'],
  range: ['v'],
  watts: ['w'],
  money: ['money'],
};

type Names = Readonly<Record<string, readonly string[]>>;

const ids = ['sku', 'itemno', 'itemnumber', 'articleno', 'articlenumber', 'artno', 'productcode', 'code', 'ref'];
const volts = ['v', 'voltage', 'voltages', 'vdc', 'voltsdc', 'dcvolts'];
const draws = ['ma', 'amps', 'amp', 'current', 'draw', 'currentdraw', 'maxcurrent', 'consumption'];

/** Headings of the trade by the keys that they mean, as `plainHeading` has them. */
const trade: Readonly<Record<TableKind, Names>> = {
  pedals: {
    id: ids,
    name: ['pedal', 'effect', 'model', 'article', 'item', 'product', 'title'],
    power: ['acdc', 'dcac', 'powertype'],
    polarity: ['plugpolarity', 'tip', 'centre', 'center', 'centrepin', 'centerpin'],
    inlet: ['plug', 'connector', 'socket', 'powerinlet', 'dcinlet', 'powerjack', 'dcjack'],
    ground: ['chassis', 'chassisground'],
    volts,
    prefers: ['preferredvolts', 'preferred', 'preferredvoltage'],
    maxVolts: ['maximumvolts', 'maxvoltage', 'maximumvoltage'],
    milliamps: draws,
    startup: ['inrush', 'startupcurrent', 'inrushcurrent'],
    figure: ['readfrom'],
    circuit: ['kind', 'circuitkind'],
    later: ['boughtlater'],
    battery: ['batteries', 'batterytype'],
    adapter: ['ownadapter', 'adaptermains', 'walladapter'],
    alone: ['isolated', 'ownoutput'],
  },
  supplies: {
    id: ids,
    name: ['article', 'item', 'product', 'title', 'model', 'supply'],
    price: ['retail', 'rrp', 'unitprice', 'retailprice', 'saleprice'],
    stock: ['instock', 'qty', 'quantity', 'onhand', 'available'],
    mains: ['input', 'inputvoltage', 'mainsvoltage', 'mainsvolts', 'inputvolts'],
    wattHours: ['wh', 'capacitywh', 'charge'],
    regulated: ['stabilised', 'stabilized'],
    totalMilliamps: ['totalcurrent', 'totaloutputcurrent', 'maxtotalcurrent', 'totalamps'],
    totalWatts: ['totalpower', 'totaloutputpower', 'maxtotalpower'],
    outputs: ['noofoutputs', 'numberofoutputs', 'outputcount', 'outs'],
    isolated: ['isolatedoutputs'],
    power: ['acdc', 'dcac', 'powertype'],
    plug: ['connector', 'outputplug', 'plugtype'],
    polarity: ['plugpolarity', 'tip', 'centre', 'center', 'centrepin', 'centerpin'],
    switch: ['switching'],
    volts: [...volts, 'outputvoltage', 'outputvolts'],
    // A bare "Current" may be that of one output or of all: it is not taken for either.
    milliamps: ['outputcurrent', 'currentperoutput', 'outputamps', 'ampsperoutput'],
    openCircuitVolts: ['opencircuit', 'opencircuitvoltage', 'noloadvolts', 'noloadvoltage'],
    bankMilliamps: ['bankcurrent'],
    bankWatts: ['bankpower'],
    reverses: ['reversing'],
    remark: ['remarks', 'note', 'notes', 'comment', 'comments'],
  },
};

/** Headings that say nothing without their unit. */
const withUnit: Readonly<Record<TableKind, Names>> = {
  pedals: {
    volts: [' v'],
    milliamps: [' ma', ' a', 'max ma', 'max a'],
    maxVolts: ['max v'],
    startup: ['peak ma', 'peak a'],
  },
  supplies: {
    volts: [' v', 'output v'],
    milliamps: ['output ma', 'output a', 'peroutput ma', 'peroutput a'],
    totalMilliamps: ['total ma', 'total a', 'maxtotal ma', 'maxtotal a', 'totaloutput ma', 'totaloutput a'],
    totalWatts: ['total w', 'maxtotal w', 'totaloutput w'],
    bankMilliamps: ['bank ma', 'bank a'],
    bankWatts: ['bank w'],
    mains: ['input v', 'mains v'],
    openCircuitVolts: ['opencircuit v', 'noload v'],
  },
};

/** The kind of table whose columns the headings name; of pedals when it could be either. */
export function tableKindOf(headings: readonly string[]): TableKind {
  const known = (kind: TableKind): number => headings.filter((heading) => headingOf(kind, heading) !== null).length;
  return known('supplies') > known('pedals') ? 'supplies' : 'pedals';
}

/** Whether a heading that is not understood speaks of electricity, and so may hold a limit. */
export const mayBeLimit = (text: string): boolean =>
  /\b(?:mA|mAh|A|VA?|W|V?DC|V?AC)\b|amp|volt|watt|current|power|load|limit|output|polarit|ground|isolat/i.test(text);
