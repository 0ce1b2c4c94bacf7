import { useId } from 'preact/hooks';

import { circuitKinds } from '../../domain/circuit-kinds.js';
import { sayingOf } from '../document/change-pedal.js';
import type { TileProps } from './tile-props.js';

/** What kind of circuit it is: it is planned with what such circuits usually draw until its draw is read. */
export function KindChoice({ pedal, state }: TileProps) {
  const id = useId();
  const { circuit } = pedal.stated;
  const choose = (key: string): void => {
    const kind = circuitKinds.find((one) => one.key === key);
    if (kind === undefined) return;
    const { digital, highGain } = kind;
    state.change(sayingOf(pedal, { circuit: key, digital, highGain }));
  };
  return (
    <div>
      <label for={id}>Until then it is planned as</label>
      <select
        id={id}
        value={typeof circuit === 'string' ? circuit : ''}
        onChange={({ currentTarget }) => choose(currentTarget.value)}
      >
        {circuitKinds.map(({ key, label, planningMilliamps }) => (
          <option key={key} value={key}>
            {label}: {planningMilliamps} mA
          </option>
        ))}
      </select>
    </div>
  );
}
