import { kitOf } from '../../src/domain/kit.js';
import { boardText, catalogueText, impossible, type Case } from './cases/case.js';
import { answerJson, choose, faultText, inputsFromText, type ChooseOptions } from '../../src/index.js';

export type Plan = {
  readonly format: string;
  readonly status: string;
  readonly currency: string;
  readonly score: Readonly<Record<string, number | string | null>>;
  readonly buy: {
    readonly supplies: readonly Purchase[];
    readonly parts: readonly Purchase[];
    readonly batteries: readonly Purchase[];
  };
  readonly feeds: readonly Feed[];
  readonly inlets: readonly {
    readonly supply: string;
    readonly unit: number;
    readonly from: { readonly supply: string; readonly unit: number; readonly output: number };
    readonly parts: readonly string[];
  }[];
  readonly unpowered: readonly string[];
  readonly exposed: readonly string[];
  readonly moved: readonly string[];
  readonly confirm: readonly Readonly<Record<string, unknown>>[];
  readonly cautions: readonly string[];
  readonly reasons: readonly Readonly<Record<string, unknown>>[];
};

type Purchase = { readonly id: string; readonly units: number; readonly price: string };

export type Feed = {
  readonly pedal: string;
  readonly source: string;
  readonly supply: string;
  readonly unit: number;
  readonly outputs: readonly number[];
  readonly volts: number;
  readonly polarity: string | null;
  readonly join: { readonly mode: string; readonly part: string } | null;
  readonly chain: string | null;
  readonly parts: readonly string[];
};

/** The messages about two texts; none when they are read. */
export function messagesAbout(board: string, catalogue: string): readonly string[] {
  const read = inputsFromText({ file: 'board.yaml', text: board }, { file: 'shop.yaml', text: catalogue });
  return read.kind === 'faulty' ? read.faults.map(faultText) : [];
}

/** What `choose --json` prints for two texts. */
export async function ask(boardFile: string, catalogueFile: string, options: ChooseOptions = {}): Promise<Plan> {
  const read = inputsFromText({ file: 'board.yaml', text: boardFile }, { file: 'shop.yaml', text: catalogueFile });
  if (read.kind === 'faulty') throw new Error(read.faults.map(faultText).join('\n'));
  const { board, catalogue } = read.value;
  const answer = await choose(kitOf(board, catalogue), { ...options });
  return JSON.parse(answerJson(kitOf(board, catalogue), answer)) as Plan;
}

/** The same for a case of which nobody has said the answer. */
export function asked(one: Omit<Case, 'says' | 'answer'>): Promise<Plan> {
  const whole: Case = { ...one, says: '', answer: impossible() };
  return ask(boardText(whole), catalogueText(whole), { aim: one.aim ?? 'cost', partial: one.partial ?? false });
}
