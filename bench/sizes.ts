/** How many pedals, and how many supply models to choose from. */
export type Size = { readonly pedals: number; readonly supplies: number };

export const sizeText = ({ pedals, supplies }: Size): string => `${pedals}×${supplies}`;

export const sameSize = (one: Size, other: Size): boolean =>
  one.pedals === other.pedals && one.supplies === other.supplies;
