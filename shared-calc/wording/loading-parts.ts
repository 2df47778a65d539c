import type { LimitMargin, LoadingResult, Stretch } from '../loading/assess.ts';
import type { Phase } from '../loading/aeroplane.ts';
import { isOfCg, type EnvelopeLimit } from '../loading/limits.ts';
import type { FlightPoint } from '../loading/point.ts';
import { shownDuration } from '../units/duration-text.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import { fieldText, shown, unitSuffix } from '../units/shown.ts';
import { theTank } from './names.ts';

// Pieces of sentences on a loading: amounts, limits, places and stretches of the flight.

export type LoadingUnits = Pick<UnitPreferences, 'mass' | 'arm'>;

/** How much a margin leaves, or by how much it is passed: "11 mm", "less than 1 mm" for a limit met exactly. */
export function amount(
  { limit, margin }: LimitMargin,
  question: 'margin' | 'excess',
  units: LoadingUnits,
): string {
  const size = Math.abs(margin);
  if (size === 0) return `less than ${smallest(isOfCg(limit), units)}`;
  return isOfCg(limit) ? shown(size, 'arm', units.arm, question) : shown(size, 'mass', units.mass, question);
}

/** A limit met exactly leaves nothing; one step of the figure says so without a bare zero. */
function smallest(isArm: boolean, units: LoadingUnits): string {
  const text = isArm ? shown(1e-9, 'arm', units.arm, 'margin') : shown(1e-9, 'mass', units.mass, 'margin');
  return text.replace('less than ', '');
}

/** A typed limit as it was typed: "570 kg", not "570.0 kg". */
export function limitMass(limitKg: number, units: LoadingUnits): string {
  return `${fieldText(limitKg, 'mass', units.mass)}${unitSuffix(units.mass)}`;
}

/** "aft limit", "left limit", "maximum take-off mass (600 kg)". */
export function limitName({ limit }: LimitMargin, units: LoadingUnits): string {
  if ('envelope' in limit) return envelopeLimitName(limit);
  if ('side' in limit) return `${limit.kind} limit`;
  if (limit.kind === 'least') return `least mass (${limitMass(limit.limitKg, units)})`;
  if ('phase' in limit) return `maximum ${massName(limit.phase)} (${limitMass(limit.limitKg, units)})`;
  return 'limit';
}

/** "aft limit", "forward limit for landing". */
export function envelopeLimitName({ kind, phase }: EnvelopeLimit): string {
  const which = {
    ramp: ' on the ramp',
    'take-off': ' for take-off',
    flight: '',
    landing: ' for landing',
    'zero-fuel': ' without fuel',
  };
  return `${kind} limit${which[phase]}`;
}

function massName(phase: Phase): string {
  const names = {
    ramp: 'ramp mass',
    'take-off': 'take-off mass',
    flight: 'mass',
    landing: 'landing mass',
    'zero-fuel': 'zero-fuel mass',
  };
  return names[phase];
}

/**
 * An instant of the flight beside a plot: "2 h 35 min", or "at take-off" for its first minute.
 * @param afterTakeOffS seconds after take-off, magnitude up to a hundred years
 * @throws RangeProblem as shownDuration
 */
export function instantText(afterTakeOffS: number): string {
  const time = shownDuration(afterTakeOffS, 'plan');
  return isFirstMinute(afterTakeOffS) ? 'at take-off' : time;
}

/** Rounded down to the minute it is the take-off itself. */
export function isFirstMinute(afterTakeOffS: number): boolean {
  return afterTakeOffS < 60;
}

/** "2 h 35 min after take-off", or "at take-off". */
export function whenText(afterTakeOffS: number): string {
  const time = instantText(afterTakeOffS);
  return isFirstMinute(afterTakeOffS) ? time : `${time} after take-off`;
}

/** Where on the flight a point lies, by what happens there: "at landing", "1 h 52 min after take-off". */
export function placeOf(point: FlightPoint, result: LoadingResult): string {
  if (point.marks.includes('ramp') && !point.marks.includes('take-off')) return 'on the ramp';
  if (point.marks.includes('take-off')) return 'at take-off';
  if (point.marks.includes('landing')) return 'at landing';
  const time = whenText(point.afterTakeOffS);
  if (point.marks.includes('usable fuel exhausted')) return `${time}, when usable fuel is exhausted`;
  if (point.emptiedTankId !== null) return `${time}, when ${tankName(point.emptiedTankId, result)} is empty`;
  if (point.changedToTankId !== null)
    return `${time}, when ${tankName(point.changedToTankId, result)} is selected`;
  if (point.overfilledTankId !== null)
    return `${time}, when ${tankName(point.overfilledTankId, result)} is full`;
  return time;
}

/** "the front tank". */
export function tankName(id: string, result: LoadingResult): string {
  return theTank(result.model.aeroplane.tanks.find((tank) => tank.id === id)?.name ?? id);
}

/** Where a limit that holds at one point is compared. */
export function pointOf(phase: Phase, result: LoadingResult): string {
  if (phase === 'take-off') return 'at take-off';
  if (phase === 'landing')
    return result.landing === null ? 'when usable fuel is exhausted' : 'at the planned landing';
  return 'when usable fuel is exhausted';
}

/** "from 2 h 16 min to 2 h 58 min after take-off": earlier rounds down, inside again rounds up. */
export function stretches(outside: readonly Stretch[]): string {
  return outside.map((stretch, i) => (i === 0 ? '' : 'again ') + stretchText(stretch)).join(' and ');
}

function stretchText({ fromS, toS, fromRamp, untilExhausted }: Stretch): string {
  const atStart = isFirstMinute(fromS);
  if (toS < 1e-6) return 'before take-off';
  const from = fromRamp ? 'from ramp' : atStart ? 'from take-off' : `from ${instantText(fromS)}`;
  if (untilExhausted) {
    return atStart || fromRamp
      ? `${from} until usable fuel is exhausted`
      : `${from} after take-off until usable fuel is exhausted`;
  }
  const to = `${shownDuration(toS, 'until inside')} after take-off`;
  return atStart || fromRamp ? `${from} until ${to}` : `${from} to ${to}`;
}

/** A limit of the CG that is broken in flight, but neither at take-off nor at landing: checking the two does not find it. */
export function isBrokenBetween({ limit, outside }: LimitMargin, result: LoadingResult): boolean {
  const endL = (result.landing ?? result.exhausted).burnedL;
  return (
    isOfCg(limit) &&
    ('side' in limit || limit.phase === 'flight') &&
    outside.every(
      ({ fromL, fromS, toL }) =>
        // What is said to begin at take-off is not said to be hidden there.
        fromL > result.takeOff.burnedL + 1e-9 &&
        !isFirstMinute(fromS) &&
        (toL < endL - 1e-9 || fromL > endL + 1e-9),
    )
  );
}
