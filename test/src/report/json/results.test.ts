import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { partId, pedalId, supplyId } from '../../../../src/domain/quantities.js';
import { decisiveLabels } from '../../../../src/planning/ask/decisive-labels.js';
import { checkOutput } from '../../../../src/planning/check/check-output.js';
import { check } from '../../../../src/planning/check/check.js';
import { compare } from '../../../../src/planning/compare/compare.js';
import { explain } from '../../../../src/planning/explain/explain.js';
import { rewire } from '../../../../src/planning/rewire/rewire.js';
import { addPedal } from '../../../../src/planning/spare/add-pedal.js';
import { spare } from '../../../../src/planning/spare/spare.js';
import { chooseOrSeek } from '../../../../src/planning/wanted/wanted.js';
import { checkJson } from '../../../../src/report/json/check-codec.js';
import { comparisonJson } from '../../../../src/report/json/comparison-codec.js';
import { explanationJson } from '../../../../src/report/json/explanation-codec.js';
import { labelsJson } from '../../../../src/report/json/labels-codec.js';
import { outputAnswerJson } from '../../../../src/report/json/output-codec.js';
import { answerJson } from '../../../../src/report/json/plan-codec.js';
import { jsonSchema, type SchemaKind } from '../../../../src/report/json/schemas.js';
import { addedJson, spareJson } from '../../../../src/report/json/spare-codec.js';
import { verdictJson } from '../../../../src/report/json/verdict-codec.js';
import { wantedJson } from '../../../../src/report/json/wanted-codec.js';
import { caseFor, impossibleCases } from '../../../support/impossible-cases.js';
import { wiredOf } from '../../../support/wired.js';
import { everything } from '../everything.js';
import { moving } from '../moving.js';
import { pedalOf, tideway } from '../samples.js';

/** A schema of the kind that bears no key which it does not describe. */
function closed(kind: SchemaKind) {
  const schema = JSON.parse(JSON.stringify(jsonSchema(kind)), (_key, value: unknown) =>
    typeof value === 'object' && value !== null && 'properties' in value
      ? { additionalProperties: false, ...value }
      : value,
  ) as object;
  return new Ajv2020({ strict: true, allErrors: true, allowUnionTypes: true }).compile(schema);
}

function expectKept(kind: SchemaKind, texts: readonly string[]): void {
  const validate = closed(kind);
  for (const text of texts) expect(validate(JSON.parse(text)), JSON.stringify(validate.errors)).toBe(true);
}

const own = kitOf(tideway.board, tideway.catalogue);
const plugged = kitOf({ ...tideway.board, wiring: tideway.wiring.feeds.map(wiredOf) }, tideway.catalogue);

