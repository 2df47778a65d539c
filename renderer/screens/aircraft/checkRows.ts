import type { AircraftRecord, FigureSource, WeighingRecord } from '../../../shared-calc/loading/records.ts';
import type {
  ClimbTableRecord,
  DistanceTableRecord,
  PerformanceRecord,
  PrintedPlace,
} from '../../../shared-calc/performance/records.ts';
import type { Quantity, UnitOf } from '../../../shared-calc/units/quantities.ts';
import { fieldText, unitSuffix } from '../../../shared-calc/units/shown.ts';
import { UNITS } from '../../../shared-calc/units/unit-table.ts';
import { blendName } from '../../../shared-calc/wording/fuel-density.ts';
import { listWords } from '../../../shared-calc/wording/list-words.ts';
import { dayText } from '../../ui/dateKind.ts';
import { manualUnits } from './printedUnits.ts';

/** A figure as it was entered, to be read against the manual. */
export interface CheckRow {
  what: string;
  figure: string;
}

/** Figures that carry one mark of comparison, or that have none to be compared with. */
export interface CheckPart {
  title: string;
  /** "compared 2 April 2026", "not compared yet", "measured". */
  standing: string;
  rows: CheckRow[];
}

const phaseWords: Record<AircraftRecord['envelopes'][number]['phase'], string> = {
  flight: 'the whole flight',
  'take-off': 'take-off',
  landing: 'landing',
  'zero-fuel': 'no usable fuel',
  ramp: 'the ramp',
};

type Figures = ReturnType<typeof figuresIn>;

/** Every figure of an aeroplane in the units of its manual, part by part, in the order of the Aircraft sheet. */
export function checkParts(
  aircraft: AircraftRecord,
  weighing: WeighingRecord | null,
  tables: PerformanceRecord | null,
): CheckPart[] {
  const f = figuresIn(aircraft);
  return [
    {
      title: 'Aeroplane',
      standing: standingOf(aircraft.limitsSource),
      rows: limitRows(aircraft, f),
    },
    ...(weighing === null ? [] : [weighingPart(weighing, f)]),
    ...aircraft.stations.map((station): CheckPart => {
      const { arm, leastKg, mostKg } = station;
      return {
        title: station.name,
        standing: standingOf(station.source),
        rows: [
          ...(arm.kind === 'fixed'
            ? [f.row('arm', arm.armM, 'arm')]
            : [f.row('foremost', arm.foremostM, 'arm'), f.row('aftmost', arm.aftmostM, 'arm')]),
          ...f.lateral(station.lateralArmM),
          f.row('least', leastKg, 'mass'),
          f.row('most', mostKg, 'mass'),
        ].flat(),
      };
    }),
    ...aircraft.tanks.map((tank): CheckPart => {
      const { arm } = tank;
      return {
        title: tank.name,
        standing: standingOf(tank.source),
        rows: [
          { what: 'side', figure: tank.side },
          f.row('capacity, the unusable included', tank.capacityL, 'volume'),
          f.row('unusable', tank.unusableL, 'volume'),
          { what: 'fuel', figure: tank.fuelKind },
          tank.blend === undefined
            ? f.row('density', 1000 * tank.densityKgPerL, 'fuelDensity')
            : [
                { what: 'density by the kind of fuel', figure: blendName(tank.blend) },
                ...(tank.blend.kind === 'own'
                  ? f.row('density at 15 °C', 1000 * tank.blend.at15KgPerL, 'fuelDensity')
                  : []),
              ],
          ...f.lateral(tank.lateralArmM),
          ...(arm.kind === 'fixed'
            ? f.row('arm', arm.armM, 'arm')
            : [
                { what: 'the table counts', figure: arm.counts === 'usable' ? 'usable fuel' : 'all fuel' },
                ...(arm.kind === 'momentTable'
                  ? f.row('the table’s density', 1000 * arm.tableDensityKgPerL, 'fuelDensity')
                  : []),
                ...arm.knots.map((knot) => ({
                  what: `at ${f.text(knot.volumeL, 'volume')}`,
                  figure: 'armM' in knot ? f.text(knot.armM, 'arm') : f.text(knot.momentKgM, 'moment'),
                })),
              ]),
        ].flat(),
      };
    }),
    ...aircraft.envelopes.map((envelope): CheckPart => {
      const across = (value: number) =>
        envelope.across === 'mac'
          ? `${fieldText(value / 100, 'share', '%')}\u00a0% MAC`
          : f.text(value, envelope.across);
      return {
        title: `Envelope ${[envelope.name, envelope.category].filter((word) => word !== '').join(', ')}`,
        standing: standingOf(envelope.source),
        rows: [
          { what: 'holds for', figure: phaseWords[envelope.phase] },
          ...(envelope.lowestIsLimit === true
            ? [{ what: 'its lowest mass', figure: 'is a least mass of the manual' }]
            : []),
          ...envelope.vertices.map((vertex, i) => ({
            what: `vertex ${String(i + 1)}`,
            figure: `${across(vertex.across)}, ${f.text(vertex.massKg, 'mass')}`,
          })),
        ],
      };
    }),
    {
      title: 'Performance and reserve',
      standing: standingOf(aircraft.performanceSource),
      rows: performanceRows(aircraft, f),
    },
    ...tableParts(tables, f),
  ].filter(({ rows }) => rows.length > 0);
}

