import { fuelByGauge, withGaugeReading } from '../../../shared-calc/loading/fuel-by-gauge.ts';
import type { Envelope, LoadingAeroplane, Station, Tank } from '../../../shared-calc/loading/aeroplane.ts';
import { assessLoading, assessModel } from '../../../shared-calc/loading/assess.ts';
import { burnPlan } from '../../../shared-calc/loading/burn.ts';
import type { BurnOrder, FlightFuel, LoadingCase, StationLoad } from '../../../shared-calc/loading/case.ts';
import { crossingEdges } from '../../../shared-calc/loading/crossing-edges.ts';
import { envelopeBands, limitingMomentKgM } from '../../../shared-calc/loading/envelope.ts';
import {
  followDifference,
  followEnvelope,
  followMass,
  newTally,
} from '../../../shared-calc/loading/follow.ts';
import { fuelFigures } from '../../../shared-calc/loading/fuel-figures.ts';
import { largestMassKg, limitsOf } from '../../../shared-calc/loading/limits.ts';
import { armAtMacPercentM, macPercent, requireChord } from '../../../shared-calc/loading/mac.ts';
import { loadingModel } from '../../../shared-calc/loading/model.ts';
import { emptyAfterChanges, minimumFuelForBalanceL } from '../../../shared-calc/loading/equipment.ts';
import { makeRoom, newPath } from '../../../shared-calc/loading/path.ts';
import { pointAfterL, pointAt } from '../../../shared-calc/loading/point.ts';
import { requireArm, requireMass } from '../../../shared-calc/loading/require-arm.ts';
import { ballastKg, cgShiftM, litresToDrainL, massToShiftKg } from '../../../shared-calc/loading/shift.ts';
import {
  momentInSegmentKgM,
  momentOfUsableKgM,
  requireDensity,
  requireRising,
  segmentOf,
  tankMoment,
} from '../../../shared-calc/loading/tank-moment.ts';
import { cgFromThirdWheelM, emptyFromScales, fuelAboard } from '../../../shared-calc/loading/weighing.ts';
import { walk } from '../../../shared-calc/loading/walk.ts';
import { exactly, load, twoFriends, twoSeater } from '../loading/example.ts';
import { byPosition, type RangeRow, type RoomRefusals } from './table.ts';

const [station, , locker] = twoSeater.stations as [Station, Station, Station];
const [tank] = twoSeater.tanks as [Tank];
const [envelope] = twoSeater.envelopes as [Envelope];
const chord = { leadingEdgeArmM: 1.5, lengthM: 1.2 };
const noMaxima = { rampKg: null, takeOffKg: null, landingKg: null, zeroFuelKg: null };

function withPlane(change: Partial<LoadingAeroplane>, loading: Partial<LoadingCase> = {}) {
  return () => loadingModel({ ...twoSeater, maxMasses: noMaxima, ...change }, { ...twoFriends, ...loading });
}

function empty(change: Partial<LoadingAeroplane['empty']>) {
  return withPlane({ empty: { ...twoSeater.empty, ...change } });
}

function seat(change: Partial<Station>, one: Partial<StationLoad> = {}) {
  return withPlane(
    { stations: [{ ...station, ...change }] },
    { loads: [{ ...load('left', 'A', 80), ...one }] },
  );
}

function oneTank(change: Partial<Tank>) {
  return () => tankMoment({ ...tank, ...change });
}

function flown(change: Partial<FlightFuel>, burn: Partial<BurnOrder> = {}, fuelled: string[] = []) {
  return () =>
    burnPlan(
      { ...twoFriends.burn, ...burn },
      { ...twoFriends.flight, ...change },
      ['rear', 'front'],
      fuelled,
    );
}

function outline(vertices: [across: number, massKg: number][], change: Partial<Envelope> = {}) {
  const points = vertices.map(([across, massKg]) => ({ across, massKg }));
  return () => envelopeBands({ ...envelope, ...change, vertices: points }, null);
}

function vertex(across: Envelope['across'], x: (value: number) => number, m: (value: number) => number) {
  return (value: number) =>
    envelopeBands(
      {
        ...envelope,
        across,
        vertices: [
          { across: x(value), massKg: m(value) },
          { across: 20, massKg: 600 },
          { across: 10, massKg: 600.5 },
        ],
      },
      chord,
    );
}

