import type {
  CellUsed,
  HeldAtEdge,
  TableAnswer,
  TableAxis,
  TablePlace,
} from '../performance/performance-table.ts';
import type { DistanceStep } from '../performance/runway-distances.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import { fieldText, shown, unitSuffix } from '../units/shown.ts';

type TableUnits = Pick<UnitPreferences, 'mass' | 'altitude' | 'temperature' | 'speed'>;

/**
 * What stands beside a figure read from a table: that less favourable air or load than asked was taken, or why there is no
 * figure. '' where the table covers the place.
 * @example "No better than this: the table begins at 0 °C, −5 °C was asked."
 * @example "No figure: 35 °C is hotter than the table goes, 30 °C at 3280 ft. Counted as a limit that is not met."
 */
export function tableNote(answer: TableAnswer, units: TableUnits): string {
  switch (answer.kind) {
    case 'value':
      return answer.heldAtEdge.length === 0
        ? ''
        : `No better than this: ${answer.heldAtEdge.map((held) => heldWords(held, units)).join('; ')}.`;
    case 'beyondTable': {
      const under = placeWords(answer.under, units);
      return (
        `No figure: ${axisText(answer.axis, answer.asked, units)} is ${BEYOND[answer.axis]} than the table goes, ` +
        `${axisText(answer.axis, answer.edge, units)}${under === '' ? '' : ` at ${under}`}. ` +
        'Counted as a limit that is not met.'
      );
    }
    case 'blankCell':
      return `No figure: the manual leaves the cell at ${placeWords(answer.at, units)} blank. Counted as a limit that is not met.`;
  }
}

/** The printed cells that a figure rests on, each with its share: "230 at 0 ft, 20 °C (38 %)". */
export function cellsUsedWords(
  cells: readonly CellUsed[],
  units: TableUnits,
  valueText: (value: number) => string,
): string[] {
  return cells.map(
    ({ at, value, weightRatio }) =>
      `${valueText(value)} at ${placeWords(at, units)} (${shown(weightRatio, 'share', '%')})`,
  );
}

/** One step of a distance: what was done, by how much, from where, and what it is worth as evidence. */
export function distanceStepWords(step: DistanceStep, units: Pick<UnitPreferences, 'distance'>): string {
  const by = [
    ...(step.factorRatio === 1 ? [] : [`× ${step.factorRatio.toFixed(2)}`]),
    ...(step.addM === 0 ? [] : [`+ ${shown(step.addM, 'distance', units.distance, 'needed')}`]),
  ];
  const amount = by.length === 0 ? 'no change' : by.join(' ');
  return `${step.name}: ${amount} (${KINDS[step.kind]}; ${step.source})`;
}

const KINDS: Readonly<Record<DistanceStep['kind'], string>> = {
  table: 'from the manual',
  manualNote: "the manual's note",
  publishedFactor: 'published factor',
  estimate: 'estimate',
  safetyFactor: 'safety factor',
};

const BEYOND: Readonly<Record<TableAxis, string>> = {
  massKg: 'heavier',
  pressureAltitudeM: 'higher',
  temperatureC: 'hotter',
  headwindMs: 'more tailwind',
};

function heldWords({ axis, asked, edge }: HeldAtEdge, units: TableUnits): string {
  const ends = axis === 'headwindMs' ? 'ends' : 'begins';
  return `the table ${ends} at ${axisText(axis, edge, units)}, ${axisText(axis, asked, units)} was asked`;
}

function placeWords(place: TablePlace, units: TableUnits): string {
  const axes: TableAxis[] = ['massKg', 'pressureAltitudeM', 'temperatureC', 'headwindMs'];
  return axes
    .flatMap((axis) => {
      const value = place[axis];
      return value === undefined ? [] : [axisText(axis, value, units)];
    })
    .join(', ');
}

/** A place on an axis as it was typed or printed, not rounded: a person looks it up in the manual. */
export function axisText(axis: TableAxis, value: number, units: TableUnits): string {
  switch (axis) {
    case 'massKg':
      return fieldText(value, 'mass', units.mass) + unitSuffix(units.mass);
    case 'pressureAltitudeM':
      return fieldText(value, 'altitude', units.altitude) + unitSuffix(units.altitude);
    case 'temperatureC':
      return fieldText(value, 'temperature', units.temperature) + unitSuffix(units.temperature);
    case 'headwindMs':
      return `${fieldText(Math.abs(value), 'speed', units.speed)}${unitSuffix(units.speed)} ${value < 0 ? 'tailwind' : 'headwind'}`;
  }
}