/** The aeroplane with every figure from its manual marked as compared on a day; measured and estimated ones stay so. */
export function comparedOn(aircraft: AircraftRecord, day: string): AircraftRecord {
  const mark = (source: FigureSource): FigureSource =>
    source.from === 'manual' ? { ...source, comparedOn: day } : source;
  const rows = <R extends { source: FigureSource }>(all: readonly R[]): R[] =>
    all.map((row) => ({ ...row, source: mark(row.source) }));
  return {
    ...aircraft,
    stations: rows(aircraft.stations),
    tanks: rows(aircraft.tanks),
    envelopes: rows(aircraft.envelopes),
    limitsSource: mark(aircraft.limitsSource),
    performanceSource: mark(aircraft.performanceSource),
  };
}

function standingOf({ from, comparedOn: day }: FigureSource): string {
  if (from !== 'manual') return from;
  return day === null ? 'not compared yet' : `compared ${dayText(day)}`;
}

/** Ways to write a figure as it was typed; an empty one makes no row. */
function figuresIn({ printed, lateral }: Pick<AircraftRecord, 'printed' | 'lateral'>) {
  const units = manualUnits(printed);
  const text = (value: number, quantity: keyof typeof units) =>
    `${fieldText(value, quantity, units[quantity])}${unitSuffix(units[quantity])}`;
  return {
    text,
    /** Nothing where the manual gives no lateral arms. */
    lateral: (armM: number | undefined): CheckRow[] =>
      lateral === undefined
        ? []
        : [
            {
              what: 'lateral arm, right positive',
              figure: armM === undefined ? 'not entered' : text(armM, 'arm'),
            },
          ],
    row: (what: string, value: number | null, quantity: keyof typeof units): CheckRow[] =>
      value === null ? [] : [{ what, figure: text(value, quantity) }],
  };
}

function limitRows(aircraft: AircraftRecord, f: Figures): CheckRow[] {
  const { maxMasses, mac, gear, oil } = aircraft;
  return [
    { what: 'identification', figure: aircraft.identification },
    { what: 'the datum is', figure: aircraft.datumWords },
    f.row('maximum on the ramp', maxMasses.rampKg, 'mass'),
    f.row('maximum at take-off', maxMasses.takeOffKg, 'mass'),
    f.row('maximum at landing', maxMasses.landingKg, 'mass'),
    f.row('maximum without fuel', maxMasses.zeroFuelKg, 'mass'),
    f.row('left against right fuel, most', aircraft.leftRightMostKg, 'mass'),
    ...lateralRows(aircraft, f),
    f.row('leading edge of the mean chord', mac?.leadingEdgeArmM ?? null, 'arm'),
    f.row('length of the mean chord', mac?.lengthM ?? null, 'arm'),
    f.row(gear.kind === 'nose wheel' ? 'nose wheel' : 'tail wheel', gear.noseOrTailArmM, 'arm'),
    f.row('main wheels', gear.mainArmM, 'arm'),
    f.row('oil, mass', oil?.massKg ?? null, 'mass'),
    f.row('oil, arm', oil?.armM ?? null, 'arm'),
    ...aircraft.groups.flatMap((group) => [
      f.row(`${group.name}, most together`, group.mostKg, 'mass'),
      {
        what: `${group.name} counts`,
        figure: listWords(
          aircraft.stations.filter(({ id }) => group.stationIds.includes(id)).map(({ name }) => name),
        ),
      },
      group.emptyPartKg === 0
        ? []
        : f.row(`${group.name}, part of the empty weight`, group.emptyPartKg, 'mass'),
    ]),
  ]
    .flat()
    .filter(({ figure }) => figure !== '');
}

