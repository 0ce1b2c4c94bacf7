import type { PolarityOrUnknown } from '../../domain/pedal.js';
import { isOfOnePedal } from '../../domain/source.js';
import { isOwnedUnit, withOwnership } from '../words/hookup.js';
import { loadLegend } from '../words/load-legend.js';
import { firstBankOf, isFedByOwn } from '../words/inventory.js';
import { beside, block, gap, indent, type Cell, type Piece } from './layout.js';
import { outputRows, type OutputRow } from './output-rows.js';
import { barPiece, type Screen } from './screen.js';
import { socketsTaken, unitTitle, type UnitUse } from '../words/usage.js';
import { meterText } from '../words/words.js';

const outputsWidth = 5;
const voltsWidth = 6;
const figuresWidth = 20;
const barWidth = 18;
/** From this width on a pedal, its leads and its load stand on one line. */
const wideFrom = 112;

/** Every supply unit in use, with its outputs in order. */
export function pluggingLines(screen: Screen, units: readonly UnitUse[]): string[] {
  const { paints, width } = screen;
  const legend = legendTexts(screen, units).map((text) => ({ text, paint: paints.faint }));
  return [
    ...block(legend, width, indent),
    ...units.flatMap((unit) => ['', ...unitTable(screen, units, unit, outputRows(screen, unit))]),
  ];
}

/** The rows of one unit below its name. */
export function unitTable(
  screen: Screen,
  units: readonly UnitUse[],
  unit: UnitUse,
  rows: readonly OutputRow[],
): string[] {
  const { inventory, paints, width } = screen;
  const title = withOwnership(unitTitle(inventory, units, unit), isOwnedUnit(unit));
  const head = block([{ text: title, paint: paints.strong }], width, indent);
  // What is one pedal's alone has nothing to choose and nothing to compare.
  if (isOfOnePedal(unit.supply.source))
    return [
      ...head,
      ...block(
        rows.flatMap(({ detail }) => detail),
        width,
        indent,
      ),
    ];
  return [...head, ...headerLines(screen), ...rows.flatMap((row) => rowLines(screen, row))];
}

function headerLines(screen: Screen): string[] {
  const head = (text: string): readonly Piece[] => [{ text, paint: screen.paints.faint }];
  const middle = isWide(screen)
    ? [head('Pedal'), head('Leads, and the plug at the pedal')]
    : [head('Pedal, and the leads to it')];
  return lineUp(screen, [head('Out'), head('Volts'), ...middle, head('Load with reserve')]);
}

function rowLines(screen: Screen, { outputs, volts, what, detail, meter }: OutputRow): string[] {
  const middle = isWide(screen) ? [[what], detail] : [[what, ...detail]];
  const figures: readonly Piece[] = meter === null ? [] : [{ text: meterText(meter) }];
  const bar: readonly Piece[] = meter === null ? [] : [barPiece(screen, meter)];
  const load = isWide(screen) ? [figures, bar] : [[...figures, ...bar]];
  return lineUp(screen, [[{ text: outputs }], volts.map((text) => ({ text })), ...middle, ...load]);
}

const isWide = ({ width }: Screen): boolean => width >= wideFrom;

/** The columns of the table; what the fixed ones leave goes to the pedals and the leads. */
function lineUp(screen: Screen, cells: readonly (readonly Piece[])[]): string[] {
  const fixed = outputsWidth + voltsWidth + figuresWidth;
  const widths = isWide(screen)
    ? wideWidths(screen.width - indent - 5 * gap - fixed - barWidth)
    : [outputsWidth, voltsWidth, screen.width - indent - 3 * gap - fixed, figuresWidth];
  const columns = cells.map((pieces, at): Cell => ({ pieces, width: widths[at] ?? figuresWidth }));
  return beside(columns, indent, gap);
}

function wideWidths(left: number): readonly number[] {
  const pedal = Math.floor(left * 0.4);
  return [outputsWidth, voltsWidth, pedal, left - pedal, figuresWidth, barWidth];
}

const legendOf: Readonly<Record<PolarityOrUnknown, string>> = {
  'centre-negative':
    "Centre-negative: minus on the plug's pin, plus on its sleeve (on a jack plug, the tip is the pin).",
  'centre-positive':
    "Centre-positive: plus on the plug's pin, minus on its sleeve (on a jack plug, the tip is the pin).",
  unknown: 'Two ways: the label of the pedal says which one is right. Read it before anything is plugged into it.',
};

function socketsText(units: readonly UnitUse[]): string {
  const taken = socketsTaken(units);
  if (taken === 0) return 'No mains socket is needed.';
  return `Mains sockets needed: ${taken}, one for each supply${taken < units.length ? ' on the mains' : ''}.`;
}

/** Explains only the words that the tables below use. */
function legendTexts(screen: Screen, units: readonly UnitUse[]): readonly string[] {
  const { marks } = screen;
  const feeds = units.flatMap(({ outputs }) => outputs.flatMap((use) => use.feeds));
  const switched = units.some(({ supply, outputs }) =>
    outputs.some(({ feeds: [feed] }) => firstBankOf(supply, feed).settings.length > 1),
  );
  const polarities = new Set(feeds.map((feed) => (isFedByOwn(screen.inventory, feed) ? null : feed.polarity)));
  const boxes = units.filter(({ supply }) => !isOfOnePedal(supply.source));
  if (boxes.length === 0) return [socketsText(units)];
  return [
    socketsText(units),
    `Own lead: the straight lead that comes with the supply. ${marks.arrow} shows the order from supply to pedal.`,
    ...(switched ? ['Switch: set that output, or its bank, to these volts first.'] : []),
    ...[...polarities].flatMap((polarity) => (polarity === null ? [] : [legendOf[polarity]])),
    loadLegend(screen, units),
  ];
}
