import { kitOf, type Kit } from '../../../../src/domain/kit.js';
import { explain } from '../../../../src/planning/explain/explain.js';
import type { Change, WayOut } from '../../../../src/planning/explain/way-out.js';
import { wayTexts } from '../../../../src/report/words/explain-folded-ways.js';
import { speechOf } from '../../../../src/report/words/speech.js';
import { caseOf, type Given } from '../given.js';

/** What `explain` offers of one kind, and how it says so. */
export type Offered<Kind extends Change['kind']> = {
  readonly kit: Kit;
  readonly ways: readonly (WayOut & { readonly change: Extract<Change, { readonly kind: Kind }> })[];
  readonly texts: readonly string[];
};

/** The ways out of one kind for a board without a plan. @throws Error where it has one, or not all was settled. */
export async function offered<Kind extends Change['kind']>(kind: Kind, given: Given): Promise<Offered<Kind>> {
  const { board, catalogue } = caseOf(given);
  const kit = kitOf(board, catalogue);
  const explanation = await explain(kit, { shrinkMs: 100_000 });
  if (explanation.kind !== 'impossible' || !explanation.whole) throw new Error(`it is ${explanation.kind}`);
  const isWanted = (way: WayOut): way is Offered<Kind>['ways'][number] => way.change.kind === kind;
  const ways = explanation.ways.filter(isWanted);
  return { kit, ways, texts: wayTexts(speechOf(kit), ways) };
}
