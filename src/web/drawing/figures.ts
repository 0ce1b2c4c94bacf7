import { unitDescription } from '../../report/drawing/describe.js';
import { drawnUnits } from '../../report/drawing/drawings.js';
import { narrowScenes } from '../../report/drawing/narrow.js';
import { svgOf } from '../../report/drawing/svg.js';
import { wideScenes } from '../../report/drawing/wide.js';
import type { PlanHandout } from '../../report/words/handout.js';

/** One supply with all that hangs on it, drawn for a wide place and for a narrow one: SVG that is escaped already. */
export type Figure = { readonly name: string; readonly owned: boolean; readonly wide: string; readonly narrow: string };

/** The drawings of a plan, in the order of hooking up. */
export function figuresOf(handout: PlanHandout): readonly Figure[] {
  const units = drawnUnits(handout);
  const [wide, narrow] = [wideScenes(units, 'all'), narrowScenes(units)];
  return handout.hookup.flatMap((unit, at) => {
    const words = { title: `Wiring of ${unit.name}`, description: unitDescription(unit, handout.rows) };
    const [broad, slim] = [wide[at], narrow[at]];
    if (broad === undefined || slim === undefined) return [];
    return {
      name: unit.name,
      owned: unit.unit.owned,
      wide: svgOf(broad, { ...words, id: `wide-${at}` }, 'wide').markup,
      narrow: svgOf(slim, { ...words, id: `narrow-${at}` }, 'narrow').markup,
    };
  });
}
