/** What pedals are worth and what leads cost while a unit is being filled: integers in one unit of value. */
export type Tags = {
  /** By pedal class; may be negative. */
  readonly pedals: Float64Array;
  /** By lead kind, for every use; may be negative. */
  readonly leads: Float64Array;
  /** What a pedal off its preferred volts costs; not negative. */
  readonly offPreferred: number;
  /** What an exposed pedal costs; not negative. */
  readonly exposed: number;
};
