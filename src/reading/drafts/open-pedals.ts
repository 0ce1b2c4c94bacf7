import { unknownFields, type UnknownField } from '../../domain/pedal.js';
import { listOf, mapOf, type Data } from '../text/data.js';

/** A pedal of a board file of which something is not known yet. */
export type OpenPedal = {
  /** Where it stands in the list of pedals. */
  readonly index: number;
  readonly name: string;
  readonly unknown: readonly UnknownField[];
  /** What the file says of it. */
  readonly stated: Data;
};

/** The pedals of a board file that have something unknown. */
export function openPedals(data: Data): readonly OpenPedal[] {
  return listOf(data['pedals']).flatMap((pedal, index) => {
    const stated = mapOf(pedal);
    const unknown = unknownFields.filter((key) => stated[key] === 'unknown');
    const { name } = stated;
    return unknown.length === 0 || typeof name !== 'string' ? [] : [{ index, name, unknown, stated }];
  });
}
