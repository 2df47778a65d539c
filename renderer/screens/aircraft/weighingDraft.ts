import type { InputOf } from '../../../main/requests/table.ts';
import { Z_95 } from '../../../shared-calc/numeric/z-95.ts';
import type { AircraftRecord } from '../../../shared-calc/loading/records.ts';
import {
  emptyFromScales,
  fuelAboard,
  type WeighingCorrection,
  type WeighingResult,
} from '../../../shared-calc/loading/weighing.ts';
import { tankDensity } from '../../../shared-calc/loading/tank-density.ts';
import { momentOfUsableKgM, tankMoment } from '../../../shared-calc/loading/tank-moment.ts';

export interface WheelDraft {
  wheel: string;
  armM: number | null;
  readingKg: number | null;
  tareKg: number | null;
  /** Asked for where the manual gives lateral arms. */
  lateralArmM: number | null;
}

/** A weighing as it is being entered. */
export interface WeighingDraft {
  weighedOn: string | null;
  from: 'scales' | 'record';
  wheels: WheelDraft[];
  /** Standard uncertainty of one scale and of a measured wheel arm. */
  scaleSdKg: number;
  wheelArmSdM: number;
  /** Usable fuel that was aboard, L by tank. */
  aboardL: Record<string, number>;
  emptyMassKg: number | null;
  emptyArmM: number | null;
  massSdKg: number;
  armSdM: number;
  lateralArmM: number | null;
  lateralArmSdM: number;
  how: 'maker' | 'equipment change' | 'other';
  unusableFuelIncluded: boolean;
  oilIncluded: boolean;
  note: string;
}

// Nine times in ten a workshop's platform scale is good to 0.8 kg, a plumb line and tape to 5 mm. Common practice, no
// source: shown in the form and changed there.
const usualScaleSdKg = 0.8 / Z_95;
const usualWheelArmSdM = 0.005 / Z_95;

/** An empty form, the wheels' arms as entered for the aeroplane. */
export function newWeighingDraft(aircraft: AircraftRecord, today: string): WeighingDraft {
  const { gear } = aircraft;
  const wheel = (name: string, armM: number | null, lateralArmM: number | null): WheelDraft => ({
    wheel: name,
    armM,
    readingKg: null,
    tareKg: 0,
    lateralArmM,
  });
  return {
    weighedOn: today,
    from: 'scales',
    wheels: [
      wheel(gear.kind, gear.noseOrTailArmM, 0),
      wheel('left main wheel', gear.mainArmM, null),
      wheel('right main wheel', gear.mainArmM, null),
    ],
    scaleSdKg: usualScaleSdKg,
    wheelArmSdM: usualWheelArmSdM,
    aboardL: {},
    emptyMassKg: null,
    emptyArmM: null,
    massSdKg: usualScaleSdKg,
    armSdM: usualWheelArmSdM,
    lateralArmM: null,
    lateralArmSdM: usualWheelArmSdM,
    how: 'maker',
    unusableFuelIncluded: true,
    oilIncluded: true,
    note: '',
  };
}

/** What the form comes to; or what it still waits for, as a sentence. */
export type WeighingOutcome =
  | {
      ready: true;
      result: WeighingResult;
      /** null where the manual gives no lateral arms. */
      lateral: { armM: number; armSdM: number } | null;
    }
  | { ready: false; waits: string };

