import { assessLoading, type LoadingResult } from '../../shared-calc/loading/assess.ts';
import {
  minimumFuelForBalanceL,
  NEGLIGIBLE_CHANGE_KG,
  NEGLIGIBLE_CHANGE_MAC_PERCENT,
} from '../../shared-calc/loading/equipment.ts';
import { macPercent } from '../../shared-calc/loading/mac.ts';
import { ballastKg, cgShiftM, litresToDrainL, massToShiftKg } from '../../shared-calc/loading/shift.ts';
import { cgFromThirdWheelM, emptyFromScales } from '../../shared-calc/loading/weighing.ts';
import { KG_PER_LB, L_PER_US_GAL, M_PER_IN } from '../../shared-calc/units/constants.ts';
import { alike, inputOf, numbered, publishedChecks, type Actual, type PublishedCase } from './cases.ts';

type Figure = { value: number; unit: string };
type Line = { name: string; weight: Figure; arm?: Figure; moment_1000?: Figure };

const LB_IN = KG_PER_LB * M_PER_IN;
/** What a gallon weighs in these handbooks. */
const AVGAS_KG_PER_L = (6 * KG_PER_LB) / L_PER_US_GAL;

/** A printed table loaded as a pilot loads it: the first line is the empty aeroplane, fuel is in a tank, the rest at stations. */
function loaded(published: PublishedCase, maxTakeOffLb: number | null = null): LoadingResult {
  const lines = (published.inputs.stations as Line[]).map(({ name, weight, arm, moment_1000 }) => ({
    id: name,
    massKg: weight.value * KG_PER_LB,
    armM: (arm?.value ?? ((moment_1000?.value ?? NaN) * 1000) / weight.value) * M_PER_IN,
  }));
  const [empty, ...others] = lines;
  if (empty === undefined) throw new Error('a table without lines');
  const isFuel = ({ id }: { id: string }) => id.startsWith('fuel');
  const tanks = others.filter(isFuel);
  const places = others.filter((line) => !isFuel(line));
  const takeOffKg = maxTakeOffLb === null ? null : maxTakeOffLb * KG_PER_LB;
  return assessLoading(
    {
      empty: {
        massKg: empty.massKg,
        armM: empty.armM,
        massSdKg: 0,
        armSdM: 0,
        unusableFuelIncluded: true,
        oilIncluded: true,
      },
      oil: null,
      mac: null,
      stations: places.map(({ id, armM }) => ({
        id,
        name: id,
        arm: { kind: 'fixed', armM },
        leastKg: null,
        mostKg: null,
      })),
      tanks: tanks.map(({ id, massKg, armM }) => ({
        id,
        name: id,
        capacityL: massKg / AVGAS_KG_PER_L,
        unusableL: 0,
        densityKgPerL: AVGAS_KG_PER_L,
        arm: { kind: 'fixed', armM },
        side: 'centre',
      })),
      envelopes: [],
      maxMasses: { rampKg: null, takeOffKg, landingKg: null, zeroFuelKg: null },
      groups: [],
      leftRightMostKg: null,
    },
    {
      category: '',
      loads: places.map(({ id, massKg }) => ({
        stationId: id,
        name: id,
        massKg,
        biasKg: 0,
        massSdKg: 0,
        armM: null,
        armSdM: 0,
      })),
      fuel: tanks.map(({ id, massKg }) => {
        const litres = massKg / AVGAS_KG_PER_L;
        return { tankId: id, lowL: litres, bestL: litres, highL: litres };
      }),
      burn: { kind: 'sequence', tankIds: tanks.map(({ id }) => id), everyMin: null, returnLine: null },
      flight: { taxiL: 0, climbL: 0, climbMin: 0, cruiseLPerH: 30, landingAfterS: null },
    },
  );
}

function stationTable(published: PublishedCase): Actual {
  const { takeOff } = loaded(published);
  const all: Actual = {
    total_weight: takeOff.massKg / KG_PER_LB,
    total_moment: takeOff.momentKgM / LB_IN,
    cg: takeOff.armM / M_PER_IN,
  };
  return Object.fromEntries(Object.entries(all).filter(([name]) => name in published.expected));
}

type Scale = { scale?: Figure; tare?: Figure; net?: Figure; arm: Figure };

/** A printed weighing; kg and m where the case is metric, pounds and inches else. */
function weighingTable(published: PublishedCase): Actual {
  const readings = published.inputs.readings as Scale[];
  const metric = readings[0]?.arm.unit === 'm';
  const [perMass, perArm] = metric ? [1, 1] : [KG_PER_LB, M_PER_IN];
  const weighed = emptyFromScales(
    readings.map(({ scale, tare, net, arm }, i) => ({
      name: String(i),
      scaleKg: (scale?.value ?? net?.value ?? NaN) * perMass,
      tareKg: (tare?.value ?? 0) * perMass,
      armM: arm.value * perArm,
      scaleSdKg: 0,
      armSdM: 0,
    })),
  );
  const all: Actual = {
    net_weight: weighed.massKg / perMass,
    total_moment: weighed.momentKgM / (perMass * perArm),
    cg: weighed.armM / perArm,
  };
  return Object.fromEntries(Object.entries(all).filter(([name]) => name in published.expected));
}

