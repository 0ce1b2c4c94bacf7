/** Data of files as tables, in any of the ways in which spreadsheets write them. */

type Data = Readonly<Record<string, unknown>>;

export type TableStyle = {
  readonly separator: ',' | ';' | '\t';
  readonly decimalSign: '.' | ',';
  readonly quoteAll: boolean;
  readonly lineEnd: '\n' | '\r\n';
  readonly byteOrderMark: boolean;
  /** How a header is written: it makes no difference. */
  readonly header: (key: string) => string;
  /** Puts the columns into another order. */
  readonly order: (keys: readonly string[]) => readonly string[];
};

/** A board as a table of its pedals, below lines that state the rest. */
export const boardTable = ({ pedals, ...rest }: Data, style: TableStyle): string =>
  tableText(rest, (pedals as readonly Data[]).map(pedalCells), style, style);

/** A catalogue as a table of the banks of its supplies, below lines that state the rest. */
export const catalogueTable = ({ supplies, ...rest }: Data, style: TableStyle): string =>
  tableText(rest, (supplies as readonly Data[]).flatMap(supplyCells), style, style);

function tableText(
  above: Data,
  rows: readonly Data[],
  { lineEnd, byteOrderMark, header, order }: TableStyle,
  style: TableStyle,
): string {
  const keys = order([...new Set(rows.flatMap(Object.keys))]);
  const lines = [
    ...Object.entries(above).map(([key, value]) => `# ${key}: ${JSON.stringify(value)}`),
    keys.map((key) => cellText(header(key), style)).join(style.separator),
    ...rows.map((row) => keys.map((key) => cellText(row[key] ?? '', style)).join(style.separator)),
  ];
  return `${byteOrderMark ? '\uFEFF' : ''}${lines.join(lineEnd)}${lineEnd}`;
}

function cellText(value: unknown, { separator, decimalSign, quoteAll }: TableStyle): string {
  const text = Array.isArray(value)
    ? value.map((item) => numberText(item, decimalSign)).join(' / ')
    : numberText(value, decimalSign);
  const mustQuote = quoteAll || text.includes(separator) || /["\n]/.test(text) || text.trim() !== text;
  return mustQuote ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Three decimals might be thousands: a fourth one tells them apart. */
function numberText(value: unknown, sign: '.' | ','): string {
  if (typeof value !== 'number') return String(value);
  const text = String(value);
  return (/\.\d{3}$/.test(text) ? `${text}0` : text).replace('.', sign);
}

const isData = (value: unknown): value is Data => typeof value === 'object' && value !== null && !Array.isArray(value);
const rangeText = (value: unknown): unknown =>
  isData(value) ? `${String(value['from'])}-${String(value['to'])}` : value;

function pedalCells(pedal: Data): Data {
  const { volts, milliamps, adapter, battery, ...rest } = pedal;
  // One entry by voltage is more than a cell can say without brackets.
  const isMap = isData(milliamps);
  const draws = isMap && Array.isArray(volts) ? volts.map((at) => milliamps[String(at)]) : null;
  const written = isMap
    ? `{${Object.entries(milliamps)
        .map(([at, draw]) => `${at}: ${String(draw)}`)
        .join(', ')}}`
    : milliamps;
  return {
    ...rest,
    battery: isData(battery) ? `${String(battery['count'])} x ${String(battery['type'])}` : '',
    adapter: adapterCell(adapter),
    volts: rangeText(volts ?? ''),
    milliamps: draws ?? written ?? '',
  };
}

const adapterCell = (adapter: unknown): unknown => (isData(adapter) ? rangeText(adapter['mains'] ?? 'yes') : 'no');

/** What concerns the whole supply stands in its first row only. */
function supplyCells(supply: Data): readonly Data[] {
  const { banks, total, mains, charge, ...whole } = supply;
  return (banks as readonly Data[]).map(({ settings, total: bankTotal, joins, ...bank }, index) => {
    const list = (key: string): readonly unknown[] =>
      (settings as readonly Data[]).map((setting) => setting[key]).filter((value) => value !== undefined);
    const wattHours = isData(charge) ? charge['wattHours'] : '';
    const first = {
      ...whole,
      mains: rangeText(mains ?? ''),
      wattHours,
      ...totals(total, 'totalMilliamps', 'totalWatts'),
    };
    return {
      ...(index === 0 ? first : { id: supply['id'] }),
      ...bank,
      volts: list('volts'),
      milliamps: list('milliamps'),
      openCircuitVolts: list('openCircuitVolts'),
      joins: joins ?? '',
      ...totals(bankTotal, 'bankMilliamps', 'bankWatts'),
    };
  });
}

const totals = (total: unknown, milliamps: string, watts: string): Data =>
  isData(total) ? { [milliamps]: total['milliamps'] ?? '', [watts]: total['watts'] ?? '' } : {};
