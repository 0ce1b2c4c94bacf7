import type { Part, PartRole } from './part.js';
import { pedalTiers, perPedalTier, type PerPedalTier } from './pedal-tier.js';

/** What leads are; batteries are none. */
export type LeadKind = Exclude<PartRole['kind'], 'battery'>;

/** The tiers that count leads in use, owned or bought, each with the kinds of leads that it counts. */
const kindsCounted = {
  parts: ['chain', 'join', 'adapter'],
} as const satisfies Readonly<Record<string, readonly LeadKind[]>>;

type LeadTier = keyof typeof kindsCounted;

/** Something for each of these tiers, under its name. */
export type PerLeadTier<Value> = Readonly<Record<LeadTier, Value>>;

export const leadTiers = Object.keys(kindsCounted) as readonly LeadTier[];

export const isLeadTier = (tier: string): tier is LeadTier => Object.hasOwn(kindsCounted, tier);

export const perLeadTier = <Value>(of: (tier: LeadTier) => Value): PerLeadTier<Value> => ({ parts: of('parts') });

/** Whether a tier counts such a piece. */
export const countsLead = (tier: LeadTier, { role }: Pick<Part, 'role'>): boolean =>
  kindsCounted[tier].some((kind) => kind === role.kind);

/** The most that a tier can come to where there are so many leads of each kind at the most. */
export const mostCounted = (tier: LeadTier, most: Readonly<Record<LeadKind, number>>): number =>
  kindsCounted[tier].reduce((sum, kind) => sum + most[kind], 0);

/** The tiers that count leads, and those that count pedals by what each gets. */
export const countedTiers = [...leadTiers, ...pedalTiers] as const;

/** Something for each of them, under its name. */
export type PerCountedTier<Value> = PerLeadTier<Value> & PerPedalTier<Value>;

export const perCountedTier = <Value>(of: (tier: (typeof countedTiers)[number]) => Value): PerCountedTier<Value> => ({
  ...perLeadTier(of),
  ...perPedalTier(of),
});
