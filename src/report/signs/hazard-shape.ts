import type { Hazard } from '../words/hazards.js';

/** The side of the square in which a shape is drawn. */
export const hazardShapeSize = 14;

/** What each hazard looks like, as the data of a path that is stroked: no two have the same outline, whatever their colour. */
export const hazardShapes: Readonly<Record<Hazard, string>> = {
  // A wave.
  AC: 'M1 7C2.5 1.5 5 1.5 7 7S11.5 12.5 13 7',
  // A triangle that warns.
  'over 9 V': 'M7 1.2L13.2 12.8H.8ZM7 5.2V8.6M7 10.2V11.4',
  // A plug from the front with plus at its centre.
  'plus pin': 'M1 7A6 6 0 1 0 13 7A6 6 0 1 0 1 7M7 4V10M4 7H10',
  // Two that change places.
  reverses: 'M.8 3.5H4L9.5 10.5H13M.8 10.5H4L9.5 3.5H13M11 1.3L13.2 3.5L11 5.7M11 8.3L13.2 10.5L11 12.7',
  // One that becomes three.
  chain: 'M.8 7H13M5 2V12M5 2H13M5 12H13',
  // An earth with a plus.
  'positive ground': 'M5 2V6.5M.8 6.5H9.2M2.4 9.2H7.6M4 11.9H6M11.2 1.2V6M8.8 3.6H13.6',
  // Two stems on one earth.
  'shared ground': 'M3.5 1V6M10.5 1V6M.8 6H13.2M3.4 9H10.6M5.7 12H8.3',
  // The corners of something that is not there yet.
  kept: 'M1 4.6V1H4.6M9.4 1H13V4.6M13 9.4V13H9.4M4.6 13H1V9.4',
};
