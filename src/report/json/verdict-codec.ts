import { aims, isMoney, tiers } from '../../domain/aim.js';
import type { Kit } from '../../domain/kit.js';
import type { ProofWishes } from '../../domain/proof.js';
import type { Verdict } from '../../planning/verify/verify.js';
import { at, list, orNull, record } from './codec.js';
import { printed } from './printed.js';
import { boardName, format } from './shared-codecs.js';
import { amountOrCount, choice, count, money, numbers, pedals, yes } from './values.js';

type Proven = Extract<Verdict, { readonly kind: 'proven' }>;

const tier = record<Proven['tiers'][number]>()('What one measure comes to.', {
  tier: choice(tiers, 'The measure.'),
  value: at(amountOrCount('What no plan undercuts.'), (from) => ({ amount: from.value, isMoney: isMoney(from.tier) })),
});

const wishes = record<ProofWishes>()('The plans that it was held against keep to these, beside what the board says.', {
  keep: at(pedals('The pedals that stay where they are plugged today.'), ({ keep = [] }) => keep),
  buyNothing: at(yes('Whether nothing is bought.'), ({ buy }) => buy === 'never'),
  budget: at(
    orNull("The most that is spent; null where the board's own budget holds.", money('Money.')),
    (from) => from.budget ?? null,
  ),
});

/** Keys and their order are a promise to programs that read it: new keys come after those that are there. */
export const verdictCodec = record<Verdict>()('What came of checking a result and its proof.', {
  format: format('boardfeed/verdict/1'),
  board: boardName(),
  verdict: at(
    choice(['proven', 'impossible', 'refused'], '`refused`: the result or its proof does not hold.'),
    ({ kind }) => kind,
  ),
  aim: at(orNull('What was taken to be best.', choice(aims, 'The aim.')), (verdict) =>
    verdict.kind === 'proven' ? verdict.aim : null,
  ),
  tiers: at(list('In the order of the aim.', tier), (verdict) => (verdict.kind === 'proven' ? verdict.tiers : [])),
  unpowered: at(
    orNull('Of a proof that no plan exists: every plan leaves at least so many out.', count('Pedals.')),
    (verdict) => (verdict.kind === 'impossible' ? verdict.unpowered : null),
  ),
  cases: at(orNull('The cases that were told apart.', count('Cases.')), (verdict) =>
    verdict.kind === 'refused' ? null : verdict.cases,
  ),
  refused: at(orNull('What does not hold.', choice(['plan', 'proof'], 'What does not hold.')), (verdict) =>
    verdict.kind === 'refused' ? verdict.what : null,
  ),
  reasons: at(list('Why not.', numbers), (verdict) => (verdict.kind === 'refused' ? verdict.reasons : [])),
  wishes: at(orNull('What was asked for beside what the board says; null for nothing.', wishes), (verdict) =>
    verdict.kind === 'refused' ? null : (verdict.wishes ?? null),
  ),
});

/** The verdict as one JSON object with a line break at its end. */
export const verdictJson = (kit: Kit, verdict: Verdict): string => printed(verdictCodec, kit, verdict);