/** @throws RangeProblem, InputProblem of the calculation, for the form to show */
export function weighingOutcome(draft: WeighingDraft, aircraft: AircraftRecord): WeighingOutcome {
  if (draft.weighedOn === null) return waits('The day of the weighing is needed.');
  if (draft.from === 'record') {
    if (draft.emptyMassKg === null || draft.emptyArmM === null)
      return waits('The empty weight and its arm are needed, as the record gives them.');
    if (aircraft.lateral !== undefined && draft.lateralArmM === null)
      return waits('The lateral arm of the empty weight is needed, as the record gives it.');
    return {
      ready: true,
      lateral:
        aircraft.lateral === undefined || draft.lateralArmM === null
          ? null
          : { armM: draft.lateralArmM, armSdM: draft.lateralArmSdM },
      result: {
        massKg: draft.emptyMassKg,
        armM: draft.emptyArmM,
        momentKgM: draft.emptyMassKg * draft.emptyArmM,
        massSdKg: draft.massSdKg,
        armSdM: draft.armSdM,
        correlation: 0,
      },
    };
  }
  const readings = draft.wheels.map(({ wheel, armM, readingKg, tareKg }) =>
    armM === null || readingKg === null || tareKg === null
      ? null
      : {
          name: wheel,
          armM,
          scaleKg: readingKg,
          tareKg,
          scaleSdKg: draft.scaleSdKg,
          armSdM: draft.wheelArmSdM,
        },
  );
  const complete = readings.filter((reading) => reading !== null);
  if (complete.length < readings.length) return waits('Each wheel needs its arm, its reading and its tare.');
  const taken = corrections(draft, aircraft);
  const result = emptyFromScales(complete, taken);
  if (aircraft.lateral === undefined) return { ready: true, result, lateral: null };
  // The same sum about the line between left and right.
  const beside = draft.wheels.map(({ lateralArmM }) => lateralArmM);
  const tanksBeside = tanksAboard(draft, aircraft).map(({ lateralArmM }) => lateralArmM);
  if (beside.includes(null)) return waits('Each wheel needs its lateral arm, negative on the left.');
  if (tanksBeside.includes(undefined))
    return waits('The tanks that hold fuel need their lateral arms first.');
  const { armM, armSdM } = emptyFromScales(
    complete.map((reading, i) => ({ ...reading, armM: beside[i] ?? 0 })),
    taken.map((correction, i) => ({ ...correction, armM: tanksBeside[i] ?? 0 })),
  );
  return { ready: true, result, lateral: { armM, armSdM } };
}

/** The request that keeps it; the readings are kept beside the result. */
export function weighingInput(
  draft: WeighingDraft,
  aircraft: AircraftRecord,
  { result, lateral }: Extract<WeighingOutcome, { ready: true }>,
): InputOf<'weighing.add'> {
  const aboard = aircraft.tanks.flatMap((tank) => {
    const litres = draft.aboardL[tank.id] ?? 0;
    return litres > 0 ? [`${String(Math.round(litres * 100) / 100)} L usable in ${tank.name} taken off`] : [];
  });
  const isScales = draft.from === 'scales';
  return {
    aircraftId: aircraft.id,
    weighedOn: draft.weighedOn ?? '',
    how: isScales ? 'scales' : draft.how,
    emptyMassKg: result.massKg,
    emptyArmM: result.armM,
    massSdKg: result.massSdKg,
    armSdM: result.armSdM,
    ...(lateral === null ? {} : { lateralArmM: lateral.armM, lateralArmSdM: lateral.armSdM }),
    unusableFuelIncluded: draft.unusableFuelIncluded,
    oilIncluded: draft.oilIncluded,
    note: [draft.note, ...(isScales ? aboard : [])].filter((words) => words !== '').join('; '),
    readings: isScales
      ? draft.wheels.map(({ wheel, armM, readingKg, tareKg, lateralArmM }) => ({
          wheel,
          armM: armM ?? 0,
          readingKg: readingKg ?? 0,
          tareKg: tareKg ?? 0,
          ...(lateral === null || lateralArmM === null ? {} : { lateralArmM }),
        }))
      : [],
  };
}

function corrections(draft: WeighingDraft, aircraft: AircraftRecord): WeighingCorrection[] {
  return tanksAboard(draft, aircraft).map((tank) => {
    const litres = draft.aboardL[tank.id] ?? 0;
    const { densityKgPerL, sdKgPerL } = tankDensity(tank, null);
    const massKg = litres * densityKgPerL;
    const armM = momentOfUsableKgM(tankMoment({ ...tank, densityKgPerL }), litres) / massKg;
    // Contents read by dipstick: half a litre either way, common practice.
    const correction = fuelAboard(tank.name, litres, densityKgPerL, armM, 0.5);
    return { ...correction, massSdKg: Math.hypot(correction.massSdKg, litres * sdKgPerL) };
  });
}

/** Tanks with usable fuel in them while the aeroplane was weighed. */
function tanksAboard({ aboardL }: WeighingDraft, { tanks }: AircraftRecord) {
  return tanks.filter(({ id }) => (aboardL[id] ?? 0) > 0);
}

function waits(sentence: string): WeighingOutcome {
  return { ready: false, waits: sentence };
}
