import type { Microamps, Millivolts, PedalId, SupplyId } from './quantities.js';

export type Power = 'AC' | 'DC';
/** What stands at the centre of a barrel plug or the tip of a jack plug. */
export type Polarity = 'centre-negative' | 'centre-positive';
/** What stands for a figure that nobody has read yet. Nothing is ever assumed in its place. */
export type Unknown = 'unknown';
/** What a plug or an inlet has; `unknown` is right only where either polarity would be. */
export type PolarityOrUnknown = Polarity | Unknown;
/** The two ways in which the label of a pedal may read, in the order in which they are told. */
export const polarities: readonly Polarity[] = ['centre-negative', 'centre-positive'];
/** The polarity of a pedal's chassis and audio ground; not the same thing as its plug's polarity. */
export type Ground = 'negative' | 'positive';
/** Where a pedal's current draw was read. A guess is multiplied by the policy's `guess` factor. */
export type Figure = 'label' | 'manual' | 'measured' | 'guess';

/**
 * Why a place is kept for a pedal that is planned and paid for but not plugged yet: it is bought later, its label must be
 * read before anything is plugged into it, or it is a spare output for whatever may come.
 */
export type Kept = 'later' | 'unread' | 'spare';
/** The figures of a pedal that may be unknown, in the order in which they are told. */
export const unknownFields = ['power', 'polarity', 'inlet', 'ground', 'volts', 'milliamps'] as const;
export type UnknownField = (typeof unknownFields)[number];

/** The volts a pedal accepts: these only, or anything between two bounds, both included. */
export type AcceptedVolts =
  | { readonly kind: 'listed'; readonly millivolts: readonly Millivolts[] }
  | { readonly kind: 'range'; readonly from: Millivolts; readonly to: Millivolts };

/** Whether exactly these volts are accepted. */
export const isAccepted = (accepted: AcceptedVolts, volts: Millivolts): boolean =>
  accepted.kind === 'range' ? accepted.from <= volts && volts <= accepted.to : accepted.millivolts.includes(volts);

/** The least volts that are accepted. */
export const lowestMillivolts = (accepted: AcceptedVolts): number =>
  accepted.kind === 'range' ? accepted.from : Math.min(...accepted.millivolts);

/** The most volts that are accepted. */
export const highestMillivolts = (accepted: AcceptedVolts): number =>
  accepted.kind === 'range' ? accepted.to : Math.max(...accepted.millivolts);

/** The current a pedal draws: the same at all volts, or one figure for each of the volts that it accepts. */
export type Draw =
  | { readonly kind: 'flat'; readonly microamps: Microamps }
  | { readonly kind: 'per voltage'; readonly microamps: ReadonlyMap<Millivolts, Microamps> };

/** The fields of a pedal that were left out and taken from the board's `assume` block. */
export type AssumedOfPedal = {
  readonly power?: Power;
  readonly polarity?: Polarity;
  readonly inlet?: string;
  readonly ground?: Ground;
  /** For a pedal alone whose volts nobody has read. */
  readonly volts?: Millivolts;
};

/** The batteries that a pedal can run on. */
export type OwnBattery = {
  readonly type: string;
  /** How many make a set. */
  readonly count: number;
  /** The pedal itself: no other is quite like it, since its set is its own. */
  readonly of: PedalId;
};

/** The adapter that a pedal came with. */
type OwnAdapter = {
  readonly supply: SupplyId;
  /** Nothing else may feed the pedal, since nobody has stated its volts, its draw, its power or its inlet. */
  readonly only: boolean;
};

export type Pedal = {
  readonly id: PedalId;
  readonly name: string;
  readonly power: Power;
  /** What the inlet wants; null for an AC pedal, which has no polarity. */
  readonly polarity: PolarityOrUnknown | null;
  readonly inlet: string;
  /** Where it is unknown, the pedal shares its ground with no other. */
  readonly ground: Ground | Unknown;
  /** Already narrowed to the keys of a per-voltage draw. */
  readonly accepts: AcceptedVolts;
  /** The volts its player would rather have; one of those accepted. Null when it is all the same. */
  readonly prefers: Millivolts | null;
  /** The most volts it survives, where its maker states it. Matters for unregulated outputs only. */
  readonly survives: Millivolts | null;
  readonly draw: Draw;
  /** The current at switch-on, taken as stated; null when not stated. */
  readonly startup: Microamps | null;
  readonly figure: Figure;
  readonly digital: boolean;
  readonly highGain: boolean;
  /** Its maker asks for an output of its own. */
  readonly alone: boolean;
  readonly assumed: AssumedOfPedal;
  /** What nobody has read, in the order in which it is told; what stands in the fields above then is for planning alone. */
  readonly unknown: readonly UnknownField[];
  /** Null for a pedal that is plugged in. */
  readonly kept: Kept | null;
  /** Null where it came with none. */
  readonly adapter: OwnAdapter | null;
  /** Null where it takes none. */
  readonly battery: OwnBattery | null;
};

/** What holds of a pedal of which no more is stated than its inlet, its volts and its draw. */
export const nothingMoreStated = {
  prefers: null,
  survives: null,
  startup: null,
  figure: 'label',
  digital: false,
  highGain: false,
  alone: false,
  assumed: {},
  unknown: [],
  kept: null,
  adapter: null,
  battery: null,
} as const satisfies Partial<Pedal>;
