import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isaPressureHpa } from '../../../shared-calc/atmosphere/standard-atmosphere.ts';
import { moistAirDensityKgM3 } from '../../../shared-calc/atmosphere/air-density.ts';
import { climbGradientRatio } from '../../../shared-calc/performance/climb.ts';
import { performanceBook } from '../../../shared-calc/performance/departure-book.ts';
import {
  availableLengthM,
  departureFigures,
  distanceFigures,
} from '../../../shared-calc/performance/departure-figures.ts';
import type { DepartureQuestion } from '../../../shared-calc/performance/departure-figures.ts';
import { climbNumbers, climbReader } from '../../../shared-calc/performance/climb-reader.ts';
import { distanceNumbers, distanceReader } from '../../../shared-calc/performance/distance-reader.ts';
import { isAnswered } from '../../../shared-calc/performance/figure-kind.ts';
import { humidityStep } from '../../../shared-calc/performance/humidity-step.ts';
import { emptyPerformance } from '../../../shared-calc/performance/records.ts';
import type { PerformanceRecord } from '../../../shared-calc/performance/records.ts';
import { toSi } from '../../../shared-calc/units/convert.ts';
import { examplePerformance } from '../../main/example-performance.ts';

const GLIDE = { bestGlideMs: 28, bestGlideRatio: 9 };
const record = examplePerformance('two-seater');
const book = performanceBook(record, GLIDE);

const QUESTION: DepartureQuestion = {
  massKg: 600,
  pressureAltitudeM: 609.6,
  temperatureC: 20,
  dewPointC: null,
  headwindMs: 0,
  runway: { availableM: 1000, surface: 'paved', slopeRatio: 0 },
};
const ask = (parts: Partial<DepartureQuestion>, of: PerformanceRecord = record) =>
  departureFigures(performanceBook(of, GLIDE), { ...QUESTION, ...parts });

/** The published landing table of PERF-002 to 005 (FAA knowledge test supplement): one mass, standard temperatures, notes. */
const FAA_LANDING: PerformanceRecord = {
  ...emptyPerformance('faa'),
  landing: {
    words: '',
    surface: 'paved',
    rows: [
      [0, 445, 1075],
      [2500, 470, 1135],
      [5000, 495, 1195],
      [7500, 520, 1255],
    ].map(([altitudeFt = 0, rollFt = 0, overFt = 0]) => ({
      massKg: toSi(1600, 'lb'),
      pressureAltitudeM: toSi(altitudeFt, 'ft'),
      temperatureC: null,
      headwindMs: null,
      groundRollM: toSi(rollFt, 'ft'),
      overObstacleM: toSi(overFt, 'ft'),
      asPrinted: false,
    })),
    notes: [
      { counts: 'headwind', amount: toSi(4, 'kt'), mostAmount: null, changeRatio: -0.1, shareOf: 'each' },
      { counts: 'aboveStandard', amount: 60 / 1.8, mostAmount: null, changeRatio: 0.1, shareOf: 'each' },
      { counts: 'dryGrass', amount: null, mostAmount: null, changeRatio: 0.2, shareOf: 'overObstacle' },
    ],
    windMargin: 'included',
    speedMs: null,
    safety: { factorRatio: 1, source: 'none' },
    readingSdRatio: 0.05,
    against: 'overObstacle',
    source: { from: 'manual', comparedOn: null },
    enteredOn: null,
  },
};

