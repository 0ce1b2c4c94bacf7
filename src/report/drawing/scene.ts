/**
 * A drawing as data, before it is written as SVG: what stands where, in units of about one pixel. Everything that a person
 * could point at has an area and says which supply, output, lead or pedal it is.
 */
import type { PartId, PedalId } from '../../domain/quantities.js';
import type { Sign } from '../signs/sign.js';
import type { Hazard } from '../words/hazards.js';
import type { OutputId, UnitId } from './drawn-board.js';

export type Point = { readonly x: number; readonly y: number };
export type Area = Point & { readonly width: number; readonly height: number };

export type TextLine = Point & {
  /** `x` is where the line starts, ends or has its middle; `y` is the base line. */
  readonly anchor: 'start' | 'middle' | 'end';
  readonly text: string;
  readonly size: number;
  readonly strong: boolean;
  /** What is read second. */
  readonly soft: boolean;
  /** At most how wide it is. */
  readonly width: number;
  /** All of the text, where this line had to be cut; else null. */
  readonly full: string | null;
};

/** How full something is, as a bar; the figures stand in words beside it. */
export type Bar = Area & {
  /** Whole percent. */
  readonly percent: number;
};

/** The shape of a hazard with its word, which takes several lines only where there is very little room. */
export type PlacedMark = Area & { readonly hazard: Hazard; readonly words: readonly TextLine[] };
/** The sign of a plug's polarity, or of a battery. */
export type PlacedSign = Area & { readonly sign: Sign };

/** What stands in an area. */
export type Face = {
  readonly texts: readonly TextLine[];
  readonly bars: readonly Bar[];
  readonly marks: readonly PlacedMark[];
  readonly signs: readonly PlacedSign[];
  /** Where a line parts it from left to right. */
  readonly partings: readonly number[];
};

/** Leads between the supply's own and a pedal, as a cap on what they are plugged into; or the battery in a pedal. */
export type CapShape = Area & { readonly face: Face; readonly parts: readonly PartId[] };

export type OutputShape = Area & {
  readonly id: OutputId;
  readonly state: 'used' | 'kept' | 'free';
  readonly face: Face;
  /** Where a plug goes in. */
  readonly socket: Point;
  readonly cap: CapShape | null;
};

/** A stretch of outputs on grounds of one kind, and the rail that ties those on one ground together. */
export type RunShape = Area & {
  readonly isIsolated: boolean;
  readonly face: Face;
  readonly outputs: readonly OutputShape[];
};

/** A supply unit; `face` is what stands at its top. */
export type StripShape = Area & { readonly id: UnitId; readonly face: Face; readonly runs: readonly RunShape[] };

export type PedalShape = Area & {
  readonly id: PedalId;
  readonly state: 'plugged' | 'kept' | 'off';
  readonly face: Face;
  readonly cap: CapShape | null;
  /** Where its lead comes in; null without one, and on a battery. */
  readonly plug: Point | null;
};

/** The number of a lead on one of its ends. */
export type TagShape = Area & { readonly text: TextLine };

/** A lead, in straight lines along the axes. */
export type LeadShape = {
  readonly number: number;
  readonly outputs: readonly OutputId[];
  readonly pedals: readonly PedalId[];
  readonly isKept: boolean;
  /** One of a few colours, which helps to follow it and tells nothing. */
  readonly tone: number;
  readonly lines: readonly (readonly Point[])[];
  /** Where lines of it meet. */
  readonly joints: readonly Point[];
  readonly tags: readonly TagShape[];
};

export type Scene = {
  readonly width: number;
  readonly height: number;
  readonly strips: readonly StripShape[];
  readonly pedals: readonly PedalShape[];
  /** Later ones pass over earlier ones. */
  readonly leads: readonly LeadShape[];
};

/** All outputs of a strip, in order. */
export const outputShapes = ({ runs }: StripShape): readonly OutputShape[] => runs.flatMap(({ outputs }) => outputs);
