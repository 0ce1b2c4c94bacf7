import { auditWiring } from '../../audit/audit-wiring.js';
import type { Aim, Tier } from '../../domain/aim.js';
import type { Board, Catalogue } from '../../domain/board.js';
import type { ClaimedPlan, ClaimedWiring } from '../../domain/claimed-plan.js';
import type { Kit } from '../../domain/kit.js';
import type { Feed } from '../../domain/plan.js';
import type { Proof, ProofWishes } from '../../domain/proof.js';
import type { Supply } from '../../domain/supply.js';
import { wishedKit } from '../rewire/rewire-terms.js';
import { verifyImpossible, verifyProof, type VerifyProgress } from '../../proof/verify-proof.js';

/** A result, and the proof that came with it. */
export type Claim = { readonly plan: ClaimedPlan; readonly proof: Proof };

/** What came of checking a result and its proof. */
export type Verdict =
  | {
      readonly kind: 'proven';
      readonly aim: Aim;
      /** In the order of the aim. */
      readonly tiers: readonly { readonly tier: Tier; readonly value: number }[];
      readonly cases: number;
      /** What the plans that it was held against keep to beside what the board says; nothing when left out. */
      readonly wishes?: ProofWishes | undefined;
    }
  /** No plan powers every pedal, of those that keep to the wishes: each leaves at least so many without power. */
  | {
      readonly kind: 'impossible';
      readonly unpowered: number;
      readonly cases: number;
      readonly wishes?: ProofWishes | undefined;
    }
  /** The result breaks a rule or says what is not so, or the proof does not show what it must. */
  | {
      readonly kind: 'refused';
      readonly what: 'plan' | 'proof';
      /** At least one. */
      readonly reasons: readonly string[];
    };

/** Holds the plan against every hard rule and the proof against the kit, in whole numbers. Searches for nothing. */
export function verify(
  kit: Kit & { readonly catalogue: Catalogue },
  claim: Claim,
  onProgress?: VerifyProgress,
): Verdict {
  const { proof } = claim;
  const plan = { ...claim.plan, wiring: withOwnSettings(claim.plan.wiring, kit) };
  const { wishes } = proof;
  const { board, catalogue } = asked(kit, proof);
  const misfits = misfitsOf(board, claim);
  if (misfits.length > 0) return { kind: 'refused', what: 'proof', reasons: misfits };
  if (plan.status === 'impossible') {
    const shown = verifyImpossible(board, catalogue, proof, onProgress);
    return shown.kind === 'holds'
      ? { kind: 'impossible', unpowered: shown.unpowered, cases: shown.cases, wishes }
      : { kind: 'refused', what: 'proof', reasons: [shown.reason] };
  }
  const strayed = (wishes?.keep ?? []).filter((pedal) => plan.wiring.moved?.includes(pedal));
  if (strayed.length > 0)
    return {
      kind: 'refused',
      what: 'plan',
      reasons: strayed.map((id) => `the pedal "${id}" does not stay where it is`),
    };
  const errors = auditWiring(board, catalogue, plan.wiring, { partial: proof.partial });
  if (errors.length > 0) return { kind: 'refused', what: 'plan', reasons: errors.map(({ message }) => message) };
  // The audit has found the score to be that of the feeds.
  const shown = verifyProof(board, catalogue, proof, plan.wiring.score, onProgress);
  return shown.kind === 'holds'
    ? { kind: 'proven', aim: proof.aim, tiers: shown.tiers, cases: shown.cases, wishes }
    : { kind: 'refused', what: 'proof', reasons: [shown.reason] };
}

/** Feeds by what belongs to one pedal as they are planned: a result says nothing of what nobody has stated. */
const withOwnSettings = (wiring: ClaimedWiring, { board, supplies }: Kit): ClaimedWiring => ({
  ...wiring,
  feeds: wiring.feeds.map((feed) => {
    const supply = supplies.get(feed.supply);
    if (supply?.source.kind === 'adapter') return { ...feed, settings: settingsOf(feed, supply) };
    if (supply?.source.kind !== 'battery') return feed;
    const polarity = board.pedals.find(({ id }) => id === feed.pedal)?.polarity ?? null;
    const readings = { 'centre-negative': [], 'centre-positive': [] };
    return { ...feed, polarity, ...(polarity === 'unknown' && { readings }) };
  }),
});

const settingsOf = ({ settings }: Feed, { banks }: Supply): Feed['settings'] =>
  settings.length > 0 ? settings : (banks[0]?.settings.slice(0, 1).map(({ millivolts }) => millivolts) ?? []);

/** The kit as the proof's wishes leave it. */
function asked(
  kit: Kit & { readonly catalogue: Catalogue },
  { wishes }: Proof,
): { board: Board; catalogue: Catalogue } {
  if (wishes === undefined) return kit;
  const { board, catalogue } = wishedKit(kit, wishes);
  return { board, catalogue: catalogue ?? kit.catalogue };
}

/** What the files say of one another. */
function misfitsOf(board: Board, { plan, proof }: Claim): readonly string[] {
  const isImpossible = proof.impossible === true;
  const leavesOut = plan.status !== 'impossible' && plan.wiring.unpowered.length > 0;
  return [
    ...(leavesOut && !proof.partial
      ? ['the plan leaves pedals without power, and the proof is about plans that power them all']
      : []),
    ...(plan.board === board.name ? [] : [`the plan is for the board "${plan.board}", not "${board.name}"`]),
    ...(plan.currency.code === board.currency.code
      ? []
      : [`the plan counts in ${plan.currency.code}, the board in ${board.currency.code}`]),
    ...(plan.aim === proof.aim ? [] : [`the plan's aim is ${plan.aim}, the proof's ${proof.aim}`]),
    ...((plan.status === 'impossible') === isImpossible
      ? []
      : [
          isImpossible
            ? 'the proof says that no plan exists, and here is one'
            : 'the file says that no plan exists, and the proof is about a plan',
        ]),
  ];
}
