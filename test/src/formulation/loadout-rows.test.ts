import { kitOf } from '../../../src/domain/kit.js';
import { describe, expect, it } from 'vitest';

import type { Policy } from '../../../src/domain/board.js';
import type { Part } from '../../../src/domain/part.js';
import { minorUnits, partId, supplyId } from '../../../src/domain/quantities.js';
import type { Supply } from '../../../src/domain/supply.js';
import { scalarObjectives, type SettledStep } from '../../../src/formulation/scalar-objective.js';
import { kindKey } from '../../../src/formulation/loadout-groups.js';
import { loadoutProgram } from '../../../src/formulation/loadout-program.js';
import { questionOf } from '../../../src/formulation/question.js';
import { loadoutPricer } from '../../../src/loadout/best-loadout.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  euros,
  partOf,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
} from '../../support/builders.js';

const box = supplyOf('box', 20, [bankOf(2, [settingOf(9, 100)])]);
const mini = partOf('mini', 5, { kind: 'adapter' }, { gives: 'jack-3.5' });
/** Two that are alike, and one of its own. */
const pedals = [pedalOf('a', 10), pedalOf('same', 10), pedalOf('b', 20, { inlet: 'jack-3.5' })];

type Given = {
  readonly supplies?: readonly Supply[];
  readonly parts?: readonly Part[];
  readonly policy?: Partial<Policy>;
  readonly owned?: { readonly boxes?: number; readonly minis?: number };
  readonly partial?: boolean;
  readonly isWritten?: boolean;
  /** How many pedals of the first class must be fed. */
  readonly required?: number;
  readonly earlier?: readonly SettledStep[];
  /** Whether the bought units of the first supply are told apart. */
  readonly apart?: boolean;
};

function program({ supplies = [box], parts = [mini], policy = {}, owned = {}, ...given }: Given) {
  const board = boardOf(pedals, {
    policy: policyOf(policy),
    owned: {
      supplies: new Map([[supplyId('box'), owned.boxes ?? 0]]),
      parts: new Map([[partId('mini'), owned.minis ?? 0]]),
    },
  });
  const required = new Map([[0, given.required ?? 0]]);
  const terms = { tiers: ['unpowered', 'cost'] as const, partial: given.partial ?? false, required };
  const question = questionOf(kitOf(board, catalogueOf(supplies, parts)), terms);
  const [objective] = scalarObjectives(question);
  if (objective === undefined) throw new RangeError('there is no objective');
  const [first] = question.supplies;
  const apart = given.apart === true && first !== undefined ? [kindKey({ uses: first, owned: false })] : [];
  const made = loadoutProgram(
    question,
    question.supplies,
    objective,
    given.earlier ?? [],
    (uses) => loadoutPricer(uses, question.bench),
    { apart: new Set(apart), isWritten: given.isWritten ?? false },
  );
  const { rows, fixed } = made.cover;
  return {
    ...made,
    objective,
    /** The bounds of the rows of a name. */
    bounds: (name: string): readonly number[] => rows.filter((row) => row.name === name).map(({ bound }) => bound),
    columns: (name: string) => fixed.filter((column) => column.name === name),
    names: [...new Set(rows.map(({ name }) => name))],
    senses: Object.fromEntries(rows.map(({ name, sense }) => [name, sense])),
  };
}

