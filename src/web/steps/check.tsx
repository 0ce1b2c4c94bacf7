import type { ComponentChildren } from 'preact';

import type { CheckRow } from '../../report/words/steps.js';

type CheckProps = {
  /** For either reading of the pedal's label where nobody has read it. */
  readonly checks: readonly CheckRow[];
  readonly isDone: boolean;
  readonly children: ComponentChildren;
};

/**
 * A plug to measure: how the meter is set and held, and what it must show before the pedal goes on. One that reads right is
 * folded to a line, so that the next one is in sight.
 */
export const Check = ({ checks, isDone, children }: CheckProps) => (
  <li class="check">
    {checks.map((check) => (
      <Reading key={check.pedal} check={check} isDone={isDone} />
    ))}
    {children}
  </li>
);

type ReadingProps = { readonly check: CheckRow; readonly isDone: boolean };

const Reading = ({ check: { mark, pedal, range, probes, reads, note }, isDone }: ReadingProps) => (
  <>
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
  </>
);

const probesText = (probes: CheckRow['probes']): string =>
  probes === null ? 'probes either way round' : `black to ${probes.black}, red to ${probes.red}`;
