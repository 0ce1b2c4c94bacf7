import type { Violation } from '../domain/violation.js';
import type { Millivolts } from '../domain/quantities.js';
import type { Bank } from '../domain/supply.js';
import { linesByOutput, pedalsOf, type Layout, type Line, type Tap, type UnitInUse } from './line.js';
import { placeInUnit, violation } from './violation.js';
import { list, names, outputPlace, volts } from './words.js';

/** An output gives one setting that it has; a bank switched together gives one to all its outputs in use. */
export function settingViolations(layout: Layout): readonly Violation[] {
  return [
    ...layout.lines.flatMap(settingsNotOffered),
    ...layout.units.flatMap((unit) => [...outputsTornApart(unit), ...banksTornApart(unit)]),
  ];
}

function settingsNotOffered(line: Line): readonly Violation[] {
  return line.taps
    .filter((tap) => tap.setting === null)
    .map((tap) => {
      const place = outputPlace(line.supply, line.feed.unit, [tap.output]);
      const offered = list(
        tap.bank.settings.map((setting) => volts(setting.millivolts)),
        'or',
      );
      const message = `${line.pedal.name} counts on ${volts(tap.millivolts)} from ${place}, which gives ${offered}`;
      const { supply, unit } = line.feed;
      return violation('setting', [line.pedal], message, { place: { supply, unit, outputs: [tap.output] } });
    });
}

function outputsTornApart(unit: UnitInUse): readonly Violation[] {
  return [...linesByOutput(unit)].flatMap(([output, lines]) => {
    const settings = settingsOf(lines, (tap) => tap.output === output);
    if (settings.size < 2) return [];
    const where = outputPlace(unit.supply, unit.unit, [output]);
    const message = `${where} cannot give ${textOf(settings)} at once, for ${names(pedalsOf(lines))}`;
    return [violation('setting', pedalsOf(lines), message, { place: placeInUnit(unit, [output]) })];
  });
}

function banksTornApart(unit: UnitInUse): readonly Violation[] {
  return unit.supply.banks.flatMap((bank) => {
    if (bank.switching === 'each') return [];
    const inBank = (tap: { readonly bank: Bank }): boolean => tap.bank === bank;
    const lines = unit.lines.filter((line) => line.taps.some(inBank));
    const settings = settingsOf(lines, inBank);
    const outputs = new Set(lines.flatMap((line) => line.taps.filter(inBank).map((tap) => tap.output)));
    if (settings.size < 2 || outputs.size < 2) return [];
    const place = placeInUnit(unit, outputs);
    const where = outputPlace(unit.supply, unit.unit, place.outputs);
    const message = `${where} are switched together and cannot give ${textOf(settings)} at once`;
    return [violation('setting', pedalsOf(lines), message, { place })];
  });
}

/** The different volts that the lines count on. */
const settingsOf = (lines: readonly Line[], counts: (tap: Tap) => boolean): ReadonlySet<Millivolts> =>
  new Set(lines.flatMap((line) => line.taps.filter(counts).map((tap) => tap.millivolts)));

const textOf = (settings: ReadonlySet<Millivolts>): string => list([...settings].map(volts));