describe('a published landing table with notes (FAA knowledge test supplement, landing distance figure)', () => {
  // Answers are printed to 5 ft or 1 ft; the rows differ from standard temperature by up to 0.5 F deg, worth 0.1 %.
  test.each([
    ['ground roll at 1 250 ft, headwind 8 kt', 1250, 8, 54.5, false, 366, 'groundRollM'],
    ['over 50 ft at 3 750 ft, headwind 12 kt', 3750, 12, 45.6, false, 816, 'overObstacleM'],
    ['ground roll at 5 000 ft, 101 degF', 5000, 0, 101, false, 545, 'groundRollM'],
    ['over 50 ft at 7 500 ft, headwind 8 kt, 32 degF', 7500, 8, 32, false, 1004, 'overObstacleM'],
    ['over 50 ft at 5 000 ft, headwind 8 kt, 41 degF', 5000, 8, 41, false, 956, 'overObstacleM'],
  ] as const)('%s', (_, altitudeFt, headwindKt, temperatureF, isGrass, expectedFt, which) => {
    const figures = distanceFigures(performanceBook(FAA_LANDING, GLIDE), 'landing', {
      massKg: toSi(1600, 'lb'),
      pressureAltitudeM: toSi(altitudeFt, 'ft'),
      temperatureC: toSi(temperatureF, 'degF'),
      dewPointC: null,
      headwindMs: toSi(headwindKt, 'kt'),
      runway: { availableM: 1000, surface: isGrass ? 'dryGrass' : 'paved', slopeRatio: 0 },
    });
    expect(Math.abs(figures[which] / 0.3048 - expectedFt)).toBeLessThan(2);
  });

  test('grass adds a fifth of the distance over 50 ft to both', () => {
    const figures = distanceFigures(performanceBook(FAA_LANDING, GLIDE), 'landing', {
      massKg: toSi(1600, 'lb'),
      pressureAltitudeM: 0,
      temperatureC: 15,
      dewPointC: null,
      headwindMs: 0,
      runway: { availableM: 1000, surface: 'dryGrass', slopeRatio: 0 },
    });
    // By hand: 1075 ft x 0.2 = 215 ft; 445 + 215 and 1075 + 215.
    expect(figures.groundRollM / 0.3048).toBeCloseTo(660, 9);
    expect(figures.overObstacleM / 0.3048).toBeCloseTo(1290, 9);
  });
});

test('the handbook’s example of interpolating between altitudes: 1 115 and 1 230 ft give 1 173 ft half way', () => {
  // Pilot's Handbook of Aeronautical Knowledge, FAA-H-8083-25, performance charts, figure "Interpolating charts": 20 °C.
  const { takeOff } = record;
  if (takeOff === null) throw new Error('no table');
  const rows = (
    [
      [2000, 1115],
      [3000, 1230],
    ] as const
  ).map(([altitudeFt, rollFt]) => ({
    massKg: 600,
    pressureAltitudeM: toSi(altitudeFt, 'ft'),
    temperatureC: 20,
    headwindMs: null,
    groundRollM: toSi(rollFt, 'ft'),
    overObstacleM: null,
    asPrinted: false,
  }));
  const of = { ...record, takeOff: { ...takeOff, rows, against: 'groundRoll' as const } };
  const found = ask({ pressureAltitudeM: toSi(2500, 'ft'), temperatureC: 20 }, of).takeOff;
  // Printed to 1 ft.
  expect(Math.abs(found.groundRollM / 0.3048 - 1173)).toBeLessThan(0.6);
  // No distance over 50 ft is printed, and none is made up.
  expect(found.overObstacleM).toBe(Infinity);
});