describe('the rows of a cover', () => {
  it('are those of the pedals alone where nothing else can bind', () => {
    const { names, bounds, senses } = program({});
    expect(names).toEqual(['fed']);
    expect(bounds('fed')).toEqual([2, 1]);
    expect(senses).toEqual({ fed: 'at least' });
  });

  it('mean something each', () => {
    const { cover, meanings } = program({
      policy: { bricks: 1, budget: euros(50) },
      owned: { boxes: 1, minis: 1 },
      partial: true,
      required: 1,
    });
    expect(meanings).toHaveLength(cover.rows.length);
    expect(meanings.map(({ kind }) => kind)).toEqual([
      'pedals',
      'left out',
      'pedals',
      'leads',
      'pieces',
      'bricks',
      'budget',
      'units',
    ]);
  });

  it('let pedals be left out where a plan may be partial, and limit that only where some must be fed', () => {
    const leftOut = (given: Given) => {
      const { bounds, columns } = program(given);
      return { rows: bounds('left out'), most: columns('unpowered').map(({ most }) => most) };
    };
    expect(leftOut({})).toEqual({ rows: [], most: [] });
    expect(leftOut({ partial: true })).toEqual({ rows: [], most: [2, 1] });
    expect(leftOut({ partial: true, required: 1 })).toEqual({ rows: [1], most: [1, 1] });
    expect(leftOut({ partial: true, required: 2 })).toEqual({ rows: [], most: [1] });
  });

  it('of units are there where there are fewer than could be of use', () => {
    const units = (stock: number | null, boxes = 0) =>
      program({ supplies: [{ ...box, stock }], owned: { boxes } }).bounds('units');
    expect(units(null)).toEqual([]);
    expect(units(3)).toEqual([]);
    expect(units(2)).toEqual([2]);
    expect(units(null, 1)).toEqual([1]);
    expect(units(1, 2)).toEqual([2, 1]);
    expect(units(0, 5)).toEqual([]);
  });

  it('tell units apart when they are asked to, each once', () => {
    const groups = (apart: boolean, stock: number | null = null) =>
      program({ supplies: [{ ...box, stock }], apart }).groups.map(({ slot, most }) => [slot, most]);
    expect(groups(false)).toEqual([[null, 3]]);
    expect(groups(true)).toEqual([
      [1, 1],
      [2, 1],
      [3, 1],
    ]);
    expect(groups(true, 2)).toEqual([
      [1, 1],
      [2, 1],
    ]);
  });

  it.each<[Partial<Policy>, readonly number[], readonly number[]]>([
    [{ bricks: 3 }, [], []],
    [{ bricks: 2 }, [2], []],
    [{ sockets: 3 }, [], []],
    [{ sockets: 1 }, [], [1]],
    [{ bricks: 2, sockets: 1 }, [2], [1]],
    [{ bricks: 0, sockets: 4 }, [0], []],
  ])('of bricks and of sockets are there where they can bind: %j', (policy, bricks, sockets) => {
    const { bounds } = program({ policy });
    expect([bounds('bricks'), bounds('sockets')]).toEqual([bricks, sockets]);
  });

  it('of money are there where there is a budget', () => {
    expect(program({ policy: { budget: euros(45) } }).bounds('budget')).toEqual([4500]);
    expect(program({}).bounds('budget')).toEqual([]);
  });

  it('of money count what can be spent, and all that there is where a proof is to be written', () => {
    const policy = { budget: minorUnits(4599), noisePrice: euros(10) };
    // Boxes at 20.00, leads at 5.00 and exposed pedals counted with 10.00.
    expect(program({ policy }).bounds('budget')).toEqual([4500]);
    expect(program({ policy, isWritten: true }).bounds('budget')).toEqual([4599]);
    expect(program({ policy: { ...policy, noisePrice: minorUnits(1) } }).bounds('budget')).toEqual([4599]);
  });

  it('of earlier steps say what these have reached', () => {
    const { objective } = program({});
    const { bounds, senses } = program({
      earlier: [
        { objective, value: 7 },
        { objective, value: 5 },
      ],
    });
    expect(bounds('earlier')).toEqual([7, 5]);
    expect(senses.earlier).toBe('at most');
  });

  it('of leads are there where some are owned or there are not as many as one likes', () => {
    const leads = (parts: readonly Part[], minis = 0) => {
      const { bounds, columns, objective } = program({ parts, owned: { minis } });
      const prices = columns('leads').map(({ cost, most }) => [
        (cost * objective.moneyUnit) / objective.weights.money,
        most,
      ]);
      return { leads: bounds('leads').length, pieces: bounds('pieces'), prices };
    };
    const few = { ...mini, stock: 2 };
    const dear = partOf('dear', 9, mini.role, { gives: 'jack-3.5' });
    expect(leads([mini])).toEqual({ leads: 0, pieces: [], prices: [] });
    expect(leads([mini], 1)).toEqual({
      leads: 1,
      pieces: [1],
      prices: [
        [0, 1],
        [500, Infinity],
      ],
    });
    expect(leads([few])).toEqual({ leads: 1, pieces: [2], prices: [[500, 2]] });
    expect(leads([few, dear], 3)).toEqual({
      leads: 1,
      pieces: [3, 2],
      prices: [
        [0, 3],
        [500, 2],
        [900, Infinity],
      ],
    });
    // The dear one is never needed.
    expect(leads([mini, dear])).toEqual({ leads: 0, pieces: [], prices: [] });
  });

  it('of leads count towards the budget by what their pieces cost, and towards earlier steps', () => {
    const { objective } = program({});
    const earlier = [{ objective, value: 7 }];
    const { cover, meanings, columns } = program({ policy: { budget: euros(45) }, owned: { minis: 1 }, earlier });
    const entriesIn = (kind: string) =>
      columns('leads').map(({ entries }) =>
        entries.filter(({ row }) => meanings[row]?.kind === kind).map(({ coefficient }) => coefficient),
      );
    expect(cover.rows.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['leads', 'pieces', 'budget', 'earlier']),
    );
    expect(entriesIn('leads')).toEqual([[-1], [-1]]);
    expect(entriesIn('pieces')).toEqual([[1], []]);
    expect(entriesIn('budget')).toEqual([[], [500]]);
    expect(entriesIn('earlier')).toEqual([[], [(500 * objective.weights.money) / objective.moneyUnit]]);
  });
});
