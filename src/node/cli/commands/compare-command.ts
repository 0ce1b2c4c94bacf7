import type { ChoosingAim } from '../../../domain/aim.js';
import type { Catalogue } from '../../../domain/board.js';
import type { BoughtUnits } from '../../../planning/compare/compare.js';
import type { Comparison } from '../../../planning/compare/comparison.js';
import { resolvePurchases } from '../../../planning/compare/asked-supplies.js';
import type { AskedSupply } from '../../../planning/compare/read-purchase.js';
import { comparisonReports } from '../../../report/comparison-formats.js';
import { comparisonJson } from '../../../report/json/comparison-codec.js';
import { comparisonText } from '../../../report/screen/comparison-screen.js';
import { readInputs } from '../../disk/read-inputs.js';
import { compare } from '../../threads/planning.js';
import { comparisonCode, type ExitCode } from '../exit-codes.js';
import { patience } from '../patience.js';
import { carryOut, readOne, refused, type Asked } from '../pipeline.js';
import { compareAloud } from '../progress/aloud.js';
import { reportFiles } from '../written/report-files.js';
import { occasionNow, type SheetFlags } from '../written/sheet-beside.js';
import type { BoardFlags } from './board-question.js';

/** The time is that for each board. */
export type CompareFlags = BoardFlags &
  SheetFlags & {
    readonly aim: ChoosingAim;
    /** How many best purchases; choices that differ in kind when left out. */
    readonly best?: number;
    /** Purchases to set beside them. */
    readonly option: readonly (readonly AskedSupply[])[];
  };

/** Sets purchases side by side, and returns the exit code. */
export async function runCompare(boardPath: string, cataloguePath: string, flags: CompareFlags): Promise<ExitCode> {
  const { aim, best, option, json, time } = flags;
  const limit = time === undefined ? {} : { remainingMs: patience(time) };
  return carryOut({
    read: async () => readOne(readInputs(boardPath, cataloguePath, flags)),
    ask: ({ catalogue }) => askedPurchases(option, catalogue),
    files: reportFiles(flags, comparisonReports, [boardPath, cataloguePath], (kit, comparison: Comparison) => ({
      kit,
      comparison,
      occasion: occasionNow(flags.shop),
    })),
    call: async (kit, asked) =>
      compareAloud(kit.board, best ?? null, (aloud) => compare(kit, { aim, best, asked, ...limit, ...aloud })),
    json,
    print: { json: comparisonJson, screen: comparisonText },
    code: comparisonCode,
  });
}

/** The purchases that were asked for, as the catalogue has them. */
export function askedPurchases(option: CompareFlags['option'], catalogue: Catalogue): Asked<readonly BoughtUnits[]> {
  const resolved = resolvePurchases(option, catalogue);
  return resolved.kind === 'unknown'
    ? refused('--option', resolved.faults)
    : { kind: 'asked', value: resolved.purchases };
}
