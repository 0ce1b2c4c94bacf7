import type { Entry } from './entry.js';
import type { Report } from '../../domain/finding.js';
import type { Part, PartRole } from '../../domain/part.js';
import { partId, type PartId } from '../../domain/quantities.js';
import { resolvePrice, type Counter, type Found } from './resolve-for-sale.js';
import { noteId, resolveId } from './resolve-id.js';
import type { RawPart } from '../schema/schema-part.js';

/** A part of a catalogue or of the gear. */
export function resolvePart(entry: Entry<RawPart>, counter: Counter): Found<PartId, Part> {
  const { fields } = entry;
  const { report } = counter;
  const id = resolveId(entry, report);
  if (id !== null) noteId('parts', id, entry, counter.seen, report);
  const price = resolvePrice(entry, counter);
  const role = resolveRole(entry, report);
  const found = id === null ? null : partId(id);
  if (found === null || price === 'reported' || role === null) return { id: found, thing: null };
  const { name, fits, gives } = fields;
  if (name === undefined || fits === undefined || gives === undefined || entry.isBroken('assumed'))
    return { id: found, thing: null };
  return {
    id: found,
    thing: {
      id: found,
      name,
      price,
      stock: counter.forSale ? (fields.stock ?? null) : 0,
      fits,
      gives,
      reverses: fields.reverses ?? false,
      role,
      ...assumedOf(fields),
    },
  };
}

/** The plugs of a part of the gear that nobody has looked at. */
const assumedOf = ({ fits, gives, assumed = [] }: Partial<RawPart>): Pick<Part, 'assumed'> =>
  assumed.length === 0
    ? {}
    : {
        assumed: {
          ...(assumed.includes('fits') && fits !== undefined && { fits }),
          ...(assumed.includes('gives') && gives !== undefined && { gives }),
        },
      };

function resolveRole(entry: Entry<RawPart>, report: Report): PartRole | null {
  const { tails, joins } = entry.fields;
  if (tails !== undefined && joins !== undefined) {
    report(entry.spotOf('joins'), {
      message: `found ${joins}, but the part has ${tails} tails too; a part is a chain lead or a join lead, not both.`,
      remedy: 'Remove `tails` or `joins`.',
    });
    return null;
  }
  if (tails !== undefined) return { kind: 'chain', tails };
  if (joins !== undefined) return { kind: 'join', mode: joins };
  return { kind: 'adapter' };
}
