import { useId } from 'preact/hooks';

import { batterySetText } from '../../report/words/battery-words.js';
import { poweredBy } from '../document/change-pedal.js';
import { settingIn } from '../document/change-supplies.js';
import type { TileProps } from './tile-props.js';
import { mapOf, type Data } from '../../reading/text/data.js';

/** What stands on most adapters. */
const usualAdapters: readonly Data[] = [
  { mains: { from: 100, to: 240 } },
  { mains: { from: 220, to: 240 } },
  { mains: { from: 100, to: 120 } },
  {},
];

/** What goes into most pedals that run on batteries. */
const usualSets: readonly Data[] = [
  { type: '9V-block', count: 1 },
  { type: '9V-block', count: 2 },
  { type: 'AA', count: 4 },
  { type: 'AA', count: 6 },
];

/** What a pedal may be powered by that is its own: the adapter that it came with, and batteries in it. */
export function OwnSources({ pedal, state }: TileProps) {
  const { adapter, battery } = pedal.stated;
  const isUsed = settingIn(state.data.value, ['policy', 'batteries']) !== undefined;
  return (
    <>
      <SourceChoice
        label="Adapter that it came with"
        stated={adapter}
        usual={usualAdapters}
        textOf={adapterText}
        choose={(value) => state.change(poweredBy(pedal, 'adapter', value))}
      />
      <SourceChoice
        label="Batteries that go into it"
        stated={battery}
        usual={usualSets}
        textOf={setText}
        choose={(value) => state.change(poweredBy(pedal, 'battery', value))}
      />
      {battery !== undefined && !isUsed && (
        <p class="minor">They are used once “Hours on batteries” says for how many.</p>
      )}
    </>
  );
}

type SourceProps = {
  readonly label: string;
  readonly stated: unknown;
  readonly usual: readonly Data[];
  readonly textOf: (value: Data) => string;
  readonly choose: (value: Data | undefined) => void;
};

function SourceChoice({ label, stated, usual, textOf, choose }: SourceProps) {
  const id = useId();
  const now = stated === undefined ? '' : textOf(mapOf(stated));
  const known = new Map(usual.map((value) => [textOf(value), value]));
  return (
    <div class="setting">
      <label for={id}>{label}</label>
      <select id={id} value={now} onChange={({ currentTarget: { value } }) => choose(known.get(value))}>
        {[...new Set(['', now, ...known.keys()])].map((words) => (
          <option key={words} value={words}>
            {words === '' ? 'none' : words}
          </option>
        ))}
      </select>
    </div>
  );
}

function adapterText({ mains }: Data): string {
  if (typeof mains === 'number') return `kept, for ${mains} V`;
  if (mains === undefined) return 'kept, for mains that nobody has read';
  const { from, to } = mapOf(mains);
  return `kept, for ${String(from)} to ${String(to)} V`;
}

const setText = ({ type, count }: Data): string => batterySetText(String(type), Number(count));
