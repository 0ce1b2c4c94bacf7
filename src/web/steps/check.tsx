import type { ComponentChildren } from 'preact';

import type { CheckRow } from '../../report/words/steps.js';

type CheckProps = { readonly check: CheckRow; readonly children: ComponentChildren };

/** A plug to measure: how the meter is set and held, and what it must show before the pedal goes on. */
export const Check = ({ check: { mark, pedal, range, probes, reads, note }, children }: CheckProps) => (
  <li class="check">
    <p>
      <b>
        Lead {mark}, {pedal}
      </b>
      : meter on {range},{' '}
      {probes === null ? 'probes either way round' : `black to ${probes.black}, red to ${probes.red}`}.
    </p>
    <p class="reading">
      It must read <b>{reads}</b>
      {note === null ? '' : `; ${note}`}.
    </p>
    {children}
  </li>
);
