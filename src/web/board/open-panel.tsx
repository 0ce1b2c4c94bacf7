import type { UnknownField } from '../../domain/pedal.js';
import { signIcon } from '../../report/signs/icons.js';
import { whereToLook } from '../../report/words/label-places.js';
import { isNotOnLabel, notOnLabel, sayingOf } from '../document/change-pedal.js';
import { KindChoice } from './kind-choice.js';
import { LabelField } from './label-field.js';
import type { TileProps } from './tile-props.js';

type PanelProps = TileProps & { readonly field: UnknownField; readonly close: () => void };

/** What nobody has read: where it stands on a label, the signs to choose from, and that it does not stand there. */
export function OpenPanel({ pedal, state, field, close }: PanelProps) {
  const say = (value: unknown): void => {
    state.change(sayingOf(pedal, { [field]: value }));
    close();
  };
  return (
    <div class="panel" role="group" aria-label={`Label of ${pedal.name}`}>
      <p>Look for {whereToLook[field]}.</p>
      <div class="choices">
        {choices[field].map(({ value, words, sign }) => (
          <button key={words} type="button" onClick={() => say(value)}>
            {sign !== undefined && <span class="sign" dangerouslySetInnerHTML={{ __html: sign }} />} {words}
          </button>
        ))}
      </div>
      {(field === 'volts' || field === 'milliamps' || field === 'inlet') && (
        <LabelField pedal={pedal} state={state} done={close} hint={hints[field]} />
      )}
      {field === 'milliamps' && <KindChoice pedal={pedal} state={state} />}
      {!isNotOnLabel(state.document.value, pedal, field) && (
        <button
          type="button"
          onClick={() => {
            state.change(notOnLabel(pedal, field));
            close();
          }}
        >
          Not on the label
        </button>
      )}
      {isNotOnLabel(state.document.value, pedal, field) && <p>{untilThen[field]}</p>}
    </div>
  );
}

const hints = { volts: '9 V', milliamps: '300 mA', inlet: 'inlet usb-c' } as const;

type Choice = { readonly value: unknown; readonly words: string; readonly sign?: string };

/** What labels say most. A sign is drawn by the reports and escaped there. */
const choices: Readonly<Record<UnknownField, readonly Choice[]>> = {
  power: [
    { value: 'DC', words: '⎓ DC' },
    { value: 'AC', words: '∿ AC' },
  ],
  polarity: [
    { value: 'centre-negative', words: 'minus on the pin', sign: signIcon('centre-negative').markup },
    { value: 'centre-positive', words: 'plus on the pin', sign: signIcon('centre-positive').markup },
  ],
  inlet: [
    { value: 'barrel-2.1', words: 'barrel, 2.1 mm pin' },
    { value: 'barrel-2.5', words: 'barrel, 2.5 mm pin' },
    { value: 'jack-3.5', words: 'jack, 3.5 mm' },
  ],
  ground: [
    { value: 'negative', words: 'negative ground' },
    { value: 'positive', words: 'positive ground' },
  ],
  volts: [
    { value: 9, words: '9 V' },
    { value: 12, words: '12 V' },
    { value: 18, words: '18 V' },
  ],
  milliamps: [],
};

/** What comes of a label that does not say it. */
const untilThen: Readonly<Record<UnknownField, string>> = {
  power: 'A place is kept for it. Ask its maker, and plug nothing in before.',
  polarity: 'The plan has leads for either. Ask its maker, or measure at its own supply, before you plug it in.',
  inlet: 'A place is kept for it. Try leads that are unplugged, and plug nothing in before.',
  ground: 'It shares its ground with no other pedal, which is right for either.',
  volts: 'A place is kept for it. Ask its maker, and plug nothing in before.',
  milliamps: 'It is planned as such pedals usually draw, with a reserve for guesses.',
};
