/** The tiers that count pedals by what each of them gets, whatever else hangs beside it. */
export const pedalTiers = [
  /** Pedals that are not at their preferred volts. */
  'offPreferred',
] as const;

type PedalTier = (typeof pedalTiers)[number];

export const isPedalTier = (tier: string): tier is PedalTier => pedalTiers.some((each) => each === tier);

/** Something for each of these tiers, under its name. */
export type PerPedalTier<Value> = Readonly<Record<PedalTier, Value>>;

export const perPedalTier = <Value>(of: (tier: PedalTier) => Value): PerPedalTier<Value> => ({
  offPreferred: of('offPreferred'),
});