describe('what one departure needs', () => {
  test('is interpolated by hand: half way in altitude, between each altitude’s own temperatures', () => {
    // 0 ft at 20 °C: 170 + 2/3 x 30 = 190; 4 000 ft at 20 °C: 230 + 0.8 x 45 = 266; half way 228. Over: 390, 552, 471.
    const { takeOff } = ask({});
    expect(takeOff.kind).toBe('table');
    expect(takeOff.groundRollM).toBeCloseTo(228, 9);
    expect(takeOff.overObstacleM).toBeCloseTo(471, 9);
    expect(takeOff.requiredM).toBeCloseTo(471 * 1.33, 9);
    expect(takeOff.marginM).toBeCloseTo(1000 - 471 * 1.33, 9);
  });

  test('counts half of a headwind and half as much again of a tailwind, as the notes say', () => {
    // 4.1 m/s count as 2.05: 10 % less. 1.025 m/s of tailwind count as 1.5 times that: 15 % more.
    expect(ask({ headwindMs: 4.1 }).takeOff.overObstacleM).toBeCloseTo(471 * 0.9, 9);
    expect(ask({ headwindMs: -1.025 }).takeOff.overObstacleM).toBeCloseTo(471 * 1.15, 9);
  });

  test('counts a headwind no further than the note goes, and says that it is no better than that', () => {
    // Half of 20 m/s is 10; the note ends at 6 m/s, 29.2 %.
    const { takeOff } = ask({ headwindMs: 20 });
    expect(takeOff.kind).toBe('edge');
    expect(takeOff.overObstacleM).toBeCloseTo(471 * (1 - 0.1 * (6 / 2.05)), 9);
  });

  test('adds the manual’s grass as a share of the roll to both, and the published step to wet grass on top', () => {
    const grass = { ...QUESTION.runway, surface: 'dryGrass' } as const;
    expect(ask({ runway: grass }).takeOff.overObstacleM).toBeCloseTo(471 + 0.15 * 228, 9);
    const wet = { ...QUESTION.runway, surface: 'wetGrass' } as const;
    // UK CAA SafetySense Leaflet 7: 1.3 wet against 1.2 dry.
    expect(ask({ runway: wet }).takeOff.overObstacleM).toBeCloseTo(((471 + 0.15 * 228) * 1.3) / 1.2, 9);
  });

  test('takes an uphill take-off and a downhill landing by the published 10 % for each 2 %, and gains by neither other', () => {
    const sloped = (slopeRatio: number) => ({ ...QUESTION, runway: { ...QUESTION.runway, slopeRatio } });
    expect(distanceFigures(book, 'takeOff', sloped(0.02)).overObstacleM).toBeCloseTo(471 * 1.1, 9);
    expect(distanceFigures(book, 'takeOff', sloped(-0.02)).overObstacleM).toBeCloseTo(471, 9);
    const level = distanceFigures(book, 'landing', sloped(0)).overObstacleM;
    expect(distanceFigures(book, 'landing', sloped(-0.02)).overObstacleM).toBeCloseTo(level * 1.1, 9);
    expect(distanceFigures(book, 'landing', sloped(0.02)).overObstacleM).toBeCloseTo(level, 9);
  });

  test('is refused hotter, higher and heavier than the table, and at a blank', () => {
    expect(ask({ temperatureC: 31, pressureAltitudeM: 0 }).takeOff.kind).toBe('hotter');
    expect(ask({ pressureAltitudeM: 2500, temperatureC: 20 }).takeOff.kind).toBe('higher');
    expect(ask({ massKg: 601 }).takeOff.kind).toBe('heavier');
    expect(ask({ pressureAltitudeM: 1800, temperatureC: 20 }).takeOff.kind).toBe('blankCell');
    const { takeOff } = ask({ massKg: 601 });
    expect([takeOff.requiredM, takeOff.marginM]).toEqual([Infinity, -Infinity]);
  });

  test('does without a ground roll that is left blank, unless the roll has to fit or a note is a share of it', () => {
    const { takeOff } = examplePerformance('two-seater');
    if (takeOff === null) throw new Error('no table');
    const rows = takeOff.rows.map((row) =>
      row.pressureAltitudeM === 1219.2 ? { ...row, groundRollM: null } : row,
    );
    const blank = (parts: Partial<typeof takeOff>) => ({
      ...record,
      takeOff: { ...takeOff, rows, ...parts },
    });
    const over = ask({}, blank({})).takeOff;
    expect([over.kind, over.groundRollM]).toEqual(['table', Infinity]);
    expect(over.overObstacleM).toBeCloseTo(471, 9);
    expect(ask({}, blank({ against: 'groundRoll' })).takeOff.kind).toBe('blankCell');
    const grass = { ...QUESTION.runway, surface: 'dryGrass' } as const;
    expect(ask({ runway: grass }, blank({})).takeOff.kind).toBe('blankCell');
  });

  test('is no better than the edge colder, lower and lighter than the table', () => {
    const { takeOff } = ask({ pressureAltitudeM: -100, temperatureC: -5, massKg: 480 });
    expect([takeOff.kind, takeOff.overObstacleM]).toEqual(['edge', 250]);
    expect(takeOff.reading?.kind === 'value' && takeOff.reading.heldAtEdge.map(({ axis }) => axis)).toEqual([
      'massKg',
      'pressureAltitudeM',
      'temperatureC',
    ]);
  });

  test('is entered at the virtual temperature and lengthened by the power that vapour takes', () => {
    const { takeOff } = ask({ dewPointC: 18 });
    const step = humidityStep(isaPressureHpa(609.6), 20, 18);
    expect(takeOff.tableTemperatureC).toBeCloseTo(step.tableTemperatureC, 12);
    const dryAtThat = ask({ temperatureC: step.tableTemperatureC }).takeOff.overObstacleM;
    expect(takeOff.overObstacleM).toBeCloseTo(dryAtThat / (1 - step.powerLossRatio), 9);
    expect(takeOff.steps.map(({ counts, kind }) => [counts, kind])).toEqual([['humidity', 'estimate']]);
  });

  test('without a table is an estimate from the one figure, with the chosen factor, and no climb', () => {
    const bare = emptyPerformance('two-seater');
    expect(ask({}, bare).takeOff.kind).toBe('noTable');
    const seaLevel = {
      groundRollM: 160,
      overObstacleM: 330,
      massKg: 600,
      safety: { factorRatio: 1.33, source: 'UK CAA SafetySense Leaflet 7' },
      readingSdRatio: 0.1,
      source: { from: 'manual', comparedOn: null },
    } as const;
    const { takeOff, climb } = ask({ pressureAltitudeM: 0, temperatureC: 15 }, { ...bare, seaLevel });
    // At sea level in standard air it is the figure itself.
    expect(takeOff.kind).toBe('estimate');
    expect(takeOff.overObstacleM).toBeCloseTo(330, 6);
    expect(takeOff.requiredM).toBeCloseTo(330 * 1.33, 6);
    expect(climb.kind).toBe('noTable');
    expect(ask({ pressureAltitudeM: 4500, temperatureC: 20 }, { ...bare, seaLevel }).takeOff.kind).toBe(
      'wouldNotClimb',
    );
  });

  test('from one figure counts a tailwind as a share of a slow lift-off, and is refused with a glide of a brick', () => {
    const seaLevel = {
      groundRollM: 160,
      overObstacleM: 330,
      massKg: 600,
      safety: { factorRatio: 1, source: 'none' },
      readingSdRatio: 0.1,
      source: { from: 'manual', comparedOn: null },
    } as const;
    const bare = { ...emptyPerformance('two-seater'), seaLevel };
    const still = { ...QUESTION, pressureAltitudeM: 0, temperatureC: 15 };
    // 1.2 m/s count as 1.8, a tenth of 18 m/s: 20 % (UK CAA SafetySense Leaflet 7).
    const windy = departureFigures(performanceBook(bare, GLIDE), { ...still, headwindMs: -1.2 }).takeOff;
    expect(windy.overObstacleM).toBeCloseTo(330 * 1.2, 6);
    const brick = performanceBook(bare, { bestGlideMs: 28, bestGlideRatio: 4 });
    expect(departureFigures(brick, still).takeOff.kind).toBe('noRule');
  });

  test('air deep below sea level, as at the lowest fields, is answered and never thrown back', () => {
    const reader = distanceReader(book, 'takeOff', QUESTION.runway);
    expect(reader.read(distanceNumbers(), 600, -1400, 25, 24, 0).kind).toBe('edge');
  });

  test('a landing has no more runway than lies beyond the displaced threshold', () => {
    expect([availableLengthM('takeOff', 1180, 90), availableLengthM('landing', 1180, 90)]).toEqual([
      1180, 1090,
    ]);
  });

  test('a table for standard temperatures without a note is an estimate in warmer air, by the published factor', () => {
    const { landing } = examplePerformance('two-seater');
    if (landing === null) throw new Error('no landing');
    const plain = performanceBook({ ...record, landing: { ...landing, notes: [] } }, GLIDE);
    const figures = distanceFigures(plain, 'landing', {
      ...QUESTION,
      pressureAltitudeM: 0,
      temperatureC: 25,
    });
    // UK CAA SafetySense Leaflet 7: 1.05 for 10 degC.
    expect([figures.kind, figures.overObstacleM]).toEqual(['estimate', 420]);
  });
});

