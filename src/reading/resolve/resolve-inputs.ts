import type { Board, Catalogue } from '../../domain/board.js';
import { entriesAt, entryAt, type Entry, type Sheet } from './entry.js';
import { findingAt, type Finding, type Report } from '../../domain/finding.js';
import { currencyNames, currencyOf, type Currency } from '../../domain/money.js';
import { nearSpelling } from '../../domain/near-spelling.js';
import { ownBatteryOf } from '../../domain/own-battery.js';
import type { Part } from '../../domain/part.js';
import type { Pedal } from '../../domain/pedal.js';
import type { PartId, SupplyId } from '../../domain/quantities.js';
import { shelfOf, type Called, type Found } from './resolve-for-sale.js';
import type { SeenIds } from './resolve-id.js';
import { resolveBattery } from './resolve-battery.js';
import { resolveOwned } from './resolve-owned.js';
import { resolveOwnAdapters } from './resolve-own-adapter.js';
import { resolvePart } from './resolve-part.js';
import { resolvePedal } from './resolve-pedal.js';
import { resolvePolicy } from './resolve-policy.js';
import { resolveSpares } from './resolve-spares.js';
import { resolveSupply } from './resolve-supply.js';
import type { Connectable } from './connectable.js';
import { resolveWiring } from './resolve-wiring.js';
import type { RawBoard } from '../schema/schema-board.js';
import type { RawBattery } from '../schema/schema-battery.js';
import type { RawCatalogue } from '../schema/schema-catalogue.js';
import type { RawPart } from '../schema/schema-part.js';
import type { RawPedal, RawPedalAssumptions } from '../schema/schema-pedal.js';
import type { RawSupply, RawSupplyAssumptions } from '../schema/schema-supply.js';
import { quoted } from '../../domain/shown-text.js';
import type { Supply } from '../../domain/supply.js';

/** The sheets of the two files: null when there is none to work on, because its text was reported. */
type Sheets = { readonly board: Sheet | null; readonly catalogue: Sheet | null | 'not given' };

/** The board and the catalogue, or what is wrong with them beyond what breaks their schemas. */
export type Resolved = {
  /**
   * Null when it cannot be made. What stands beside findings about its file is no board to plan with: it lacks what they are
   * about, and serves to look at the other file.
   */
  readonly board: Board | null;
  readonly catalogue: Catalogue | null;
  readonly findings: readonly Finding[];
};

/** Turns both files into domain types. Finds everything that is wrong, not only the first thing. */
export function resolveInputs({ board, catalogue }: Sheets): Resolved {
  const findings: Finding[] = [];
  const report: Report = (spot, words, point) => void findings.push(findingAt(spot, words, point));
  const catalogueSheet = catalogue === 'not given' ? null : catalogue;
  const boardCurrency = board === null ? null : resolveCurrency(board, report);
  const catalogueCurrency = catalogueSheet === null ? null : resolveCurrency(catalogueSheet, report);
  if (boardCurrency !== null && catalogueCurrency !== null) {
    reportDifferentCurrencies(boardCurrency, catalogueCurrency, report);
  }
  const seen = { supplies: new Map(), parts: new Map() };
  const forSale =
    catalogueSheet === null ? nothing : goodsOf(catalogueSheet, [], { currency: catalogueCurrency, seen, report });
  const surroundings: Surroundings = {
    forSale: { ...forSale, complete: catalogue !== null && forSale.complete },
    hasCatalogue: catalogue !== 'not given',
    seen,
  };
  return {
    catalogue: catalogueSheet === null ? null : resolveCatalogue(catalogueSheet, forSale, catalogueCurrency),
    board: board === null ? null : resolveBoard(board, boardCurrency, surroundings, report),
    findings,
  };
}

/** What a board is resolved with. */
type Surroundings = { readonly forSale: Goods; readonly hasCatalogue: boolean; readonly seen: Seen };

/** Supplies and parts of one list. */
type Goods = {
  readonly supplies: readonly Called<SupplyId, Supply>[];
  readonly parts: readonly Called<PartId, Part>[];
  /** False when a list as a whole was reported. */
  readonly complete: boolean;
};

const nothing: Goods = { supplies: [], parts: [], complete: true };

type Seen = { readonly supplies: SeenIds; readonly parts: SeenIds };

/** The goods of a catalogue, whose path is empty, or of a board's gear, which is not for sale. */
function goodsOf(
  sheet: Sheet,
  path: readonly string[],
  { currency, seen, report }: { readonly currency: Currency | null; readonly seen: Seen; readonly report: Report },
): Goods {
  const forSale = sheet.source === 'catalogue';
  const holder = entryAt<{ supplies: unknown; parts: unknown; batteries: unknown }>(sheet, path);
  const assumptions = forSale ? entryAt<RawSupplyAssumptions>(sheet, ['assume']) : null;
  const supplies = entriesAt<RawSupply>(sheet, [...path, 'supplies']);
  const parts = entriesAt<RawPart>(sheet, [...path, 'parts']);
  const batteries = entriesAt<RawBattery>(sheet, [...path, 'batteries']);
  const isList = (field: 'supplies' | 'parts' | 'batteries', entries: readonly unknown[]) =>
    entries.length > 0 || !holder.isBroken(field);
  return {
    supplies: supplies.map((entry) =>
      called(entry, resolveSupply(sheet, entry, assumptions, { currency, forSale, seen: seen.supplies, report })),
    ),
    parts: [
      ...parts.map((entry) => called(entry, resolvePart(entry, { currency, forSale, seen: seen.parts, report }))),
      ...batteries.map((entry) =>
        called(entry, resolveBattery(entry, { currency, forSale, seen: seen.parts, report })),
      ),
    ],
    complete: isList('supplies', supplies) && isList('parts', parts) && isList('batteries', batteries),
  };
}

