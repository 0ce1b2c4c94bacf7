import { isInletId } from '../../domain/inlet.js';
import type { Kit } from '../../domain/kit.js';
import type { Answer, Reason, RewireRequest } from '../answer.js';
import { answerTo } from '../choose/answer-to.js';
import { effortOf, type SearchOptions } from '../asking/search-options.js';
import { changesOf } from './changes.js';
import { requestsInTheWay } from './requests.js';
import { termsOf, writtenWishes, type Wishes } from './rewire-terms.js';
import { withTodaysLeads } from './todays-leads.js';
import { todaysWiring } from '../today/todays-wiring.js';

export type RewireOptions = Wishes &
  SearchOptions & {
    /** Allow a plan that leaves pedals unpowered, as few as can be. Off when left out. */
    readonly partial?: boolean;
    /**
     * Have the proof written down, for `verifyProof` or others to check. Takes longer. Off when left out; none is written of a
     * plan that keeps inlets.
     */
    readonly proof?: boolean;
  };

/**
 * How to power the board with the fewest changes to how it is plugged today: what must be bought first, with every newly
 * exposed pedal counted at the noise price, then the fewest pedals moved. A board that describes all its gear needs no
 * catalogue. As for `choose`, the plan has passed the audit and is proven or says how far it may be from the best; it comes
 * with what it changes of today's wiring, and why.
 * @throws RangeError when a pedal to keep is not plugged in today.
 * @throws Error when a plan fails its own audit: a defect of boardfeed, never of the input.
 */
export async function rewire(kit: Kit, options: RewireOptions = {}): Promise<Answer> {
  const { partial = false, keep = [] } = options;
  const proof = options.proof === true && !keep.some(isInletId);
  const plugged = todaysWiring(kit);
  const terms = termsOf(kit, plugged, options);
  const effort = effortOf(options);
  const { kit: asked, today } = terms;
  const wishes = writtenWishes(options);
  const answer = await answerTo({ kit: asked, today, aim: 'moves', partial, wishes, effort: { ...effort, proof } });
  if (answer.kind === 'stopped') return answer;
  if (answer.kind === 'plan') {
    const wiring = withTodaysLeads(answer.wiring, plugged.feeds, { kit: terms.kit, partial });
    return { ...answer, wiring, changes: changesOf(terms.kit, plugged, wiring) };
  }
  const requests = await requestsInTheWay({ kit, plugged, wishes: options }, effort);
  return { ...answer, reasons: [...requests, ...answer.reasons.filter((reason) => !isTold(reason, requests))] };
}

/** A budget that was asked for is told as such, not as a limit of the board; nor is what is sold told as what is missing. */
function isTold(reason: Reason, requests: readonly Reason[]): boolean {
  const isAsked = (asked: RewireRequest['kind']): boolean =>
    requests.some((each) => each.kind === 'request' && each.requests.some(({ kind }) => kind === asked));
  if (reason.kind === 'unowned') return isAsked('buy never');
  return reason.kind === 'limit' && reason.limit === 'budget' && isAsked('budget');
}
