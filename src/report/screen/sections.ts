import type { JudgedPlan } from '../../domain/judged-plan.js';
import { everyFeed, type Feed, type Wiring } from '../../domain/plan.js';
import type { Reason } from '../../planning/answer.js';
import { block, type Paint } from './layout.js';
import type { Remark } from '../words/remark.js';
import { cautionRemarks, confirmLead, confirmRemarks, groundRemarks, leftOutRemarks } from '../words/remarks.js';
import { bullet, type Screen } from './screen.js';

const indent = 2;

/** The pedals without power. */
export const leftOutLines = (screen: Screen, wiring: JudgedPlan, reasons: readonly Reason[]): string[] =>
  remarkLines(screen, leftOutRemarks(screen, wiring, reasons));

/** What was assumed or guessed; nothing where all is stated. */
export function confirmLines(screen: Screen, wiring: Pick<Wiring, 'feeds' | 'inlets'>): string[] {
  const remarks = confirmRemarks(screen, wiring);
  if (remarks.length === 0) return [];
  const lead = block([{ text: confirmLead, paint: screen.paints.faint }], screen.width, indent);
  return [...lead, ...remarkLines(screen, remarks)];
}

/** Who shares a ground with whom. */
export const groundLines = (screen: Screen, wiring: JudgedPlan): string[] =>
  remarkLines(screen, groundRemarks(screen, wiring));

/** What to mind. */
export const cautionLines = (
  screen: Screen,
  wiring: Pick<JudgedPlan, 'feeds' | 'inlets' | 'grounds' | 'runtimes' | 'batteries'>,
  of: 'plan' | 'check' = 'plan',
  hanging: readonly Pick<Feed, 'supply'>[] = everyFeed(wiring),
): string[] => remarkLines(screen, cautionRemarks(screen, wiring, of, hanging));

/** One below the other, what asks for care in its colour. */
export const remarkLines = (screen: Screen, remarks: readonly Remark[]): string[] =>
  remarks.flatMap(({ text, care }) => bullets(screen, [text], care ? screen.paints.caution : undefined));

/** A bulleted list below a heading. */
export const bullets = (screen: Screen, texts: readonly string[], paint?: Paint): string[] =>
  block(
    texts.map((text) => bullet(screen, text, paint)),
    screen.width,
    indent,
  );
