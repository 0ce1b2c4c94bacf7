import { readFileSync } from 'node:fs';

import { expect, it } from 'vitest';

import type { Kit } from '../../../../src/domain/kit.js';
import { decisiveLabels } from '../../../../src/planning/ask/decisive-labels.js';
import { check } from '../../../../src/planning/check/check.js';
import { choose } from '../../../../src/planning/choose/choose.js';
import { rewire } from '../../../../src/planning/rewire/rewire.js';
import { addPedal } from '../../../../src/planning/spare/add-pedal.js';
import { usualPedal } from '../../../../src/planning/spare/extra-pedal.js';
import { spare } from '../../../../src/planning/spare/spare.js';
import { withPlanRecorded } from '../../../../src/reading/drafts/record-plan.js';
import { inputsFromText } from '../../../../src/reading/inputs-from-text.js';
import { checkJson } from '../../../../src/report/json/check-codec.js';
import { labelsJson } from '../../../../src/report/json/labels-codec.js';
import { answerJson } from '../../../../src/report/json/plan-codec.js';
import { addedJson, spareJson } from '../../../../src/report/json/spare-codec.js';

const fixture = (path: string): string =>
  readFileSync(new URL(`../../../../fixtures/${path}`, import.meta.url), 'utf8');

const shop = fixture('shops/pontoon.yaml');
const written = fixture('boards/bandstand.yaml');
const read = (text: string) => inputsFromText({ file: 'bandstand.yaml', text }, { file: 'pontoon.yaml', text: shop });

function kitIn(text: string): Kit {
  const found = read(text);
  if (found.kind === 'faulty') throw new Error(JSON.stringify(found.faults));
  return found.value;
}

type Told = { readonly lead?: number };
type Result = { readonly feeds: readonly Told[]; readonly inlets?: readonly Told[] };

/** The numbers of the leads of all pedals, then those of inlets. */
const leadsIn = ({ feeds, inlets = [] }: Result) => [...feeds, ...inlets].map(({ lead }) => lead);

/** The chain of both pedals by the converter lead, then the converter lead's inlet on the power bank. */
const byHand = [2, 2, 1];

async function recorded(): Promise<string> {
  const kit = kitIn(written);
  const answer = await choose(kit);
  if (answer.kind !== 'plan') throw new Error('it has no plan');
  expect(leadsIn(JSON.parse(answerJson(kit, answer)) as Result)).toEqual(byHand);
  const text = withPlanRecorded({ kit, text: written, read }, answer.wiring);
  if (text === null) throw new Error('it was not recorded');
  expect([...text.matchAll(/lead: (\d+)/g)].map(([, lead]) => Number(lead))).toEqual(byHand);
  return text;
}

/** What every question about the board answers. */
async function answersTo(kit: Kit): Promise<Readonly<Record<string, string>>> {
  const added = await addPedal(kit, usualPedal('one-more', 30_000, false));
  return {
    check: checkJson(kit, check(kit)),
    rewire: answerJson(kit, await rewire(kit)),
    spare: spareJson(kit, await spare(kit)),
    ask: labelsJson(kit, await decisiveLabels(kit)),
    add: JSON.stringify((JSON.parse(addedJson(kit, added)) as { readonly result: unknown }).result),
  };
}

it('says the numbers of leads that the board file says, whatever is asked', async () => {
  const text = await recorded();
  const other = text.replaceAll('lead: 2', 'lead: 7').replace('lead: 1}', 'lead: 4}');
  for (const [file, leads] of [
    [text, byHand],
    [other, [7, 7, 4]],
  ] as const) {
    for (const [question, answer] of Object.entries(await answersTo(kitIn(file)))) {
      const { feeds, inlets } = JSON.parse(answer) as Result;
      const old = leadsIn({ feeds: feeds.slice(0, 2), ...(inlets && { inlets }) });
      expect({ question, leads: old }).toEqual({
        question,
        // What is looked at of the pedals alone has no inlets.
        leads: leads.slice(0, old.length),
      });
    }
  }
});

it('goes on in a plan for a board that is plugged in part from the numbers that its file says', async () => {
  const text = await recorded();
  const late = text
    .replace(/ {2}- \{pedal: gannet-looper, .*\n/, '')
    .replaceAll('lead: 2', 'lead: 7')
    .replace('lead: 1}', 'lead: 4}');
  const kit = kitIn(late);
  const found = await spare(kit);
  expect(found).toMatchObject({ kind: 'spare', of: 'plan' });
  expect(leadsIn(JSON.parse(spareJson(kit, found)) as Result)).toEqual([7, 7, 4]);
});
