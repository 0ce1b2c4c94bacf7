import { useId } from 'preact/hooks';

import type { ChoosingAim } from '../../domain/aim.js';
import { startingBatteries, startingRuntime } from '../../reading/drafts/starting-policy.js';
import { typedBudget } from '../../reading/typed/budget.js';
import { settingIn, withSetting } from '../document/change-supplies.js';
import type { PageState } from '../page-state.js';
import { SettingsHelp } from './settings-help.js';
import { SettingField } from './setting-field.js';
import { mapOf } from '../../reading/text/data.js';

const aims: Readonly<Record<ChoosingAim, string>> = {
  cost: 'the least money',
  quiet: 'the least noise',
  bricks: 'the fewest supplies',
};

/** The mains that there are on tours. */
const venues: readonly (readonly number[])[] = [[230], [120], [120, 230], [100], [100, 120, 230]];

/** What is asked of any answer: the most to spend, mains, sockets, and what counts most. */
export function Settings({ state }: { readonly state: PageState }) {
  const data = state.data.value;
  const currency = textOf(settingIn(data, ['currency']));
  return (
    <div class="settings">
      <SettingField
        label={`Budget in ${currency}`}
        hint="none"
        value={textOf(settingIn(data, ['policy', 'budget']))}
        take={(text) => {
          const read = typedBudget(text, currency);
          if (read.kind === 'unclear') return read.remedy;
          state.change((document) =>
            withSetting(
              ['policy', 'budget'],
              read.value.budget ?? undefined,
            )(withSetting(['currency'], read.value.currency)(document)),
          );
          return null;
        }}
      />
      <SettingField
        label="Mains sockets"
        hint="any number"
        value={textOf(settingIn(data, ['policy', 'sockets']))}
        take={(text) => {
          if (text !== '' && !/^\d{1,3}$/.test(text)) return 'Write how many there are, such as 4, or nothing.';
          state.change(withSetting(['policy', 'sockets'], text === '' ? undefined : Number(text)));
          return null;
        }}
      />
      <Mains state={state} />
      <HoursField state={state} of="runtime" label="Hours on power banks" />
      <HoursField state={state} of="batteries" label="Hours on batteries" />
      <Choice
        label="What counts most"
        value={state.document.value.aim}
        choices={Object.entries(aims)}
        choose={(aim) => state.change((document) => ({ ...document, aim: aim as ChoosingAim }))}
      />
      <SettingsHelp />
    </div>
  );
}

/** What is asked of a source that is used up: of each the figure to be typed, and what is usual beside it. */
const hoursOf = {
  runtime: { figure: 'hours', usual: startingRuntime },
  batteries: { figure: 'pay', usual: startingBatteries },
} as const;

type HoursProps = { readonly state: PageState; readonly of: keyof typeof hoursOf; readonly label: string };

/** Whoever says no hours uses none of them. */
function HoursField({ state, of, label }: HoursProps) {
  const path = ['policy', of] as const;
  const stated = mapOf(settingIn(state.data.value, path));
  const { figure, usual } = hoursOf[of];
  return (
    <SettingField
      label={label}
      hint="none used"
      value={textOf(stated[figure])}
      take={(text) => {
        const hours = Number(text);
        if (text !== '' && !(hours > 0 && /^\d{1,4}(\.\d)?$/.test(text)))
          return 'Write the hours, such as 4 or 2.5, or nothing.';
        state.change(withSetting(path, text === '' ? undefined : { ...usual, ...stated, [figure]: hours }));
        return null;
      }}
    />
  );
}

const textOf = (value: unknown): string =>
  typeof value === 'number' || typeof value === 'string' ? String(value) : '';

function Mains({ state }: { readonly state: PageState }) {
  const stated = settingIn(state.data.value, ['policy', 'mains']);
  const value =
    stated === undefined || stated === null ? '' : (Array.isArray(stated) ? stated : [stated]).map(textOf).join(' ');
  const usual = venues.map((volts) => volts.join(' '));
  const known = ['', ...usual, ...(value === '' || usual.includes(value) ? [] : [value])];
  return (
    <Choice
      label="Mains volts"
      value={value}
      choices={known.map((one) => [one, one === '' ? 'not asked' : `${one.replaceAll(' ', ' and ')} V`])}
      choose={(one) => {
        const [first, ...others] = one.split(' ').map(Number);
        const mains = one === '' ? undefined : others.length === 0 ? first : [first, ...others];
        state.change(withSetting(['policy', 'mains'], mains));
      }}
    />
  );
}

type ChoiceProps = {
  readonly label: string;
  readonly value: string;
  readonly choices: readonly (readonly [string, string])[];
  readonly choose: (value: string) => void;
};

function Choice({ label, value, choices, choose }: ChoiceProps) {
  const id = useId();
  return (
    <div class="setting">
      <label for={id}>{label}</label>
      <select id={id} value={value} onChange={({ currentTarget }) => choose(currentTarget.value)}>
        {choices.map(([key, words]) => (
          <option key={key} value={key}>
            {words}
          </option>
        ))}
      </select>
    </div>
  );
}