function lateralRows({ lateral, oil }: AircraftRecord, f: Figures): CheckRow[] {
  if (lateral === undefined) return [];
  return [
    ...f.row('left limit, right positive', lateral.left, lateral.across),
    ...f.row('right limit, right positive', lateral.right, lateral.across),
    ...(oil === null ? [] : f.row('oil, lateral arm', lateral.oilArmM, 'arm')),
  ];
}

function weighingPart(weighing: WeighingRecord, f: Figures): CheckPart {
  const yesNo = (is: boolean) => (is ? 'included' : 'not included');
  return {
    title: 'Empty weight',
    standing: `${weighing.how}, ${dayText(weighing.weighedOn)}`,
    rows: [
      f.row('empty weight', weighing.emptyMassKg, 'mass'),
      f.row('its arm', weighing.emptyArmM, 'arm'),
      f.row('its lateral arm, right positive', weighing.lateralArmM ?? null, 'arm'),
      { what: 'unusable fuel', figure: yesNo(weighing.unusableFuelIncluded) },
      { what: 'oil', figure: yesNo(weighing.oilIncluded) },
    ].flat(),
  };
}

function performanceRows({ performance }: AircraftRecord, f: Figures): CheckRow[] {
  const { bestGlideMs, bestGlideRatio } = performance;
  return [
    bestGlideMs === null ? [] : [{ what: 'best glide', figure: withUnit(bestGlideMs, 'speed', 'kt') }],
    bestGlideRatio === null ? [] : [{ what: 'glide ratio', figure: String(bestGlideRatio) }],
    f.row('fuel flow in cruise', performance.fuelFlowLPerH, 'fuelFlow'),
    f.row('fuel for taxi', performance.taxiFuelL, 'volume'),
    { what: 'legal reserve', figure: `${String(performance.legalReserveMin)}\u00a0min` },
    { what: 'own reserve', figure: `${String(performance.ownReserveMin)}\u00a0min` },
  ].flat();
}

function tableParts(tables: PerformanceRecord | null, f: Figures): CheckPart[] {
  if (tables === null) return [];
  const { altitude, temperature, speed, distance, climbRate } = tables.printed;
  const place = (at: PrintedPlace) =>
    [
      at.massKg === null ? '' : f.text(at.massKg, 'mass'),
      at.pressureAltitudeM === null ? '' : withUnit(at.pressureAltitudeM, 'altitude', altitude),
      at.temperatureC === null ? '' : withUnit(at.temperatureC, 'temperature', temperature),
      at.headwindMs === null ? '' : `headwind ${withUnit(at.headwindMs, 'speed', speed)}`,
    ]
      .filter((words) => words !== '')
      .join(', ');
  const metres = (valueM: number | null) =>
    valueM === null ? 'blank' : withUnit(valueM, 'distance', distance);
  const distances = (title: string, table: DistanceTableRecord | null): CheckPart[] =>
    table === null
      ? []
      : [
          {
            title,
            standing: standingOf(table.source),
            rows: [
              { what: 'page', figure: table.words },
              { what: 'each line', figure: 'ground roll, over the obstacle' },
              ...table.rows.map((row) => ({
                what: place(row),
                figure: `${metres(row.groundRollM)}, ${metres(row.overObstacleM)}`,
              })),
            ],
          },
        ];
  const climb = (table: ClimbTableRecord | null): CheckPart[] =>
    table === null
      ? []
      : [
          {
            title: 'Climb',
            standing: standingOf(table.source),
            rows: [
              { what: 'page', figure: table.words },
              ...table.rows.map((row) => ({
                what: place(row),
                figure:
                  row.climbRateMs === null ? 'blank' : withUnit(row.climbRateMs, 'climbRate', climbRate),
              })),
            ],
          },
        ];
  return [
    ...distances('Take-off', tables.takeOff),
    ...distances('Landing', tables.landing),
    ...climb(tables.climb),
  ];
}

function withUnit<Q extends Quantity>(value: number, quantity: Q, unit: UnitOf[Q]): string {
  return `${fieldText(value, quantity, unit)}${unit in UNITS ? unitSuffix(unit) : ''}`;
}
