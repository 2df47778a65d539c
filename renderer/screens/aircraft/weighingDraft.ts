import type { InputOf } from '../../../main/requests/table.ts';
import { NINE_IN_TEN_SDS } from '../../../shared-calc/loading/known-mass.ts';
import type { AircraftRecord } from '../../../shared-calc/loading/records.ts';
import {
  emptyFromScales,
  fuelAboard,
  type WeighingCorrection,
  type WeighingResult,
} from '../../../shared-calc/loading/weighing.ts';
import { momentOfUsableKgM, tankMoment } from '../../../shared-calc/loading/tank-moment.ts';

export interface WheelDraft {
  wheel: string;
  armM: number | null;
  readingKg: number | null;
  tareKg: number | null;
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
  how: 'maker' | 'equipment change' | 'other';
  unusableFuelIncluded: boolean;
  oilIncluded: boolean;
  note: string;
}

// Nine times in ten a workshop's platform scale is good to 0.8 kg, a plumb line and tape to 5 mm. Common practice, no
// source: shown in the form and changed there.
const usualScaleSdKg = 0.8 / NINE_IN_TEN_SDS;
const usualWheelArmSdM = 0.005 / NINE_IN_TEN_SDS;

/** An empty form, the wheels' arms as entered for the aeroplane. */
export function newWeighingDraft(aircraft: AircraftRecord, today: string): WeighingDraft {
  const { gear } = aircraft;
  const wheel = (name: string, armM: number | null): WheelDraft => ({
    wheel: name,
    armM,
    readingKg: null,
    tareKg: 0,
  });
  return {
    weighedOn: today,
    from: 'scales',
    wheels: [
      wheel(gear.kind, gear.noseOrTailArmM),
      wheel('left main wheel', gear.mainArmM),
      wheel('right main wheel', gear.mainArmM),
    ],
    scaleSdKg: usualScaleSdKg,
    wheelArmSdM: usualWheelArmSdM,
    aboardL: {},
    emptyMassKg: null,
    emptyArmM: null,
    massSdKg: usualScaleSdKg,
    armSdM: usualWheelArmSdM,
    how: 'maker',
    unusableFuelIncluded: true,
    oilIncluded: true,
    note: '',
  };
}

/** What the form comes to; or what it still waits for, as a sentence. */
export type WeighingOutcome = { ready: true; result: WeighingResult } | { ready: false; waits: string };

/** @throws RangeProblem, InputProblem of the calculation, for the form to show */
export function weighingOutcome(draft: WeighingDraft, aircraft: AircraftRecord): WeighingOutcome {
  if (draft.weighedOn === null) return waits('The day of the weighing is needed.');
  if (draft.from === 'record') {
    if (draft.emptyMassKg === null || draft.emptyArmM === null)
      return waits('The empty weight and its arm are needed, as the record gives them.');
    return {
      ready: true,
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
  return { ready: true, result: emptyFromScales(complete, corrections(draft, aircraft)) };
}

/** The request that keeps it; the readings are kept beside the result. */
export function weighingInput(
  draft: WeighingDraft,
  aircraft: AircraftRecord,
  result: WeighingResult,
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
    unusableFuelIncluded: draft.unusableFuelIncluded,
    oilIncluded: draft.oilIncluded,
    note: [draft.note, ...(isScales ? aboard : [])].filter((words) => words !== '').join('; '),
    readings: isScales
      ? draft.wheels.map(({ wheel, armM, readingKg, tareKg }) => ({
          wheel,
          armM: armM ?? 0,
          readingKg: readingKg ?? 0,
          tareKg: tareKg ?? 0,
        }))
      : [],
  };
}

function corrections(draft: WeighingDraft, aircraft: AircraftRecord): WeighingCorrection[] {
  return aircraft.tanks.flatMap((tank) => {
    const litres = draft.aboardL[tank.id] ?? 0;
    if (litres === 0) return [];
    const massKg = litres * tank.densityKgPerL;
    const armM = momentOfUsableKgM(tankMoment(tank), litres) / massKg;
    // Contents read by dipstick: half a litre either way, common practice.
    return [fuelAboard(tank.name, litres, tank.densityKgPerL, armM, 0.5)];
  });
}

function waits(sentence: string): WeighingOutcome {
  return { ready: false, waits: sentence };
}
