import { batteryEntry } from '../../reading/drafts/battery-draft.js';
import { dataOf } from '../../reading/drafts/entry.js';
import { leadEntry } from '../../reading/drafts/lead-draft.js';
import { withSection } from '../../reading/drafts/section.js';
import { withAppended } from '../../reading/drafts/set-value.js';
import { supplyEntry } from '../../reading/drafts/supply-draft.js';
import { idFromName } from '../../reading/resolve/resolve-id.js';
import type { OwnedLine } from '../../reading/typed/owned-line.js';
import { owningAnother, owningMore } from './change-supplies.js';
import type { PageDocument } from './page-document.js';
import type { Data } from '../../reading/text/data.js';
import { flowText } from '../../reading/text/yaml-text.js';

type Change = (document: PageDocument) => PageDocument;

/** Something that was understood. */
export type Told = Exclude<OwnedLine, { kind: 'unclear' }>;

/** What no shop lists is described by the board, and owned; the document stays as it is where its text has no room. */
export const owningTyped =
  (told: Told): Change =>
  (document) => {
    const { list, entry, owning } = thingOf(told);
    const { text: before } = document.board;
    const keys = Object.entries(entry).map(([key, value]) => `${key}: ${flowText(value)}`);
    const lines = ['gear:', `  ${list}:`, ...keys.map((line, at) => `    ${at === 0 ? '-' : ' '} ${line}`)];
    const text =
      withSection(before, { key: 'gear', lines, value: { [list]: [entry] } }) ??
      withAppended(before, ['gear', list], entry);
    return text === null ? document : owning({ ...document, board: { ...document.board, text } });
  };

/** The id by which the rest of the board calls it. */
export const idTyped = (told: Told): string => idFromName(String(thingOf(told).entry['name'])) ?? '';

/** In which list of its gear the board describes it, as what, and how it is counted from then on. */
type Thing = { readonly list: string; readonly entry: Data; readonly owning: Change };

function thingOf(told: Told): Thing {
  switch (told.kind) {
    case 'supply': {
      const { draft, taken } = told;
      const entry = assuming(taken, dataOf(supplyEntry(draft).fields));
      return { list: 'supplies', entry, owning: owningAnother('supply', idFromName(draft.name) ?? '') };
    }
    case 'lead': {
      const { draft, count, taken } = told;
      const owning = owningMore('part', idFromName(draft.name) ?? '', count);
      return { list: 'parts', entry: assuming(taken, dataOf(leadEntry(draft).fields)), owning };
    }
    case 'battery': {
      const { name, fields } = batteryEntry(told.battery);
      const owning = owningMore('battery', idFromName(name) ?? '', told.battery.count);
      return { list: 'batteries', entry: dataOf(fields), owning };
    }
  }
}

/** What was not said of it is told as such. */
const assuming = (taken: readonly string[], entry: Data): Data => ({
  ...entry,
  ...(taken.length > 0 && { assumed: taken }),
});