/** A row for a number that goes into an object. */
function row(field: string, min: number, max: number, call: (value: number) => () => unknown): RangeRow {
  return { field, min, max, call: (value) => call(value)() };
}

const fuelOf = (lowL: number, bestL: number, highL: number) =>
  withPlane({}, { fuel: [{ tankId: 'rear', lowL, bestL, highL }, exactly('front', 10)] });
const fullL = 45 * (1 + 1e-9);

const model = loadingModel(twoSeater, twoFriends);
const result = assessModel(model);

const scale = { name: 'nose', scaleKg: 100, tareKg: 0, armM: 0.7, scaleSdKg: 0, armSdM: 0 };
const mains = { ...scale, name: 'mains', scaleKg: 220, armM: 1.9 };
const battery = { name: 'charger', sense: 'take off' as const, massKg: 2, armM: 1, massSdKg: 0 };
const arms = (field: string, good: number) => ({ field, min: -100, max: 100, good });

export const refusals: RoomRefusals = {
  functions: [
    {
      of: loadingModel,
      ranges: [
        row('empty.massKg', 1, 50_000, (massKg) => empty({ massKg, massSdKg: 0 })),
        row('empty.armM', -100, 100, (armM) => empty({ armM })),
        row('empty.massSdKg', 0, 159, (massSdKg) => empty({ massSdKg })),
        row('empty.armSdM', 0, 1, (armSdM) => empty({ armSdM })),
        row('oil.massKg', 0, 50_000, (massKg) =>
          withPlane({ empty: { ...twoSeater.empty, oilIncluded: false }, oil: { massKg, armM: 1 } }),
        ),
        row('oil.armM', -100, 100, (armM) =>
          withPlane({ empty: { ...twoSeater.empty, oilIncluded: false }, oil: { massKg: 3, armM } }),
        ),
        row('maxMasses.takeOffKg', 318, 50_000, (takeOffKg) =>
          withPlane({ maxMasses: { ...noMaxima, takeOffKg } }),
        ),
        row('stations.left.mostKg', 0, 50_000, (mostKg) => seat({ mostKg })),
        row('stations.left.leastKg', 0, 110, (leastKg) => seat({ leastKg })),
        row('stations.left.armM', -100, 100, (armM) => seat({ arm: { kind: 'fixed', armM } })),
        row('stations.left.foremostM', -100, 100, (foremostM) =>
          seat({ arm: { kind: 'adjustable', foremostM, aftmostM: 100 } }, { armM: 100 }),
        ),
        row('stations.left.aftmostM', 1.9, 100, (aftmostM) =>
          seat({ arm: { kind: 'adjustable', foremostM: 1.9, aftmostM } }, { armM: 1.9 }),
        ),
        row('loads[0].armM', 1.9, 2.1, (armM) =>
          seat({ arm: { kind: 'adjustable', foremostM: 1.9, aftmostM: 2.1 } }, { armM }),
        ),
        row('groups.g.mostKg', 0, 50_000, (mostKg) =>
          withPlane({ groups: [{ id: 'g', name: 'g', stationIds: [], emptyPartKg: 0, mostKg }] }),
        ),
        row('groups.g.emptyPartKg', 0, 318, (emptyPartKg) =>
          withPlane({ groups: [{ id: 'g', name: 'g', stationIds: [], emptyPartKg, mostKg: 400 }] }),
        ),
        row('leftRightMostKg', 0, 50_000, (leftRightMostKg) => withPlane({ leftRightMostKg })),
        row('loads[0].massKg', 0, 50_000, (massKg) => seat({}, { massKg })),
        row('loads[0].biasKg', -80, 100, (biasKg) => seat({}, { biasKg })),
        row('loads[0].massSdKg', 0, 1000, (massSdKg) => seat({}, { massSdKg })),
        row('loads[0].armSdM', 0, 5, (armSdM) => seat({}, { armSdM })),
        row('fuel.rear.lowL', 0, fullL, (litres) => fuelOf(litres, fullL, fullL)),
        row('fuel.rear.bestL', 10, fullL, (litres) => fuelOf(10, litres, fullL)),
        row('fuel.rear.highL', 20, fullL, (litres) => fuelOf(10, 20, litres)),
      ],
      refused: [
        {
          when: 'the same station twice',
          call: withPlane({ stations: [station, station] }),
          sentence: /left is there twice/,
        },
        {
          when: 'a load at an unknown station',
          call: seat({ id: 'other' }),
          sentence: /there is no station left/,
        },
        { when: 'a fixed seat that is moved', call: seat({}, { armM: 2 }), sentence: /cannot be moved/ },
        {
          when: 'an adjustable seat without its place',
          call: seat({ arm: { kind: 'adjustable', foremostM: 1, aftmostM: 2 } }),
          sentence: /say where left stands/,
        },
        {
          when: 'an empty mass above the maximum',
          call: withPlane({ maxMasses: { ...noMaxima, takeOffKg: 300 } }),
          sentence: /takeOffKg is 300 kg; .* \(the empty mass alone is above it\)/,
        },
        {
          when: 'a weighing without oil and no oil',
          call: empty({ oilIncluded: false }),
          sentence: /the weighing left the oil out/,
        },
        {
          when: 'a tank without contents',
          call: withPlane({}, { fuel: [exactly('rear', 1)] }),
          sentence: /fuel.front: its contents are missing/,
        },
        {
          when: 'contents of an unknown tank',
          call: withPlane({}, { fuel: [...twoFriends.fuel, exactly('wing', 1)] }),
          sentence: /there is no tank wing/,
        },
        {
          when: 'less fuel than taxiing takes',
          call: withPlane({}, { fuel: [exactly('rear', 0), exactly('front', 1)] }),
          sentence: /taxi takes 1.5 L; the tanks may hold only 1 L/,
        },
        {
          when: 'a category without an envelope',
          call: withPlane({ envelopes: [{ ...envelope, category: 'normal' }] }, { category: 'utility' }),
          sentence: /no envelope is for the category "utility"/,
        },
        {
          when: 'a load beyond a table of arms',
          call: withPlane(
            {
              stations: [
                {
                  ...locker,
                  arm: {
                    kind: 'armTable',
                    knots: [
                      { massKg: 0, armM: 2.5 },
                      { massKg: 10, armM: 2.6 },
                    ],
                  },
                },
              ],
            },
            { loads: [load('bag', 'A', 11)] },
          ),
          sentence: /covers 0 to 10 kg, not 11 kg/,
        },
      ],
    },
    {
      of: assessLoading,
      refused: [
        {
          when: 'what loadingModel refuses',
          call: () => assessLoading(twoSeater, { ...twoFriends, fuel: [] }),
          sentence: /its contents are missing/,
        },
      ],
    },
    {
      of: tankMoment,
      ranges: [
        row('tanks.rear.capacityL', 1e-3, 5000, (capacityL) => oneTank({ capacityL })),
        row('tanks.rear.unusableL', 0, 45 * (1 - 1e-9), (unusableL) => oneTank({ unusableL })),
        row('tanks.rear.densityKgPerL', 0.6, 1.1, (densityKgPerL) => oneTank({ densityKgPerL })),
        row('tanks.rear.armM', -100, 100, (armM) => oneTank({ arm: { kind: 'fixed', armM } })),
        row('tanks.rear.arm.knots[0].armM', -100, 100, (armM) =>
          oneTank({
            arm: {
              kind: 'armTable',
              counts: 'usable',
              knots: [
                { volumeL: 0, armM },
                { volumeL: 45, armM: 2 },
              ],
            },
          }),
        ),
      ],
      refused: [
        {
          when: 'a table that does not reach the capacity',
          call: oneTank({
            arm: {
              kind: 'armTable',
              counts: 'usable',
              knots: [
                { volumeL: 0, armM: 2 },
                { volumeL: 40, armM: 2 },
              ],
            },
          }),
          sentence: /covers 0 to 40 L; it has to cover 0 to 45 L/,
        },
        {
          when: 'knots that do not rise',
          call: oneTank({
            arm: {
              kind: 'momentTable',
              counts: 'usable',
              tableDensityKgPerL: 0.72,
              knots: [
                { volumeL: 20, momentKgM: 2 },
                { volumeL: 20, momentKgM: 2 },
              ],
            },
          }),
          sentence: /knot 3 \(20\) must lie above knot 2 \(20\)/,
        },
      ],
    },
    {
      of: burnPlan,
      ranges: [
        row('flight.taxiL', 0, 1000, (taxiL) => flown({ taxiL })),
        row('flight.climbL', 0, 1000, (climbL) => flown({ climbL, climbMin: climbL > 0 ? 10 : 0 })),
        row('flight.climbMin', 0, 600, (climbMin) => flown({ climbL: climbMin > 0 ? 10 : 0, climbMin })),
        row('flight.cruiseLPerH', 0.1, 2000, (cruiseLPerH) => flown({ cruiseLPerH })),
        row('flight.landingAfterS', 0, 172_800, (landingAfterS) => flown({ landingAfterS })),
        row('burn.everyMin', 1, 1440, (everyMin) => flown({}, { kind: 'alternate', everyMin })),
        row('burn.returnLine.pumpLPerH', 18, 5000, (pumpLPerH) =>
          flown({}, { returnLine: { intoTankId: 'rear', pumpLPerH } }),
        ),
      ],
      refused: [
        {
          when: 'an unknown tank',
          call: flown({}, { tankIds: ['wing'] }),
          sentence: /there is no tank wing/,
        },
        {
          when: 'a tank named twice',
          call: flown({}, { tankIds: ['rear', 'rear'] }),
          sentence: /rear is named twice/,
        },
        {
          when: 'a tank with fuel left out',
          call: flown({}, { tankIds: ['rear'] }, ['front']),
          sentence: /front has fuel but no place/,
        },
        { when: 'climb fuel without minutes', call: flown({ climbL: 3 }), sentence: /given both or neither/ },
        {
          when: 'alternating without minutes',
          call: flown({}, { kind: 'alternate' }),
          sentence: /after how many minutes/,
        },
      ],
    },
    {
      of: envelopeBands,
      ranges: [
        {
          field: 'envelopes.main.vertices[0].massKg',
          min: 1,
          max: 50_000,
          call: vertex(
            'arm',
            () => 50,
            (v) => v,
          ),
        },
        {
          field: 'envelopes.main.vertices[0].across',
          min: -100,
          max: 100,
          call: vertex(
            'arm',
            (v) => v,
            () => 400,
          ),
        },
        {
          field: 'envelopes.main.vertices[0].across',
          min: -5e6,
          max: 5e6,
          call: vertex(
            'moment',
            (v) => v,
            () => 400,
          ),
        },
        {
          field: 'envelopes.main.vertices[0].across',
          min: -100,
          max: 200,
          call: vertex(
            'mac',
            (v) => v,
            () => 400,
          ),
        },
      ],
      refused: [
        { when: 'two vertices', call: outline([[1, 400], [2, 400]]), sentence: /at least three vertices/ }, // prettier-ignore
        {
          when: 'edges that cross, with both named',
          call: outline([[1.7, 400], [1.9, 600], [1.7, 600], [1.9, 400]]), // prettier-ignore
          sentence: /the edge from vertex 1 to 2 and the edge from vertex 3 to 4 cross/,
        },
        { when: 'no height', call: outline([[1, 400], [2, 400], [3, 400]]), sentence: /cross or lie on each other/ }, // prettier-ignore
        { when: 'percent of MAC without a chord', call: outline([[1, 400], [2, 400], [2, 500]], { across: 'mac' }), sentence: /needs the chord/ }, // prettier-ignore
      ],
    },
    {
      of: macPercent,
      ranges: [
        { field: 'armM', min: -100, max: 100, call: (armM) => macPercent(armM, chord) },
        { field: 'mac.lengthM', min: 0.1, max: 20, call: (lengthM) => macPercent(2, { ...chord, lengthM }) },
      ],
    },
    {
      of: armAtMacPercentM,
      ranges: [
        { field: 'percent', min: -100, max: 200, call: (percent) => armAtMacPercentM(percent, chord) },
      ],
    },
    {
      of: requireChord,
      ranges: [
        {
          field: 'mac.leadingEdgeArmM',
          min: -100,
          max: 100,
          call: (leadingEdgeArmM) => {
            requireChord({ ...chord, leadingEdgeArmM });
          },
        },
      ],
    },
    {
      of: requireArm,
      ranges: [
        {
          field: 'armM',
          min: -100,
          max: 100,
          call: (armM) => {
            requireArm('armM', armM);
          },
        },
      ],
    },
    {
      of: requireMass,
      ranges: [
        {
          field: 'massKg',
          min: 0,
          max: 50_000,
          call: (massKg) => {
            requireMass('massKg', massKg);
          },
        },
      ],
    },
    {
      of: requireDensity,
      ranges: [
        {
          field: 'densityKgPerL',
          min: 0.6,
          max: 1.1,
          call: (density) => {
            requireDensity('densityKgPerL', density);
          },
        },
      ],
    },
    {
      of: requireRising,
      refused: [
        {
          when: 'a single knot',
          call: () => {
            requireRising('knots', [1], 'volumeL');
          },
          sentence: /at least two knots/,
        },
        {
          when: 'contents below nothing',
          call: () => {
            requireRising('knots', [-1, 1], 'volumeL');
          },
          sentence: /knots\[0\].volumeL is -1 L; allowed 0 to 100000 L/,
        },
      ],
    },
    {
      of: pointAfterL,
      ranges: [
        {
          field: 'burnedL',
          min: 0,
          max: result.exhausted.burnedL,
          call: (burnedL) => pointAfterL(model, result.path, burnedL),
        },
      ],
    },
    {
      of: emptyFromScales,
      ranges: [
        row(
          'readings[0].scaleKg',
          0,
          50_000,
          (scaleKg) => () => emptyFromScales([{ ...scale, scaleKg }, mains]),
        ),
        row('readings[0].tareKg', 0, 100, (tareKg) => () => emptyFromScales([{ ...scale, tareKg }, mains])),
        row('readings[0].armM', -100, 100, (armM) => () => emptyFromScales([{ ...scale, armM }, mains])),
        row(
          'readings[0].scaleSdKg',
          0,
          1000,
          (scaleSdKg) => () => emptyFromScales([{ ...scale, scaleSdKg }, mains]),
        ),
        row('readings[0].armSdM', 0, 1, (armSdM) => () => emptyFromScales([{ ...scale, armSdM }, mains])),
        row(
          'corrections[0].massKg',
          0,
          50_000,
          (massKg) => () => emptyFromScales([scale, mains], [{ ...battery, sense: 'add', massKg }]),
        ),
        row(
          'corrections[0].armM',
          -100,
          100,
          (armM) => () => emptyFromScales([scale, mains], [{ ...battery, armM }]),
        ),
        row(
          'corrections[0].massSdKg',
          0,
          1000,
          (massSdKg) => () => emptyFromScales([scale, mains], [{ ...battery, massSdKg }]),
        ),
      ],
      refused: [
        { when: 'one scale', call: () => emptyFromScales([scale]), sentence: /at least two arms/ },
        {
          when: 'more taken off than there is',
          call: () => emptyFromScales([scale, mains], [{ ...battery, massKg: 400 }]),
          sentence: /a net mass of -80 kg is none/,
        },
      ],
    },
    {
      of: fuelAboard,
      ranges: [
        row('volumeL', 0, 5000, (volumeL) => () => fuelAboard('tank', volumeL, 0.72, 1, 0)),
        row('densityKgPerL', 0.6, 1.1, (density) => () => fuelAboard('tank', 10, density, 1, 0)),
        row('armM', -100, 100, (armM) => () => fuelAboard('tank', 10, 0.72, armM, 0)),
        row('volumeSdL', 0, 500, (sd) => () => fuelAboard('tank', 10, 0.72, 1, sd)),
      ],
    },
    {
      of: cgFromThirdWheelM,
      ranges: [
        row('mainsArmM', -100, 100, (armM) => () => cgFromThirdWheelM('nose', armM, 1.5, 50, 300)),
        row('wheelbaseM', 0.1, 50, (wheelbaseM) => () => cgFromThirdWheelM('nose', 1.9, wheelbaseM, 50, 300)),
        row('thirdWheelKg', 0, 300, (thirdKg) => () => cgFromThirdWheelM('tail', 1.9, 4, thirdKg, 300)),
        row('totalKg', 0.1, 50_000, (totalKg) => () => cgFromThirdWheelM('tail', 1.9, 4, 0, totalKg)),
      ],
    },
    {
      of: cgShiftM,
      ranges: [
        row('movedKg', 0, 500, (movedKg) => () => cgShiftM(movedKg, 1, 2, 500)),
        row('fromArmM', -100, 100, (armM) => () => cgShiftM(10, armM, 2, 500)),
        row('toArmM', -100, 100, (armM) => () => cgShiftM(10, 1, armM, 500)),
        row('totalKg', 0.1, 50_000, (totalKg) => () => cgShiftM(0, 1, 2, totalKg)),
      ],
    },
    byPosition(massToShiftKg, [
      { field: 'totalKg', min: 0.1, max: 50_000, good: 500 },
      arms('cgArmM', 1.8),
      arms('wantedArmM', 1.7),
      arms('fromArmM', 1),
      arms('toArmM', 2),
    ]),
    byPosition(ballastKg, [
      { field: 'totalKg', min: 0.1, max: 50_000, good: 500 },
      arms('cgArmM', 1.8),
      arms('wantedArmM', 1.7),
      arms('ballastArmM', 3),
    ]),
    {
      of: massToShiftKg,
      refused: [
        {
          when: 'a move to the same arm',
          call: () => massToShiftKg(500, 1.8, 1.7, 2, 2),
          sentence: /changes nothing/,
        },
      ],
    },
    {
      of: ballastKg,
      refused: [
        {
          when: 'ballast at the wanted CG',
          call: () => ballastKg(500, 1.8, 1.7, 1.7),
          sentence: /cannot move it/,
        },
      ],
    },
    byPosition(litresToDrainL, [
      { field: 'excessKg', min: 0, max: 50_000, good: 10 },
      { field: 'densityKgPerL', min: 0.6, max: 1.1, good: 0.72 },
    ]),
    byPosition(minimumFuelForBalanceL, [{ field: 'powerHp', min: 1, max: 2000, good: 100 }]),
    {
      of: emptyAfterChanges,
      ranges: [
        row('empty.massKg', 0.1, 50_000, (massKg) => () => emptyAfterChanges({ massKg, armM: 1 }, [])),
        row('empty.armM', -100, 100, (armM) => () => emptyAfterChanges({ massKg: 300, armM }, [])),
        row(
          'changes[0].massKg',
          0,
          50_000,
          (massKg) => () => emptyAfterChanges({ massKg: 300, armM: 1 }, [{ kind: 'added', massKg, armM: 1 }]),
        ),
        row(
          'changes[0].armM',
          -100,
          100,
          (armM) => () => emptyAfterChanges({ massKg: 300, armM: 1 }, [{ kind: 'removed', massKg: 2, armM }]),
        ),
        row(
          'changes[0].toArmM',
          -100,
          100,
          (toArmM) => () =>
            emptyAfterChanges({ massKg: 300, armM: 1 }, [{ kind: 'moved', massKg: 2, fromArmM: 1, toArmM }]),
        ),
      ],
      refused: [
        {
          when: 'more taken out than there is',
          call: () =>
            emptyAfterChanges({ massKg: 300, armM: 1 }, [{ kind: 'removed', massKg: 300, armM: 1 }]),
          sentence: /300 kg cannot be taken from 300 kg/,
        },
      ],
    },
  ],
  takeNoNumber: [
    [fuelByGauge, 'fuelAtReading refuses the reading'],
    [withGaugeReading, 'fuelAtReading refuses the reading'],
    [assessModel, 'takes a model that loadingModel has checked'],
    [limitsOf, 'takes a checked model'],
    [largestMassKg, 'takes a checked model'],
    [fuelFigures, 'takes contents that loadingModel has checked'],
    [newPath, 'takes counts of ours'],
    [makeRoom, 'takes a path of ours'],
    [newTally, 'takes a tolerance of ours'],
    [walk, 'takes a checked plan, checked tanks and contents within them'],
    [pointAt, 'takes a node of a path'],
    [followEnvelope, 'takes nodes of a path'],
    [followMass, 'takes nodes of a path and a checked limit'],
    [followDifference, 'takes a path and a checked limit'],
    [limitingMomentKgM, 'takes a side of a checked envelope and a mass in its band'],
    [momentInSegmentKgM, 'takes contents within a segment of a checked tank'],
    [momentOfUsableKgM, 'takes contents within a checked tank'],
    [segmentOf, 'takes contents within a checked tank'],
    [crossingEdges, 'takes points whose size does not matter'],
  ],
};
