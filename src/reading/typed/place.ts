import { listed } from '../../domain/shown-text.js';
import { said, unclear, type Typed } from './typed.js';

/** Where a pedal is plugged. */
export type Place = {
  /** Which of the sources, from 0. */
  readonly source: number;
  /** From 1. */
  readonly output: number;
  readonly volts: number;
};

/** The letter of a source, by which places name it. */
export const letterOf = (source: number): string => 'abcdefghijklmnopqrstuvwxyz'.charAt(source);

/** The volts that each output of a source can be set to, from output 1 on. */
export type Outputs = readonly (readonly number[])[];

const shape = /^\s*([a-z]?)\s*(\d{0,3})(?:\s+(?:at\s+)?(\d+(?:[.,]\d+)?)\s*v?)?\s*$/i;

/**
 * Reads "3", "b3" and "a7 12v". The letter may be left out where there is one source, the output where it has one, and the volts
 * where it has one setting. Nothing at all is no place.
 */
export function typedPlace(text: string, sources: readonly Outputs[]): Typed<Place> {
  if (text.trim() === '') return { kind: 'unknown' };
  const example = sources.length > 1 ? 'a3' : '3';
  const [read, letter = '', number = '', volts] = shape.exec(text) ?? [];
  const source =
    letter === '' && sources.length === 1 ? 0 : sources.findIndex((_, at) => letterOf(at) === letter.toLowerCase());
  const outputs = sources[source];
  if (read === undefined || outputs === undefined)
    return unclear(`Write the output such as ${example}, or ${example} 9v.`);
  const output = number === '' && outputs.length === 1 ? 1 : Number(number);
  const settings = outputs[output - 1];
  if (settings === undefined) return unclear(`It has the outputs 1 to ${outputs.length}: write ${example}.`);
  const set = setTo(volts, settings);
  if (set !== null) return said({ source, output, volts: set });
  const allowed = listed(settings.map(String), 'or');
  return unclear(`That output gives ${allowed} V: write ${letter}${number} ${settings[0] ?? ''}v, as it is set.`);
}

/** The setting that is told, or the only one; null where it is none of them. */
function setTo(volts: string | undefined, settings: readonly number[]): number | null {
  const wanted = volts === undefined && settings.length === 1 ? settings[0] : Number(volts?.replace(',', '.'));
  return settings.find((one) => one === wanted) ?? null;
}
