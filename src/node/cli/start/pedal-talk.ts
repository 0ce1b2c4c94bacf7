import { circuitKinds, type CircuitKind } from '../../../domain/circuit-kinds.js';
import type { Power } from '../../../domain/pedal.js';
import type { KnownDraw, PedalDraft } from '../../../reading/drafts/pedal-draft.js';
import { typedDraw, typedVolts, type LabelDraw, type LabelVolts } from '../../../reading/typed/label-figures.js';
import type { Typed } from '../../../reading/typed/typed.js';
import type { Asker } from './asker.js';
import { polarityChoices, powerChoices, type Signs } from './label-help.js';
import { askConnector, askKnown, askName, askTyped } from './questions.js';

/** What a pedal is asked about with. */
export type AroundPedal = {
  readonly signs: Signs;
  /** The ids that other pedals have. */
  readonly taken: ReadonlySet<string>;
  /** Whether the board's own `assume` block states the ground of pedals that say nothing. */
  readonly assumesGround: boolean;
};

/** Asks for all that is to be known about one pedal. What its owner does not know stays open. */
export async function askPedal(asker: Asker, { signs, taken, assumesGround }: AroundPedal): Promise<PedalDraft> {
  const name = await askName(asker, 'What is the pedal called?', taken);
  const kind = await askKind(asker);
  const read = (await askTyped(asker, 'Which volts does it ask for?', typedVolts, volts)) ?? nothingRead;
  const power = read.power ?? (await askKnown(asker, 'What stands beside the volts?', powerChoices(signs)));
  const polarity =
    power === 'AC' ? null : await askKnown(asker, 'Which sign is printed at its inlet?', polarityChoices(signs));
  const inlet = await askConnector(asker, 'Which plug goes into its power inlet?');
  const ground = await askGround(asker, kind, assumesGround);
  const draw = await askDraw(asker, kind, read);
  const alone = await asker.confirm('Does its maker ask for an output, or an adapter, of its own?', false);
  return { name, kind, power, volts: read.volts, polarity, inlet, ground, draw, alone };
}

async function askKind(asker: Asker): Promise<CircuitKind> {
  const choices = circuitKinds.map(({ key, label }) => ({ value: key, label }));
  const key = await asker.choose('What kind of circuit is it?', choices);
  const kind = circuitKinds.find((one) => one.key === key);
  if (kind === undefined) throw new Error(`there is no kind of circuit called ${key}`);
  return kind;
}

type Read = { readonly volts: LabelVolts | null; readonly power: Power | null; readonly draw: string | null };

const volts = { example: '9 V DC, 9-18 V, or ?' };
const nothingRead: Read = { volts: null, power: null, draw: null };

async function askGround(asker: Asker, kind: CircuitKind, assumesGround: boolean): Promise<PedalDraft['ground']> {
  if (assumesGround && !kind.mayHavePositiveGround) return 'assumed';
  return askKnown(asker, 'Is the ground of the pedal itself negative or positive?', [
    { value: 'negative', label: 'negative', hint: 'nearly all' },
    { value: 'positive', label: 'positive', hint: 'some old fuzz circuits; the maker says so' },
    { value: 'unknown', label: 'I do not know' },
  ]);
}

async function askDraw(asker: Asker, kind: CircuitKind, { volts, draw }: Read): Promise<KnownDraw | null> {
  const read = (answer: string): Typed<LabelDraw> => typedDraw(answer, volts);
  const beside = draw === null ? null : read(draw);
  const drawn =
    beside?.kind === 'said'
      ? beside.value
      : await askTyped(asker, 'What current does it draw?', read, { example: '300 mA, 0.3 A, 2.7 W, or ?' });
  if (drawn === null) {
    asker.say(
      `Then plans count with ${kind.planningMilliamps} mA, the upper end of what is usual for ${kind.label}, ` +
        'as a guess, times the guess factor of the policy. Each result asks you to confirm it.',
    );
    return null;
  }
  const figure = await asker.choose('Where did you read that?', [
    { value: 'label', label: 'on the pedal' },
    { value: 'manual', label: 'in its manual, or on the adapter that came with it' },
    { value: 'measured', label: 'on a meter' },
  ]);
  return { ...drawn, figure };
}
