import { withBoard, withThings } from '../../src/domain/changed-kit.js';
import { kitOf, type Kit } from '../../src/domain/kit.js';
import { wiredAs } from '../../src/domain/wired-as.js';
import { join, resolve } from 'node:path';
import { readInputs } from '../../src/node/disk/read-inputs.js';
import { check } from '../../src/planning/check/check.js';
import { choose, type ChooseOptions } from '../../src/planning/choose/choose.js';
import { spare } from '../../src/planning/spare/spare.js';
import { type ReportInput } from '../../src/report/words/handout.js';
import { checkPage } from '../../src/report/page/check-page.js';
import { sparePage } from '../../src/report/page/spare-page.js';
import { everything } from '../src/report/everything.js';
import { moving } from '../src/report/moving.js';

const fixtures = resolve(import.meta.dirname, '../../fixtures');

/** Names that try to run, to break out of where they stand, or to lie on others. */
const hostile = [
  '</title><script>alert(1)</script>',
  '"><img src=http://a.example/x onerror=alert(1)>',
  '</style></svg><svg onload=alert(1)>',
  'W'.repeat(90),
  'Wide Mouthed WWWWW %%%%% @@@@@ '.repeat(3),
  '\u202e\u0000\u001b[31m &amp; ]]> <!-- ${x} `x`',
  '日本語のとても長い名前のペダル',
  'Очень длинное имя педали',
  'iiiiiiiiii.llllllllll|||||||||',
];

/** The inputs of reports, each solved once for all tests. */
export async function inputsFor(): Promise<Readonly<Record<string, ReportInput>>> {
  const solved = async (
    board: string,
    { shop = 'marram-street', ...options }: ChooseOptions & { readonly shop?: string } = {},
  ): Promise<ReportInput> => {
    const read = await readInputs(join(fixtures, `boards/${board}.yaml`), join(fixtures, `shops/${shop}.yaml`));
    if (read.kind === 'faulty') throw new Error(`${board} is faulty`);
    return { kit: read.value, answer: await choose(read.value, { ...options }) };
  };
  const named = (): ((id: string) => string) => {
    let next = 0;
    return () => hostile[next++ % hostile.length] ?? '';
  };
  const names = everything(named());
  const moved = ({ board, catalogue, plan }: ReturnType<typeof moving>): ReportInput => ({
    kit: kitOf(board, catalogue),
    answer: plan,
  });
  const plain = everything((id) => id);
  const planOf = ({ board, catalogue, wiring, reasons }: typeof plain): ReportInput => ({
    kit: kitOf(board, catalogue),
    answer: { kind: 'plan', aim: 'cost', wiring, gap: { tier: 'cost', value: 24_400, bound: 20_000 }, reasons },
  });
  const gigBoard = await solved('gig-board');
  return {
    // The first plan will do: its proof takes as long as all pages.
    'the studio wall': await solved('studio-wall', { remainingMs: () => 0 }),
    'the gig board': gigBoard,
    'the gig board with hostile names': { ...gigBoard, kit: renamed(gigBoard.kit, named()) },
    'a board with every source': await solved('mixed-stage', { shop: 'slipway' }),
    'a board on a converter lead': await solved('bandstand', { shop: 'pontoon' }),
    'an impossible board': await solved('impossible'),
    'everything that a plan can hold': planOf(plain),
    'hostile names': planOf(names),
    'a plan for re-plugging': moved(moving((id) => id)),
    're-plugging with hostile names': moved(moving(named())),
    'a search that was stopped': {
      kit: kitOf(plain.board, plain.catalogue),
      answer: { kind: 'stopped', aim: 'cost' },
    },
  };
}

/** The board with other names, for all that has one. */
function renamed(kit: Kit, nameOf: (id: string) => string): Kit {
  const pedals = kit.board.pedals.map((pedal) => ({ ...pedal, name: nameOf(pedal.id) }));
  return withThings(withBoard(kit, { ...kit.board, pedals }), (supply) => ({ ...supply, name: nameOf(supply.id) }));
}

/** The board as it is plugged once the plan is carried out; as it was where there is none. */
export const plugged = ({ kit, answer }: ReportInput): Kit =>
  answer.kind === 'plan' ? withBoard(kit, { ...kit.board, ...wiredAs(kit, answer.wiring) }) : kit;

/** Pages of what is plugged. */
export const pagesOfPlugged = {
  check: (kit: Kit) => checkPage({ kit, answer: check(kit) }),
  spare: async (kit: Kit) => sparePage({ kit, answer: await spare(kit, { remainingMs: () => 0 }) }),
} as const;
