import type { Polarity } from '../../domain/pedal.js';
import { markup, type Markup } from '../page/markup.js';

/** A round plug from the front: its pin, its sleeve with a gap, and which of them is plus. The words stand beside it. */
export function polaritySign(polarity: Polarity): Markup {
  const [sleeve, pin] = polarity === 'centre-negative' ? ['+', '−'] : ['−', '+'];
  return markup`<svg class="sign" viewBox="0 0 76 24" width="76" height="24" aria-hidden="true" focusable="false">
<circle cx="10" cy="12" r="8.5"/><text x="10" y="16.5">${pin}</text>
<path d="M18.5 12H38"/><circle class="pin" cx="38" cy="12" r="3.5"/>
<path d="M44.4 5.6A9 9 0 1 1 31.6 5.6"/><path d="M47 12H57.5"/>
<circle cx="66" cy="12" r="8.5"/><text x="66" y="16.5">${sleeve}</text>
</svg>`;
}