describe('the climb', () => {
  test('is read from its table, the gradient at the true airspeed', () => {
    const { climb } = ask({ pressureAltitudeM: 1219.2, temperatureC: 15 });
    // 0 ft: 3.9, 8 000 ft: 2.3, half way 3.1 m/s.
    expect(climb.kind).toBe('table');
    expect(climb.climbRateMs).toBeCloseTo(3.1, 9);
    const density = moistAirDensityKgM3(isaPressureHpa(1219.2), 15, -45) / 1.225;
    // −45 °C of dew point is dry but for 1e-4 of the density.
    expect(climb.gradientRatio).toBeCloseTo(climbGradientRatio(3.1, 31 / Math.sqrt(density), 0), 5);
  });

  test('loses with vapour its share of the rate and of the sink that the engine makes good', () => {
    const step = humidityStep(isaPressureHpa(1219.2), 15, 15);
    const dry = ask({ pressureAltitudeM: 1219.2, temperatureC: step.tableTemperatureC }).climb.climbRateMs;
    const sinkMs = 28 / 9;
    expect(ask({ pressureAltitudeM: 1219.2, temperatureC: 15, dewPointC: 15 }).climb.climbRateMs).toBeCloseTo(
      dry - step.powerLossRatio * (dry + sinkMs),
      9,
    );
  });

  test('counts no headwind and half as much again of a tailwind', () => {
    const calm = ask({}).climb.gradientRatio;
    expect(ask({ headwindMs: 8 }).climb.gradientRatio).toBe(calm);
    expect(ask({ headwindMs: -4 }).climb.gradientRatio).toBeLessThan(calm);
  });
});

