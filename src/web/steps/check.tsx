import type { ComponentChildren } from 'preact';

import type { CheckRow } from '../../report/words/steps.js';

type CheckProps = { readonly check: CheckRow; readonly isDone: boolean; readonly children: ComponentChildren };

/**
 * A plug to measure: how the meter is set and held, and what it must show before the pedal goes on. One that reads right is
 * folded to a line, so that the next one is in sight.
 */
export const Check = ({ check: { mark, pedal, range, probes, reads, note }, isDone, children }: CheckProps) => (
  <li class="check">
    <p>
      <b>
        Lead {mark}, {pedal}
      </b>
      {isDone ? `: ${reads}.` : `: meter on ${range}, ${probesText(probes)}.`}
    </p>
    {!isDone && (
      <p class="reading">
        It must read <b>{reads}</b>
        {note === null ? '' : `; ${note}`}.
      </p>
    )}
    {children}
  </li>
);

const probesText = (probes: CheckRow['probes']): string =>
  probes === null ? 'probes either way round' : `black to ${probes.black}, red to ${probes.red}`;
