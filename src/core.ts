/**
 * boardfeed as a library for wherever JavaScript runs: nothing here needs Node, prints, or ends a process. Read a board and a
 * catalogue with `inputsFromText`, hand them to `choose`, and print the answer with `answerText` or `answerJson`, or use it as it
 * is. `check` judges how the board is plugged today (print it with `checkText` or `checkJson`), `rewire` plans how to re-plug it
 * with the fewest moves (its answer is printed as that of `choose`), `checkOutput` whether one pedal can go on one output
 * (`outputAnswerText`, `outputAnswerJson`), `compare` sets purchases side by side (`comparisonText`, `comparisonJson`),
 * `explain` says why no plan exists and what would help, or why a plan is as it is (`explanationText`, `explanationJson`),
 * `verify` checks a result and its proof (`verdictText`, `verdictJson`),
 * `decisiveLabels` which labels decide (`labelsText`, `labelsJson`),
 * `chooseOrSeek` what to look for where a board without a catalogue has not enough (`wantedText`, `wantedJson`),
 * `spare` what else fits (`spareText`, `spareJson`), `addPedal` whether one more pedal does (`addedText`, `addedJson`).
 * A search blocks its thread but for its pauses; whoever has an engine that looks for better plans beside it hands it in
 * (`SearchOptions`).
 */
export { choosingAims, type ChoosingAim, type Tier } from './domain/aim.js';
export type { Board, Catalogue, Policy, WiredFeed } from './domain/board.js';
export type { GroundDomain, JudgedPlan } from './domain/judged-plan.js';
export { kitOf, type Kit } from './domain/kit.js';
export type { LoadNumbers, OutletLoad, TotalLoad } from './domain/load-numbers.js';
export type { Currency } from './domain/money.js';
export type { Part } from './domain/part.js';
export type { Pedal } from './domain/pedal.js';
export type { Exposure, Feed, Place, Purchase, Score, Wiring } from './domain/plan.js';
export type { Proof, ProofBranch, ProofCount, ProofNode, ProofStep, ProofTags, ProofTier } from './domain/proof.js';
export type { Microamps, Millivolts, Milliwatts, MinorUnits, PartId, PedalId, SupplyId } from './domain/quantities.js';
export { rulesBySeverity, type Rule } from './domain/rules.js';
export type { Bank, Setting, Supply, Total } from './domain/supply.js';
export type { Numbers, Violation } from './domain/violation.js';
export { faultText, type InputFault } from './reading/faults/input-fault.js';
export { inputsFromText, type BoardAlone, type Inputs } from './reading/inputs-from-text.js';
export type { ReadResult } from './reading/faults/input-fault.js';
export type { Answer, Gap, Reason, Refusal, RewireRequest } from './planning/answer.js';
export { check, type Check, type SoftFinding } from './planning/check/check.js';
export {
  checkOutput,
  type OutputAnswer,
  type OutputQuestion,
  type OutputTrial,
} from './planning/check/check-output.js';
export { resolvePurchases, type ResolvedPurchases } from './planning/compare/asked-supplies.js';
export { choose, type ChooseOptions, type Progress } from './planning/choose/choose.js';
export { compare, type BoughtUnits, type CompareOptions } from './planning/compare/compare.js';
export type {
  CompareStage,
  Comparison,
  FailedOption,
  Failure,
  Figures,
  Merit,
  Option,
  PlannedOption,
  Preference,
  TradeOff,
  TradeOffPoint,
  Unbeaten,
  UnbeatenPoint,
} from './planning/compare/comparison.js';
export { readPurchase, type AskedSupply, type ReadPurchase } from './planning/compare/read-purchase.js';
export type { Engine } from '../solver/engines/engine.js';
export { webTiming, type Timing } from '../solver/timing.js';
export type { Changes, Move } from './planning/rewire/changes.js';
export type { MoveReason } from './planning/rewire/move-reasons.js';
export { explain, type ExplainOptions, type Explanation } from './planning/explain/explain.js';
export { rewire, type RewireOptions } from './planning/rewire/rewire.js';
export type { SearchOptions } from './planning/asking/search-options.js';
export {
  decisiveLabels,
  labelsOf,
  type AskedLabel,
  type Decides,
  type DecisiveLabels,
} from './planning/ask/decisive-labels.js';
export { addPedal, type Added } from './planning/spare/add-pedal.js';
export { spare, type NoBasis, type Room, type Spare } from './planning/spare/spare.js';
export type { ReplugStep, UnitPlace } from './planning/rewire/steps.js';
export { chooseOrSeek, type Wanted, type WantedLead } from './planning/wanted/wanted.js';
export type { WantedOutputs } from './planning/wanted/found-outputs.js';
export { verify, type Claim, type Verdict } from './planning/verify/verify.js';
export { parseProof, type ParsedProof, type ProofFault } from './proof/proof-schema.js';
export {
  verifyImpossible,
  verifyProof,
  type ImpossibilityVerdict,
  type ProofVerdict,
  type VerifyProgress,
} from './proof/verify-proof.js';
export { checkJson } from './report/json/check-codec.js';
export { checkText } from './report/screen/check-screen.js';
export { explanationJson } from './report/json/explanation-codec.js';
export { explanationText } from './report/screen/explain-screen.js';
export { comparisonJson } from './report/json/comparison-codec.js';
export { comparisonText } from './report/screen/comparison-screen.js';
export { reportFormatOf, reportText, type ReportFormat } from './report/formats.js';
export type { ReportInput } from './report/words/handout.js';
export { answerJson } from './report/json/plan-codec.js';
export { verdictJson } from './report/json/verdict-codec.js';
export { wantedJson } from './report/json/wanted-codec.js';
export { outputAnswerJson } from './report/json/output-codec.js';
export { outputAnswerText } from './report/screen/output-screen.js';
export type { ScreenOptions } from './report/screen/screen.js';
export { labelsJson } from './report/json/labels-codec.js';
export { labelsText } from './report/screen/labels-screen.js';
export { addedJson, spareJson } from './report/json/spare-codec.js';
export { addedText, spareText } from './report/screen/spare-screen.js';
export { answerText } from './report/screen/terminal.js';
export { wantedText } from './report/screen/wanted-screen.js';
export { verdictText } from './report/screen/verdict.js';
