import { connectorHints } from '../../domain/connector-hints.js';
import { outputsOf, type Kit } from '../../domain/kit.js';
import type { FedSupply } from '../../domain/inlet.js';
import type { Pedal } from '../../domain/pedal.js';
import type { Bank, Supply } from '../../domain/supply.js';
import { partOffers, type Offer } from '../../loadout/offers.js';
import { leadKinds, type LeadKind } from '../../loadout/lead-kinds.js';
import { router, type Router } from '../../loadout/routes.js';
import { inletFeeders } from './feeders.js';
import { seatsOf, type OutletSeat } from '../../loadout/seats.js';

/** One output at one setting, or two joined ones, and the pedal that asks for them. */
export type Attempt = {
  readonly pedal: Pedal;
  readonly offer: Offer;
  readonly supply: Supply;
  /** The bank of the output, or of the first of two joined ones. */
  readonly bank: Bank;
  readonly seat: OutletSeat;
  /** The join lead that it takes can neither be had nor is it owned. */
  readonly lacksLead: boolean;
  readonly shop: Shop;
};

/** What there is to reach a pedal with. */
export type Shop = {
  readonly kit: Kit;
  /** A connector at hand that the pedal's inlet may be a misspelling of. */
  readonly nearInlet: string | null;
  readonly kinds: readonly LeadKind[];
  readonly routes: Router;
  readonly routesWithAnyStock: Router;
  /** Whether some output can feed the inlet of a fed supply. */
  readonly canBeFed: (supply: FedSupply) => boolean;
};

/** What a kit has to reach a pedal with. */
export function shopFor(pedal: Pedal, kit: Kit): Shop {
  const kinds = leadKinds(partOffers(kit));
  const hint = connectorHints(kit).find((each) => each.pedal === pedal.id);
  return {
    kit,
    kinds,
    nearInlet: hint?.near ?? null,
    routes: router(kinds),
    canBeFed: inletFeeders(kit),
    routesWithAnyStock: router(leadKinds([...kit.parts.values()].map((part) => ({ part, owned: 1, forSale: 0 })))),
  };
}

/** Every output of a supply at every setting, and every two that its maker lets be joined, as if the join lead were there. */
export function attemptsOn(offer: Offer, pedal: Pedal, shop: Shop): readonly Attempt[] {
  const { supply } = offer;
  const imagined = imaginedLeads(supply, shop.kinds);
  const seats = [
    ...seatsOf(supply, shop.kinds).map((seat) => ({ seat, lacksLead: false })),
    ...seatsOf(supply, imagined).flatMap((seat) => (seat.join === null ? [] : [{ seat, lacksLead: true }])),
  ];
  return seats.flatMap(({ seat, lacksLead }) => {
    const bank = supply.banks[seat.outputs[0]?.bank ?? 0];
    return bank === undefined ? [] : [{ pedal, offer, supply, bank, seat, lacksLead, shop }];
  });
}

/** Straight join leads for the joins that a supply allows and for which there is no lead: to see what one would do. */
function imaginedLeads({ banks }: Supply, kinds: readonly LeadKind[]): readonly LeadKind[] {
  const wanted = banks.flatMap(({ plug, joins }) => joins.map((mode) => ({ plug, mode })));
  const missing = wanted.filter(
    ({ plug, mode }) => !kinds.some(({ fits, role }) => role.kind === 'join' && role.mode === mode && fits === plug),
  );
  return missing.map(({ plug, mode }, index) => ({
    index,
    fits: plug,
    gives: plug,
    reverses: false,
    role: { kind: 'join', mode },
    supplyOf: [],
  }));
}

/** The numbers of the outputs that are alike in this. */
export function numbersOf({ supply, seat }: Attempt): readonly number[] {
  const banks = new Set(seat.outputs.flatMap(({ bank }) => supply.banks[bank] ?? []));
  return [...banks].flatMap(outputsOf);
}
