/** The tiers that count pedals by what each of them gets, whatever else hangs beside it. */
export const pedalTiers = [
  /** Pedals that are not at their preferred volts. */
  'offPreferred',
] as const;

type PedalTier = (typeof pedalTiers)[number];

export const isPedalTier = (tier: string): tier is PedalTier => pedalTiers.some((each) => each === tier);

/** Something for each of these tiers, under its name. */
export type PerPedalTier<Value> = Readonly<Record<PedalTier, Value>>;

/** Written out rather than made of entries, since every loadout that is priced asks for it. */
export function perPedalTier<Value>(of: (tier: PedalTier) => Value): PerPedalTier<Value> {
  const all: Partial<Record<PedalTier, Value>> = {};
  for (const tier of pedalTiers) all[tier] = of(tier);
  return all as PerPedalTier<Value>;
}
