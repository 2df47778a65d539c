import { armLimitsAt } from '../../../shared-calc/loading/envelope.ts';
import type { LoadingResult } from '../../../shared-calc/loading/assess.ts';
import { loadFigures, type LoadingInputs } from '../../../shared-calc/loading/case-of.ts';
import { Z_95 } from '../../../shared-calc/numeric/z-95.ts';
import { momentOfUsableKgM } from '../../../shared-calc/loading/tank-moment.ts';
import type { FlightPoint } from '../../../shared-calc/loading/point.ts';
import { lateralArmLimits } from '../../../shared-calc/loading/lateral.ts';
import { NO_BREAK_SPACE } from '../../../shared-calc/units/figure-text.ts';
import type { UnitPreferences } from '../../../shared-calc/units/preferences.ts';
import { densityWords } from '../../../shared-calc/wording/fuel-density.ts';
import type { Units } from '../../app/units.svelte.ts';
import { dayText } from '../../ui/dateKind.ts';
import { flightEnvelope, flightEvents, leastEvent } from './flightDrawing.ts';

/** A line of the sheet's first table: mass times arm is moment, and all lines together are the ramp. */
export interface StationLine {
  place: string;
  who: string;
  massKg: number;
  /** null for a tank without fuel, which has no arm to speak of. */
  armM: number | null;
  momentKgM: number;
  /** null where the manual gives no lateral arms, and for a tank without fuel. */
  lateralArmM: number | null;
  known: string;
}

type Shown = Pick<Units, 'shown' | 'figure'>;

/** The empty aeroplane, what a weighing left out, everything aboard and each tank by its best figure. */
export function stationLines(
  inputs: LoadingInputs,
  result: LoadingResult,
  units: Shown,
  densityUnits: Pick<UnitPreferences, 'fuelDensity' | 'temperature'>,
): StationLine[] {
  const { aircraft, weighing, loading, people } = inputs;
  const { model } = result;
  const doubt = (kg: number) => (kg === 0 ? '' : `±${units.shown(kg * Z_95, 'mass', 'doubt')}`);
  const besideM = (armM: number) => (model.lateral === null ? null : armM);
  const weighedOn = weighing === null ? '' : dayText(weighing.weighedOn);
  const fixed = model.solids
    .filter(({ stationId }) => stationId === null)
    .map((item, index): StationLine => {
      const { name, massKg, armM, massSdKg } = item;
      const known = index === 0 ? [weighedOn, doubt(massSdKg)] : ['not in the empty weight'];
      return {
        place: name.charAt(0).toUpperCase() + name.slice(1),
        who: '',
        massKg,
        armM,
        momentKgM: massKg * armM,
        lateralArmM: besideM(item.lateralArmM),
        known: known.filter((words) => words !== '').join(', '),
      };
    });
  const loads = model.solids
    .filter(({ stationId }) => stationId !== null)
    .map((item, index): StationLine => {
      const { name, massKg, armM, massSdKg, stationId } = item;
      const record = loading.items[index];
      const figures = record === undefined ? null : loadFigures(record, people);
      const person = people.find(({ id }) => id === record?.personId && record?.typed === null);
      const day = person?.knownOn == null ? '' : ` ${dayText(person.knownOn)}`;
      const bias =
        figures === null || figures.biasKg === 0
          ? ''
          : `${units.figure(figures.massKg, 'mass')} ${units.shown(figures.biasKg, 'mass', 'change')}`;
      return {
        place: aircraft.stations.find(({ id }) => id === stationId)?.name ?? '',
        who: name,
        massKg,
        armM,
        momentKgM: massKg * armM,
        lateralArmM: besideM(item.lateralArmM),
        known: [`${figures?.known ?? ''}${day}`, bias, doubt(massSdKg)]
          .filter((words) => words !== '')
          .join(', '),
      };
    });
  const tanks = model.tanks.map((tank, index): StationLine => {
    const fuel = model.fuel[index];
    const litres = fuel?.bestL ?? 0;
    const massKg = litres * tank.densityKgPerL;
    const momentKgM = litres === 0 ? 0 : momentOfUsableKgM(tank, litres);
    const record = aircraft.tanks[index];
    const filled = loading.fuel.find(({ tankId }) => tankId === record?.id);
    const doubtful =
      fuel === undefined || fuel.lowL === fuel.highL
        ? ''
        : `${units.figure(fuel.lowL, 'volume', 'plan')} to ${units.shown(fuel.highL, 'volume', 'load')}, nine times in ten; `;
    const density =
      record === undefined ? '' : densityWords(record, filled?.temperatureC ?? null, densityUnits);
    const known = litres === 0 ? '' : `${doubtful}${density}`;
    return {
      place: aircraft.tanks[index]?.name ?? '',
      who: `${units.shown(litres, 'volume')}${NO_BREAK_SPACE}usable`,
      massKg,
      armM: massKg === 0 ? null : momentKgM / massKg,
      momentKgM,
      lateralArmM: massKg === 0 ? null : besideM(record?.lateralArmM ?? 0),
      known,
    };
  });
  return [...fixed, ...loads, ...tanks];
}

/** A line of the sheet's second table: an instant of the flight with what is left to the limits there. */
export interface FlightLine {
  name: string;
  point: FlightPoint;
  isTotal: boolean;
  isLeast: boolean;
  toForwardM: number | null;
  toAftM: number | null;
  /** null where the manual limits nothing on that side. */
  toLeftM: number | null;
  toRightM: number | null;
  /** To the maximum mass of this part of the flight; null where there is none. */
  toMassKg: number | null;
}

/** Every event of the flight by the best figures of fuel, and zero fuel as the last of the totals. */
export function flightLines({ aircraft }: LoadingInputs, result: LoadingResult): FlightLine[] {
  const { rampKg, takeOffKg, landingKg, zeroFuelKg } = aircraft.maxMasses;
  const envelope = flightEnvelope(result);
  const events = flightEvents(result);
  const least = leastEvent(result, events);
  const line = (name: string, point: FlightPoint, mostKg: number | null, isLeast: boolean): FlightLine => {
    const limits = envelope === null ? null : armLimitsAt(envelope, point.massKg);
    const { lateral } = result.model;
    const beside = lateral === null ? null : lateralArmLimits(lateral, point.massKg);
    const besideM = point.lateralArmM ?? 0;
    return {
      name,
      point,
      isTotal: ['Ramp', 'Take-off', 'Landing', 'Zero fuel'].includes(name),
      isLeast,
      toForwardM: limits === null ? null : point.armM - limits.forwardM,
      toAftM: limits === null ? null : limits.aftM - point.armM,
      toLeftM: beside?.leftM == null ? null : besideM - beside.leftM,
      toRightM: beside?.rightM == null ? null : beside.rightM - besideM,
      toMassKg: mostKg === null ? null : mostKg - point.massKg,
    };
  };
  const mostOf = {
    ramp: rampKg,
    'take-off': takeOffKg,
    tank: takeOffKg,
    landing: landingKg,
    exhausted: takeOffKg,
  };
  const along = events.map((event) => line(event.name, event.point, mostOf[event.kind], event === least));
  const worst = result.least?.worst ?? null;
  if (least === null && worst !== null) {
    // Between two events: where the sentence's margin is, by the fuel figures that make it least.
    const after = along.findIndex(({ point }) => point.burnedL > worst.burnedL);
    along.splice(after < 0 ? along.length : after, 0, line('Least margin', worst, takeOffKg, true));
  }
  return [...along, line('Zero fuel', result.exhausted, zeroFuelKg, false)];
}
