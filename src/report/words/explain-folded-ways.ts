import { groupBy } from '../../domain/group-by.js';
import type { Change, WayOut } from '../../planning/explain/way-out.js';
import type { FactsContext } from './explain-facts.js';
import { batteryText, changeText, lastingText, outputText, planText } from './explain-ways.js';
import { listText, priceText } from './words.js';

/** Fewer ways of one sort than this are told one by one. */
const fewestFolded = 3;

/** Each way out as a text; many supplies to look for, and many pedals to do without, share one. */
export function wayTexts(told: FactsContext, ways: readonly WayOut[]): readonly string[] {
  const sorts = groupBy(ways, ({ change: { kind } }, at) => (folds[kind] === undefined ? `${at}` : kind));
  return sorts.flatMap((alike) => {
    const fold = folds[alike[0].change.kind];
    if (fold === undefined || alike.length < fewestFolded)
      return alike.map((way) => `${changeText(told, way.change)} ${planText(told, way)}`);
    return [`${fold(told, alike)} ${plansText(told, alike)}`];
  });
}

/** What of these changes differs is listed in one sentence. */
const folds: Partial<Readonly<Record<Change['kind'], (told: FactsContext, ways: readonly WayOut[]) => string>>> = {
  supply: (told, ways) => `Find one more supply for any one of these pedals: ${outputsText(told, ways)}.`,
  inlet: (told, ways) => `Find one more supply for the inlet of any one of these: ${outputsText(told, ways)}.`,
  battery: (told, ways) => {
    const each = ways.flatMap(({ change }) =>
      change.kind === 'battery' ? [`${namesIn(told, change)}, ${batteryText(change)}`] : [],
    );
    return `Find batteries for any one of these pedals: ${each.join('; ')}. They ${lastingText(told.board.policy)}.`;
  },
  pedal: (told, ways) =>
    `Leave out any one of ${listText(
      ways.map(({ change }) => namesIn(told, change)),
      'or',
    )}.`,
};

function outputsText(told: FactsContext, ways: readonly WayOut[]): string {
  const each = ways.flatMap(({ change }) =>
    change.kind === 'supply' || change.kind === 'inlet'
      ? [`${namesIn(told, change)}, ${outputText(change.supply)}`]
      : [],
  );
  return each.join('; ');
}

/** Those that the change is for. */
function namesIn({ inventory }: FactsContext, change: Change): string {
  if (change.kind === 'inlet') return inventory.supplyName(change.of);
  const pedals = change.kind === 'pedal' ? change.pedals : 'pedal' in change ? [change.pedal] : [];
  return listText(pedals.map(inventory.pedalName), 'or');
}

/** What the plans come to: of different ones from the cheapest, with what it is for, to the dearest. */
function plansText(told: FactsContext, [first, ...others]: readonly [WayOut, ...WayOut[]]): string {
  const text = planText(told, first);
  if (others.every((way) => planText(told, way) === text)) return text;
  const isDearer = (one: WayOut, other: WayOut): boolean => one.wiring.score.money > other.wiring.score.money;
  const cheapest = others.reduce((best, way) => (isDearer(best, way) ? way : best), first);
  const dearest = others.reduce((most, way) => (isDearer(way, most) ? way : most), first);
  const [least, most] = [cheapest, dearest].map(({ wiring }) => priceText(wiring.score.money, told.board));
  const range = isDearer(dearest, cheapest) ? ` (${namesIn(told, cheapest.change)}) to ${most ?? ''}` : '';
  return `Then there is a plan for ${least ?? ''}${range}.`;
}