const called = <Id, Thing>(
  { fields }: Entry<{ readonly name: string }>,
  found: Found<Id, Thing>,
): Called<Id, Thing> => ({ ...found, name: fields.name ?? null });

function resolveCatalogue(sheet: Sheet, goods: Goods, currency: Currency | null): Catalogue | null {
  const name = entryAt<RawCatalogue>(sheet, []).fields.catalogue;
  const supplies = allThings(goods.supplies);
  const parts = allThings(goods.parts);
  if (name === undefined || currency === null || supplies === null || parts === null) return null;
  return { name, currency, supplies, parts };
}

function resolveBoard(
  sheet: Sheet,
  currency: Currency | null,
  { forSale, hasCatalogue, seen }: Surroundings,
  report: Report,
): Board | null {
  const entry = entryAt<RawBoard>(sheet, []);
  const gear = goodsOf(sheet, ['gear'], { currency, seen, report });
  const pedals = resolvePedals(sheet, report);
  const policy = resolvePolicy(
    sheet,
    pedals.entries.map(({ fields }) => fields),
    currency,
    report,
  );
  const complete = forSale.complete && gear.complete;
  const own = [
    ...resolveOwnAdapters(sheet, pedals.found, seen.supplies, report),
    ...ownBatteries(pedals.found, [...gear.parts, ...forSale.parts]),
  ];
  const connectable: Omit<Connectable, 'owned'> = {
    pedals: shelfOf(pedals.found, !entry.isBroken('pedals') || pedals.entries.length > 0),
    supplies: shelfOf([...forSale.supplies, ...gear.supplies, ...own], complete),
    parts: shelfOf([...forSale.parts, ...gear.parts], complete),
    hasCatalogue,
  };
  const owned = withOwnSupplies(resolveOwned(sheet, connectable, report), own);
  const wiring = resolveWiring(sheet, { ...connectable, owned }, report);
  const gearSupplies = allThings([...gear.supplies, ...own]);
  const gearParts = allThings(gear.parts);
  const allPedals = allThings(pedals.found);
  const name = entry.fields.board;
  if (name === undefined || currency === null || policy === null || allPedals === null || wiring === null) return null;
  if (owned === null || gearSupplies === null || gearParts === null) return null;
  return {
    name,
    currency,
    policy,
    pedals: allPedals,
    gear: { supplies: gearSupplies, parts: gearParts },
    owned,
    ...wiring,
    ...(entry.fields.wiring?.length === 0 && { isUnplugged: true }),
  };
}

/** Every set of batteries that a pedal takes, as a supply by itself. */
const ownBatteries = (
  pedals: readonly Found<unknown, Pedal>[],
  parts: readonly Found<unknown, Part>[],
): readonly Called<SupplyId, Supply>[] =>
  pedals.flatMap(({ thing: pedal }) =>
    parts.flatMap(({ thing: part }) => {
      const supply = pedal === null || part === null ? null : ownBatteryOf(pedal, part);
      return supply === null ? [] : [{ id: supply.id, name: null, thing: supply }];
    }),
  );

/** Of what belongs to one pedal there is one. */
const withOwnSupplies = (owned: Board['owned'] | null, own: readonly Called<SupplyId, Supply>[]) =>
  owned === null
    ? null
    : {
        ...owned,
        supplies: new Map([...owned.supplies, ...own.flatMap(({ id }) => (id === null ? [] : [[id, 1] as const]))]),
      };

function resolvePedals(
  sheet: Sheet,
  report: Report,
): { readonly entries: readonly Entry<RawPedal>[]; readonly found: readonly Called<Pedal['id'], Pedal>[] } {
  const assumptions = entryAt<RawPedalAssumptions>(sheet, ['assume']);
  const seen: SeenIds = new Map();
  const entries = entriesAt<RawPedal>(sheet, ['pedals']);
  const found = entries.map((entry) => called(entry, resolvePedal(entry, assumptions, seen, report)));
  // Places kept for whatever comes have no name that a file could call them by.
  const spares = resolveSpares(sheet, seen, report).map((spare) => ({ ...spare, name: null }));
  return { entries, found: [...found, ...spares] };
}

function allThings<Thing>(found: readonly Found<unknown, Thing>[]): readonly Thing[] | null {
  const things = found.map(({ thing }) => thing);
  return things.every((thing) => thing !== null) ? things : null;
}

function resolveCurrency(sheet: Sheet, report: Report): Currency | null {
  const entry = entryAt<{ currency: string }>(sheet, []);
  const code = entry.fields.currency;
  if (code === undefined) return null;
  const currency = currencyOf(code);
  if (currency === null) {
    report(entry.spotOf('currency'), () => {
      const near = nearSpelling(code, currencyNames());
      return {
        message: `found ${quoted(code)}; it must be an ISO 4217 code in capitals, such as EUR.`,
        remedy: near === null ? 'Write the three capital letters of the currency.' : `Did you mean ${near}?`,
      };
    });
  }
  return currency;
}

function reportDifferentCurrencies(board: Currency, catalogue: Currency, report: Report): void {
  if (board.code === catalogue.code) return;
  report({ source: 'catalogue', path: ['currency'] }, (lineOf) => ({
    message: `found ${catalogue.code}, but the board's currency is ${board.code} (${lineOf({ source: 'board', path: ['currency'] })}); both must be the same.`,
    remedy: `Write the prices of the catalogue in ${board.code}, or the money of the board in ${catalogue.code}.`,
  }));
}