describe('what is printed keeps its schema, and has no key that the schema does not know', () => {
  it('a plan for re-plugging', async () => {
    const { board, catalogue, plan } = moving((id) => id);
    const pinned = await rewire(plugged, { keep: [pedalId('tarn-fuzz')], buy: 'never' });
    expectKept('plan', [answerJson(kitOf(board, catalogue), plan), answerJson(plugged, pinned)]);
  });

  it('a check, safe or with every sort of numbers', () => {
    const all = everything((id) => id);
    const astray = all.wiring.feeds.map((feed, at, feeds) =>
      wiredOf({ ...feed, pedal: feeds[(at + 1) % feeds.length]?.pedal ?? feed.pedal }),
    );
    const policy = { ...all.board.policy, sockets: 0, budget: all.board.policy.noisePrice };
    const broken = kitOf({ ...all.board, policy, wiring: astray }, all.catalogue);
    const { findings } = check(broken);
    expect(new Set(findings.map(({ numbers }) => numbers?.kind)).size).toBeGreaterThan(3);
    expectKept('check', [checkJson(plugged, check(plugged)), checkJson(broken, check(broken))]);
  });

  it('an answer about one output', () => {
    const asked = { supply: supplyId('quay-6'), unit: 1 };
    const answers = [1, 2, 5].flatMap((output) =>
      ['chapel-drive', 'estuary-echo'].map((pedal) =>
        outputAnswerJson(plugged, checkOutput(plugged, { ...asked, output, pedal: pedalId(pedal) })),
      ),
    );
    expectKept('check-output', answers);
  });

  it('a comparison, with a purchase that fails', async () => {
    const bare = kitOf({ ...tideway.board, owned: { supplies: new Map(), parts: new Map() } }, tideway.catalogue);
    const asked = [new Map([[supplyId('quay-6'), 2]])];
    const tight = { ...bare.board, policy: { ...bare.board.policy, bricks: 1 } };
    const found = await compare(bare, { best: 3, asked });
    const failed = await compare(kitOf(tight, { ...tideway.catalogue, supplies: [] }));
    expectKept('comparison', [comparisonJson(bare, found), comparisonJson(bare, failed)]);
  });

  it('an explanation, of a plan, of a seat and of whatever makes a board impossible', async () => {
    const texts = [
      explanationJson(own, await explain(own), null),
      explanationJson(own, await explain(own, { pedal: pedalId('tarn-fuzz') }), pedalId('tarn-fuzz')),
    ];
    for (const one of impossibleCases) {
      const { board, catalogue } = caseFor(one);
      const kit = kitOf(board, catalogue);
      texts.push(explanationJson(kit, await explain(kit), null));
    }
    expectKept('explain', texts);
  });

  it('what there is to spare, and whether one more fits', async () => {
    const unsafe = kitOf(
      { ...plugged.board, wiring: plugged.board.wiring.map((wired) => ({ ...wired, chain: partId('nobody') })) },
      tideway.catalogue,
    );
    const texts = [spareJson(plugged, await spare(plugged)), spareJson(unsafe, await spare(unsafe))];
    expectKept('spare', texts);
    const more = pedalOf('one-more');
    expectKept('spare-add', [
      addedJson(plugged, await addPedal(plugged, more)),
      addedJson(unsafe, await addPedal(unsafe, more)),
    ]);
  });

  it('which labels decide', async () => {
    const open = kitOf(
      {
        ...tideway.board,
        pedals: [
          ...tideway.board.pedals,
          pedalOf('mole', { polarity: 'unknown', ground: 'unknown', unknown: ['polarity', 'ground'], kept: 'later' }),
        ],
      },
      tideway.catalogue,
    );
    expectKept('ask', [
      labelsJson(open, await decisiveLabels(open)),
      labelsJson(open, { kind: 'unsafe', findings: [] }),
      labelsJson(open, { kind: 'impossible' }),
    ]);
  });

  it('a verdict', () => {
    expectKept('verdict', [
      verdictJson(own, { kind: 'proven', aim: 'cost', tiers: [{ tier: 'cost', value: 3650 }], cases: 3 }),
      verdictJson(own, { kind: 'impossible', unpowered: 1, cases: 1 }),
      verdictJson(own, { kind: 'refused', what: 'proof', reasons: ['a tag is too high'] }),
    ]);
  });

  it('what to look for, with a lead for what nobody has read, and beside what is owned', async () => {
    const { supplies, parts } = tideway.catalogue;
    const gear = {
      supplies: supplies.map((supply) => ({ ...supply, price: null, stock: 0 })),
      parts: parts.map((part) => ({ ...part, price: null, stock: 0 })),
    };
    const open = { ...pedalOf('open'), polarity: 'unknown', unknown: ['polarity'] } as const;
    const many = ['a', 'b', 'c', 'd', 'e', 'f'].map((id) => pedalOf(id));
    const bare = kitOf({ ...tideway.board, gear, pedals: [...tideway.board.pedals, open, ...many], wiring: [] }, null);
    const wanted = await chooseOrSeek(bare);
    if (wanted.kind !== 'wanted') throw new Error(`nothing to look for: ${wanted.kind}`);
    expect(wanted.installed.feeds.length).toBeGreaterThan(0);
    expectKept('wanted', [wantedJson(wanted)]);
  });
});
