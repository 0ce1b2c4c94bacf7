import { circuitKinds, type CircuitKind } from '../../../domain/circuit-kinds.js';
import type { Ground, Polarity, Power } from '../../../domain/pedal.js';
import type { KnownDraw, PedalDraft } from '../../../reading/drafts/pedal-draft.js';
import { typedDraw, typedVolts, type LabelVolts, type TypedDraw } from '../../../reading/typed/label-figures.js';
import type { Asker } from './asker.js';
import { polarityChoices, powerChoices, type Signs } from './label-help.js';
import { askConnector, askName } from './questions.js';

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
  const read = await askVolts(asker);
  const power = read.power ?? (await askPower(asker, signs));
  const polarity = power === 'AC' ? null : await askPolarity(asker, signs);
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

async function askVolts(asker: Asker): Promise<Read> {
  const check = (answer: string): string | null => {
    const typed = typedVolts(answer);
    return typed.kind === 'unclear' ? typed.remedy : null;
  };
  const typed = typedVolts(
    await asker.text('Which volts does it ask for?', { example: '9 V DC, 9-18 V, or ?', check }),
  );
  return typed.kind === 'volts' ? typed : { volts: null, power: null, draw: null };
}

async function askPower(asker: Asker, signs: Signs): Promise<Power | null> {
  const chosen = await asker.choose('What stands beside the volts?', powerChoices(signs));
  return chosen === 'unknown' ? null : chosen;
}

async function askPolarity(asker: Asker, signs: Signs): Promise<Polarity | null> {
  const chosen = await asker.choose('Which sign is printed at its inlet?', polarityChoices(signs));
  return chosen === 'unknown' ? null : chosen;
}

async function askGround(asker: Asker, kind: CircuitKind, assumesGround: boolean): Promise<PedalDraft['ground']> {
  if (assumesGround && !kind.mayHavePositiveGround) return 'assumed';
  const choices = [
    { value: 'negative', label: 'negative', hint: 'nearly all' },
    { value: 'positive', label: 'positive', hint: 'some old fuzz circuits; the maker says so' },
    { value: 'unknown', label: 'I do not know' },
  ] as const;
  const chosen: Ground | 'unknown' = await asker.choose(
    'Is the ground of the pedal itself negative or positive?',
    choices,
  );
  return chosen === 'unknown' ? null : chosen;
}

async function askDraw(asker: Asker, kind: CircuitKind, read: Read): Promise<KnownDraw | null> {
  const typedOf = (answer: string): TypedDraw => typedDraw(answer, read.volts);
  const check = (answer: string): string | null => {
    const typed = typedOf(answer);
    return typed.kind === 'unclear' ? typed.remedy : null;
  };
  const given = read.draw === null ? null : typedOf(read.draw);
  const typed =
    given?.kind === 'milliamps'
      ? given
      : typedOf(await asker.text('What current does it draw?', { example: '300 mA, 0.3 A, 2.7 W, or ?', check }));
  if (typed.kind !== 'milliamps') {
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
  return { milliamps: typed.milliamps, workings: typed.workings, figure };
}
