/**
 * The optimum of one objective, by engines that nobody believes. Their points are checked in integers; their claims that
 * nothing is better count only where an exact bound, the other engine, or the answer to another question bears them out.
 */
import { askForMultipliers } from './ask.js';
import { boundOf, floorOf, refutes } from './bound.js';
import { compact } from './compact.js';
import { confirmBest, confirmNone } from './confirm.js';
import { coreOf } from './core.js';
import { consult, type Opinion, type Opinions } from './consult.js';
import type { Engines } from '../engines/engines.js';
import type { CompactOutcome, CompactProof } from './outcome.js';
import type { Objective, Program } from '../../../solver/program.js';
import { limitsOf, partWorth, plainFloor, stopped, type ProveOptions, type CompactSearch } from './search.js';
import { Standing } from './standing.js';
import { tightenTo } from './tighten.js';
import { validateObjective, validateProgram } from './validate-program.js';

/**
 * The least value of the objective over the program's solutions, with a proof; or that there is no solution; or how far the
 * search came. Throws RangeError when the program or the objective is malformed.
 */
export async function prove(program: Program, objective: Objective, options: ProveOptions): Promise<CompactOutcome> {
  validateProgram(program);
  validateObjective(program, objective);
  const standing = new Standing(program, objective, options.onProgress);
  if (options.known !== undefined) standing.offer(options.known);
  standing.raise(options.lowerBound ?? objective.constant);
  const compacted = compact(program, objective);
  if (compacted.kind === 'broken') return { kind: 'infeasible', proof: { kind: 'row', row: compacted.row } };
  const whole = compacted.restated;
  const search: CompactSearch = { options, standing, whole, floor: plainFloor(whole) };
  const zeros = standing.offer(whole.restore(whole.program.columns.map(() => 0)));
  // Where no column is left, the point of zeros is the only one.
  if (whole.program.columns.length === 0 && zeros !== null) standing.raise(zeros);
  return standing.closed ? optimal(program, search, { kind: 'bound' }) : searchFromRelaxation(program, search);
}

async function searchFromRelaxation(program: Program, search: CompactSearch): Promise<CompactOutcome> {
  const { options, standing, whole } = search;
  const limits = limitsOf(options);
  if (limits === null) return stopped(search, true);
  const { trusted } = options.engines;
  const multipliers = await askForMultipliers(trusted, whole.program, whole.objective, limits);
  if (multipliers === null) return searchParts(program, search);
  if (refutes(whole.program, multipliers)) return { kind: 'infeasible', proof: { kind: 'bound' } };
  const floor = floorOf(whole.program, whole.objective, multipliers);
  const informed = { ...search, floor: floor.least > search.floor.least ? floor : search.floor };
  standing.raise(boundOf(informed.floor, whole.objective));
  return standing.closed ? optimal(program, informed, { kind: 'bound' }) : searchParts(program, informed);
}

/** First the most promising part, then all that may be in a solution as good as the one in hand. */
async function searchParts(program: Program, search: CompactSearch): Promise<CompactOutcome> {
  const { options, standing, whole } = search;
  const core = coreOf(search);
  if (core !== null) {
    const limits = limitsOf(options);
    if (limits === null) return stopped(search, true);
    const opinions = await consult(options.engines, core.part, standing, limits);
    if (standing.incumbent !== null && standing.incumbent.value <= core.target)
      return settle(program, search, opinions);
  }
  const limits = limitsOf(options);
  if (limits === null) return stopped(search, true);
  const rest = standing.incumbent === null ? whole : (partWorth(standing.incumbent.value, search) ?? whole);
  return settle(program, search, await consult(options.engines, rest, standing, limits));
}

/** What the opinions on a part in which every solution as good as the incumbent lies amount to. */
async function settle(program: Program, search: CompactSearch, opinions: Opinions): Promise<CompactOutcome> {
  const { standing } = search;
  if (standing.closed) return optimal(program, search, { kind: 'bound' });
  const best = standing.incumbent?.value ?? null;
  const { trusted, other } = opinions;
  // An opinion that does not hold is refuted by a checked solution: its engine has no more say.
  const refuted = trusted.kind === 'floor' && !holds(trusted, best);
  if (refuted || (!holds(trusted, best) && !holds(other, best))) {
    return stopped(search, trusted.kind === 'none' && trusted.stopped);
  }
  const agreed = agreementOf(opinions, best, search);
  return agreed === null ? challenged(program, search, opinions) : confirmed(program, search, agreed);
}

/** The proof that two opinions make together; null when they are not two, or not enough. */
function agreementOf(
  { trusted, other, otherIs }: Opinions,
  best: number | null,
  { options }: CompactSearch,
): CompactProof | null {
  if (!holds(trusted, best) || !holds(other, best)) return null;
  if (otherIs === 'second') return { kind: 'agreement', engines: engineNames(options.engines) };
  // That there is no solution at all must be asked in other words: an engine that always says so would agree with itself.
  return best === null ? null : { kind: 'second run', engine: options.engines.trusted.name };
}

/** Asks the trusted engine another question, from whose answer the opinion in hand follows. */
async function challenged(program: Program, search: CompactSearch, { trusted }: Opinions): Promise<CompactOutcome> {
  const { standing, options } = search;
  const best = standing.incumbent?.value ?? null;
  const confirmation = best === null ? await confirmNone(search) : await confirmBest(best, search);
  const names = engineNames(options.engines);
  switch (confirmation) {
    case 'shown':
      return confirmed(program, search, { kind: 'bound' });
    case 'borne out':
      return confirmed(
        program,
        search,
        holds(trusted, best) ? { kind: 'second run', engine: names[0] } : { kind: 'agreement', engines: names },
      );
    case 'time':
    case 'not borne out':
      return stopped(search, confirmation === 'time');
  }
}

/** Whether the opinion is that nothing is worth less than the best solution in hand, or that there is none. */
const holds = (opinion: Opinion, best: number | null): boolean => opinion.kind === 'floor' && opinion.value === best;

const engineNames = ({ trusted, second }: Engines): readonly [string, string] => [trusted.name, second?.name ?? ''];

function confirmed(program: Program, search: CompactSearch, proof: CompactProof): CompactOutcome {
  if (search.standing.incumbent === null) return { kind: 'infeasible', proof };
  search.standing.raise(search.standing.incumbent.value);
  return optimal(program, search, proof);
}

/** The incumbent as the optimum; throws unless value and bound have met. */
function optimal(program: Program, { standing, whole, floor }: CompactSearch, proof: CompactProof): CompactOutcome {
  const { incumbent } = standing;
  if (incumbent === null || !standing.closed) throw new Error('an optimum without a proof');
  const { point, value } = incumbent;
  const tightened = tightenTo(value, whole.program, whole.objective, floor);
  const uppers = whole.restore(tightened.columns.map((column) => column.upper));
  const columns = program.columns.map((column, index) => ({ ...column, upper: uppers[index] ?? column.upper }));
  return { kind: 'optimal', point, value, proof, remaining: { columns, rows: program.rows } };
}