describe('any air, any mass', () => {
  const air = fc.record({
    massKg: fc.double({ min: 450, max: 620, noNaN: true }),
    pressureAltitudeM: fc.double({ min: -200, max: 2600, noNaN: true }),
    temperatureC: fc.double({ min: -15, max: 42, noNaN: true }),
    spreadC: fc.double({ min: 0, max: 30, noNaN: true }),
    headwindMs: fc.double({ min: -8, max: 20, noNaN: true }),
  });
  const surfaces = fc.constantFrom('paved', 'gravel', 'dryGrass', 'wetGrass', 'softGround', 'wetPaved');

  test('the prepared reader gives the very numbers of the full answer, never NaN', () => {
    fc.assert(
      fc.property(air, surfaces, fc.boolean(), ({ spreadC, ...one }, surface, isLanding) => {
        const phase = isLanding ? 'landing' : 'takeOff';
        const runway = { availableM: 700, surface, slopeRatio: 0.01 };
        const dewPointC = one.temperatureC - spreadC;
        const full = distanceFigures(book, phase, { ...one, dewPointC, runway });
        const fast = distanceReader(book, phase, runway).read(
          distanceNumbers(),
          one.massKg,
          one.pressureAltitudeM,
          one.temperatureC,
          dewPointC,
          one.headwindMs,
        );
        expect(full).toMatchObject(fast);
        expect(Object.values(fast).filter(Number.isNaN)).toEqual([]);
        expect(isAnswered(fast.kind)).toBe(fast.requiredM < Infinity);
        // The table's reading that stands beside it says the same about edges and refusals.
        if (full.reading?.kind === 'value')
          expect(full.reading.heldAtEdge.length === 0 || fast.kind !== 'table').toBe(true);
        else expect(isAnswered(fast.kind)).toBe(false);
      }),
    );
  });

  test('more mass, height, heat, vapour or tailwind never shortens, and never brings an answer back', () => {
    const worse = fc.record({
      massKg: fc.double({ min: 0, max: 60, noNaN: true }),
      pressureAltitudeM: fc.double({ min: 0, max: 800, noNaN: true }),
      temperatureC: fc.double({ min: 0, max: 15, noNaN: true }),
      headwindMs: fc.double({ min: -6, max: 0, noNaN: true }),
    });
    const regular: PerformanceRecord = { ...record, takeOff: regularTakeOff() };
    const reader = distanceReader(performanceBook(regular, GLIDE), 'takeOff', QUESTION.runway);
    fc.assert(
      fc.property(air, worse, ({ spreadC, ...one }, more) => {
        const read = (a: typeof one, dewPointC: number) => {
          const numbers = distanceNumbers();
          return reader.read(numbers, a.massKg, a.pressureAltitudeM, a.temperatureC, dewPointC, a.headwindMs)
            .requiredM;
        };
        const easier = read(one, one.temperatureC - spreadC);
        const harder = read(
          {
            massKg: one.massKg + more.massKg,
            pressureAltitudeM: one.pressureAltitudeM + more.pressureAltitudeM,
            temperatureC: one.temperatureC + more.temperatureC,
            headwindMs: one.headwindMs + more.headwindMs,
          },
          one.temperatureC - spreadC + more.temperatureC,
        );
        expect(harder).toBeGreaterThanOrEqual(easier * (1 - 1e-12));
        expect(read(one, one.temperatureC)).toBeGreaterThanOrEqual(easier * (1 - 1e-12));
      }),
    );
  });

  test('an answer never lies outside the printed figures before notes and estimates', () => {
    const reader = distanceReader(book, 'takeOff', QUESTION.runway);
    fc.assert(
      fc.property(air, ({ massKg, pressureAltitudeM, temperatureC }) => {
        const numbers = reader.read(distanceNumbers(), massKg, pressureAltitudeM, temperatureC, NaN, 0);
        if (!isAnswered(numbers.kind)) return;
        expect(numbers.overObstacleM).toBeGreaterThanOrEqual(250);
        expect(numbers.overObstacleM).toBeLessThanOrEqual(570 + 1e-9);
      }),
    );
  });

  test('missing air is no observation: not a limit met, not one broken', () => {
    const reader = distanceReader(book, 'takeOff', QUESTION.runway);
    expect(reader.read(distanceNumbers(), 600, NaN, 20, 10, 0).kind).toBe('missingAir');
    expect(reader.read(distanceNumbers(), 600, 0, NaN, 10, 0).kind).toBe('missingAir');
    expect(reader.read(distanceNumbers(), 600, 0, 20, 10, NaN).kind).toBe('missingAir');
    // A dew point that is not known is dry air.
    expect(reader.read(distanceNumbers(), 600, 0, 20, NaN, 0).kind).toBe('table');
    expect(climbReader(book).read(climbNumbers(), 600, NaN, 20, 10, 0).kind).toBe('missingAir');
  });
});

/** Full and rising on every axis: only there is "never shortens" the table's own doing. */
function regularTakeOff(): PerformanceRecord['takeOff'] {
  const { takeOff } = record;
  if (takeOff === null) throw new Error('no take-off table');
  return {
    ...takeOff,
    rows: [500, 600].flatMap((massKg, i) =>
      [0, 1000, 2000].flatMap((pressureAltitudeM, j) =>
        [0, 20, 40].map((temperatureC, k) => ({
          massKg,
          pressureAltitudeM,
          temperatureC,
          headwindMs: null,
          groundRollM: 120 + 40 * i + 30 * j + 10 * k,
          overObstacleM: 260 + 80 * i + 60 * j + 22 * k,
          asPrinted: false,
        })),
      ),
    ),
  };
}
