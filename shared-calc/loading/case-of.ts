import type { LoadingAeroplane } from './aeroplane.ts';
import type { LoadingCase, StationLoad } from './case.ts';
import type { AircraftRecord, LoadingRecord, PersonRecord, WeighingRecord } from './records.ts';
import { tankDensity } from './tank-density.ts';

/** What the library keeps for one loading: all that a verdict rests on. */
export interface LoadingInputs {
  aircraft: AircraftRecord;
  /** The one that counts; null where the aeroplane was never weighed. */
  weighing: WeighingRecord | null;
  loading: LoadingRecord;
  /** At least those that the loading names. */
  people: readonly PersonRecord[];
}

/** The calculation's own terms; or what has to be entered before there can be a verdict, as sentences. */
export type CaseOf =
  { ready: true; aeroplane: LoadingAeroplane; loading: LoadingCase } | { ready: false; missing: string[] };

/**
 * Turn what the library keeps into what the calculation takes. Nothing is filled in: what was not entered is named,
 * and there is no verdict until it is.
 */
export function caseOf(inputs: LoadingInputs): CaseOf {
  const missing = whatIsMissing(inputs);
  const { aircraft, weighing, loading } = inputs;
  if (missing.length > 0 || weighing === null) return { ready: false, missing };
  return {
    ready: true,
    aeroplane: aeroplaneOf(aircraft, weighing, loading),
    loading: {
      category: loading.category,
      loads: loading.items.map((item) => loadOf(item, inputs.people)),
      // A tank that the aeroplane has lost since takes its fuel with it.
      fuel: loading.fuel.filter(({ tankId }) => aircraft.tanks.some((tank) => tank.id === tankId)),
      burn: loading.burn,
      flight: {
        taxiL: loading.flight.taxiL,
        climbL: loading.flight.climbL,
        climbMin: loading.flight.climbMin,
        cruiseLPerH: loading.flight.cruiseLPerH,
        landingAfterS: loading.flight.landingAfterS,
      },
    },
  };
}

/**
 * An aeroplane with the weighing that counts, as the calculation takes it; its fuel as warm as the loading says.
 * @throws RangeProblem as tankDensity
 */
export function aeroplaneOf(
  aircraft: AircraftRecord,
  weighing: WeighingRecord,
  { fuel }: Pick<LoadingRecord, 'fuel'>,
): LoadingAeroplane {
  const { lateral, oil } = aircraft;
  return {
    empty: {
      massKg: weighing.emptyMassKg,
      armM: weighing.emptyArmM,
      massSdKg: weighing.massSdKg,
      armSdM: weighing.armSdM,
      lateralArmM: weighing.lateralArmM,
      lateralArmSdM: weighing.lateralArmSdM,
      unusableFuelIncluded: weighing.unusableFuelIncluded,
      oilIncluded: weighing.oilIncluded,
    },
    oil: weighing.oilIncluded || oil === null ? null : { ...oil, lateralArmM: lateral?.oilArmM },
    mac: aircraft.mac,
    stations: aircraft.stations,
    tanks: aircraft.tanks.map((tank) => {
      const filled = fuel.find(({ tankId }) => tankId === tank.id);
      const { densityKgPerL, sdKgPerL } = tankDensity(tank, filled?.temperatureC ?? null);
      return { ...tank, densityKgPerL, densitySdKgPerL: sdKgPerL };
    }),
    envelopes: aircraft.envelopes,
    maxMasses: aircraft.maxMasses,
    groups: aircraft.groups,
    leftRightMostKg: aircraft.leftRightMostKg,
    lateral: lateral ?? null,
  };
}

/** A load as it counts: its own typed figures, else the person's of the list. */
export function loadFigures(
  item: LoadingRecord['items'][number],
  people: readonly PersonRecord[],
): Pick<PersonRecord, 'name' | 'massKg' | 'known' | 'sdKg' | 'biasKg'> | null {
  if (item.typed !== null) return item.typed;
  return people.find(({ id }) => id === item.personId) ?? null;
}

function loadOf(item: LoadingRecord['items'][number], people: readonly PersonRecord[]): StationLoad {
  const figures = loadFigures(item, people);
  return {
    stationId: item.stationId,
    name: figures?.name ?? '',
    massKg: figures?.massKg ?? 0,
    biasKg: figures?.biasKg ?? 0,
    massSdKg: figures?.sdKg ?? 0,
    armM: item.seatArmM,
    armSdM: 0,
  };
}

function whatIsMissing({ aircraft, weighing, loading, people }: LoadingInputs): string[] {
  const missing: string[] = [];
  if (weighing === null) missing.push('The empty weight and its arm have not been entered.');
  if (weighing?.oilIncluded === false && aircraft.oil === null)
    missing.push('The weighing left the oil out: enter the mass and arm of the oil.');
  for (const item of loading.items) {
    const name = loadFigures(item, people)?.name;
    if (name === undefined) missing.push('A load names a person or thing that is not in the library.');
    else if (!aircraft.stations.some(({ id }) => id === item.stationId))
      missing.push(`${name} is at a place that the aeroplane no longer has: move or remove the load.`);
  }
  for (const tank of aircraft.tanks)
    if (!loading.fuel.some(({ tankId }) => tankId === tank.id))
      missing.push(`The fuel in ${tank.name} has not been entered.`);
  if (aircraft.tanks.length > 0 && loading.flight.cruiseLPerH === 0)
    missing.push('The fuel flow has not been entered.');
  return [...missing, ...lateralMissing({ aircraft, weighing, loading, people })];
}

/** Where the manual gives lateral arms, what has none. */
function lateralMissing({ aircraft, weighing, loading, people }: LoadingInputs): string[] {
  if (aircraft.lateral === undefined || weighing === null) return [];
  const none = 'has no lateral arm yet: enter it under Aircraft.';
  const loaded = (stationId: string) =>
    loading.items.some(
      (item) => item.stationId === stationId && (loadFigures(item, people)?.massKg ?? 0) > 0,
    );
  const isWet = (tankId: string, unusableL: number) =>
    (!weighing.unusableFuelIncluded && unusableL > 0) ||
    loading.fuel.some((fuel) => fuel.tankId === tankId && fuel.highL > 0);
  return [
    ...(weighing.lateralArmM === undefined
      ? [
          'The weighing that counts gives no lateral arm of the empty weight: enter it again with its lateral arm.',
        ]
      : []),
    ...(!weighing.oilIncluded && aircraft.lateral.oilArmM === null ? [`The oil ${none}`] : []),
    ...aircraft.stations.flatMap(({ id, name, lateralArmM }) =>
      lateralArmM === undefined && loaded(id) ? [`${name} ${none}`] : [],
    ),
    ...aircraft.tanks.flatMap(({ id, name, lateralArmM, unusableL }) =>
      lateralArmM === undefined && isWet(id, unusableL) ? [`${name} ${none}`] : [],
    ),
  ];
}