publishedChecks('loading', {
  ...alike(['LOAD-001', 'LOAD-004', ...numbered('LOAD', 10, 12)], stationTable),
  ...alike(['LOAD-005', 'LOAD-018'], weighingTable),
  'LOAD-002': (c) => {
    const inch = (name: string) => inputOf(c, name, 'in') * M_PER_IN;
    const totalKg = inputOf(c, 'total_weight', 'lb') * KG_PER_LB;
    const moved = massToShiftKg(totalKg, inch('cg_now'), inch('cg_wanted'), inch('from_station'), inch('to_station'));
    return { weight_to_shift: moved / KG_PER_LB };
  },
  'LOAD-003': (c) => {
    const addedKg = inputOf(c, 'added_weight', 'lb') * KG_PER_LB;
    const loadedKg = inputOf(c, 'total_weight', 'lb') * KG_PER_LB + addedKg;
    const nowM = inputOf(c, 'cg_now', 'in') * M_PER_IN;
    // Adding is shifting the added mass from the old CG to its station.
    const changeM = cgShiftM(addedKg, nowM, inputOf(c, 'added_station', 'in') * M_PER_IN, loadedKg);
    return { cg_change: changeM / M_PER_IN, cg_new: (nowM + changeM) / M_PER_IN };
  },
  'LOAD-006': (c) => ({
    cg:
      cgFromThirdWheelM(
        'nose',
        inputOf(c, 'D_datum_to_mains', 'in') * M_PER_IN,
        inputOf(c, 'L_mains_to_nosewheel', 'in') * M_PER_IN,
        inputOf(c, 'F_nosewheel_weight', 'lb') * KG_PER_LB,
        inputOf(c, 'W_total', 'lb') * KG_PER_LB,
      ) / M_PER_IN,
  }),
  'LOAD-007': (c) => ({
    cg:
      cgFromThirdWheelM(
        'tail',
        inputOf(c, 'D_datum_to_mains', 'in') * M_PER_IN,
        inputOf(c, 'L_mains_to_tailwheel', 'in') * M_PER_IN,
        inputOf(c, 'R_tailwheel_weight', 'lb') * KG_PER_LB,
        inputOf(c, 'W_total', 'lb') * KG_PER_LB,
      ) / M_PER_IN,
  }),
  'LOAD-008': (c) => {
    const leadingEdgeArmM = inputOf(c, 'LEMAC', 'in') * M_PER_IN;
    const lengthM = inputOf(c, 'TEMAC', 'in') * M_PER_IN - leadingEdgeArmM;
    return { cg_percent_mac: macPercent(inputOf(c, 'cg', 'in') * M_PER_IN, { leadingEdgeArmM, lengthM }) };
  },
  'LOAD-009': (c) => ({
    cg_percent_mac: macPercent(inputOf(c, 'cg_from_datum', 'm'), {
      leadingEdgeArmM: inputOf(c, 'leading_edge_from_datum', 'm'),
      lengthM: inputOf(c, 'mac_length', 'm'),
    }),
  }),
  'LOAD-013': (c) => {
    const gallons = minimumFuelForBalanceL(inputOf(c, 'meto_power', 'hp')) / L_PER_US_GAL;
    // 6 lb a gallon, as the case's rule says.
    return { min_fuel_volume: gallons, min_fuel_weight: gallons * 6 };
  },
  'LOAD-014': (c) => {
    const { takeOff, margins } = loaded(c, inputOf(c, 'max_weight', 'lb'));
    const left = margins.find(({ limit }) => limit.id === 'maxMass.take-off');
    return {
      total_weight: takeOff.massKg / KG_PER_LB,
      total_moment_1000: takeOff.momentKgM / LB_IN / 1000,
      weight_left_for_baggage: (left?.margin ?? NaN) / KG_PER_LB,
    };
  },
  'LOAD-015': (c) => {
    const densityKgPerL = (inputOf(c, 'fuel_weight', 'lb/US gal') * KG_PER_LB) / L_PER_US_GAL;
    const litres = litresToDrainL(inputOf(c, 'overweight', 'lb') * KG_PER_LB, densityKgPerL);
    return { fuel_to_drain: litres / L_PER_US_GAL };
  },
  'LOAD-016': (c) => ({
    ballast_weight:
      ballastKg(
        inputOf(c, 'empty_weight', 'lb') * KG_PER_LB,
        inputOf(c, 'cg_now', 'in') * M_PER_IN,
        inputOf(c, 'cg_wanted', 'in') * M_PER_IN,
        inputOf(c, 'ballast_station', 'in') * M_PER_IN,
      ) / KG_PER_LB,
  }),
  'LOAD-017': () => ({
    negligible_weight_change: NEGLIGIBLE_CHANGE_KG / KG_PER_LB,
    negligible_cg_change: NEGLIGIBLE_CHANGE_MAC_PERCENT,
  }),
});
