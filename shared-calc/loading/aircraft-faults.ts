import { fieldText, unitSuffix } from '../units/shown.ts';
import { crossingEdges } from './crossing-edges.ts';
import type { AircraftRecord, EnvelopeRecord, TankRecord } from './records.ts';

/** Something about an aeroplane that cannot be: the field's path and a sentence for the person. */
export interface Fault {
  path: string;
  sentence: string;
}

/**
 * What in an aeroplane contradicts itself, beyond the range of each single figure; empty when it holds together.
 * The window shows it under the field while typing, the library refuses to keep it.
 */
export function aircraftFaults(aircraft: Omit<AircraftRecord, 'id'>): Fault[] {
  const inUnits = wordsIn(aircraft.printed);
  return [
    ...repeated(aircraft),
    ...stationFaults(aircraft, inUnits),
    ...groupFaults(aircraft),
    ...aircraft.tanks.flatMap((tank, index) => tankFaults(tank, `tanks[${String(index)}]`, inUnits)),
    ...aircraft.envelopes.flatMap((envelope, index) => [
      ...envelopeFaults(envelope, `envelopes[${String(index)}]`),
      ...(envelope.across === 'mac' && aircraft.mac === null
        ? [
            {
              path: `envelopes[${String(index)}].across`,
              sentence: `${envelope.name} is given in percent of the MAC, but the aeroplane has no MAC yet: enter its leading edge and length first`,
            },
          ]
        : []),
    ]),
    ...massFaults(aircraft.maxMasses, inUnits),
    ...lateralFaults(aircraft),
  ];
}

function repeated({ stations, groups, tanks, envelopes }: Omit<AircraftRecord, 'id'>): Fault[] {
  const seen = new Set<string>();
  return Object.entries({ stations, groups, tanks, envelopes }).flatMap(([list, rows]) =>
    rows.flatMap((row, index) => {
      if (!seen.has(row.id)) {
        seen.add(row.id);
        return [];
      }
      return [{ path: `${list}[${String(index)}].id`, sentence: `the identifier ${row.id} is used twice` }];
    }),
  );
}

function stationFaults({ stations }: Omit<AircraftRecord, 'id'>, { mass }: Words): Fault[] {
  return stations.flatMap((station, index) => {
    const faults: Fault[] = [];
    const path = `stations[${String(index)}]`;
    if (station.leastKg !== null && station.mostKg !== null && station.leastKg > station.mostKg)
      faults.push({
        path: `${path}.leastKg`,
        sentence: `the least load of ${station.name} (${mass(station.leastKg)}) is above its most (${mass(station.mostKg)})`,
      });
    if (station.arm.kind === 'adjustable' && station.arm.foremostM > station.arm.aftmostM)
      faults.push({
        path: `${path}.arm.aftmostM`,
        sentence: `the aftmost place of ${station.name} lies ahead of its foremost one`,
      });
    return faults;
  });
}

function groupFaults({ stations, groups }: Omit<AircraftRecord, 'id'>): Fault[] {
  const ids = new Set(stations.map((station) => station.id));
  return groups.flatMap((group, index) =>
    group.stationIds.flatMap((stationId, member) =>
      ids.has(stationId)
        ? []
        : [
            {
              path: `groups[${String(index)}].stationIds[${String(member)}]`,
              sentence: `${group.name} counts a station that the aeroplane does not have`,
            },
          ],
    ),
  );
}

function tankFaults(tank: TankRecord, path: string, { volume }: Words): Fault[] {
  const faults: Fault[] = [];
  if (tank.unusableL > tank.capacityL)
    faults.push({
      path: `${path}.unusableL`,
      sentence: `${tank.name} cannot hold more unusable fuel (${volume(tank.unusableL)}) than it holds in all (${volume(tank.capacityL)})`,
    });
  if (tank.arm.kind !== 'fixed') {
    const knots: readonly { volumeL: number }[] = tank.arm.knots;
    knots.forEach(({ volumeL }, index) => {
      const before = knots[index - 1];
      if (before !== undefined && volumeL <= before.volumeL)
        faults.push({
          path: `${path}.arm.knots[${String(index)}].volumeL`,
          sentence: `contents in the table of ${tank.name} have to rise from row to row; ${volume(volumeL)} follows ${volume(before.volumeL)}`,
        });
    });
  }
  return faults;
}

/** What is wrong with a polygon; the two edges that meet are named by their vertices. */
export function envelopeFaults(envelope: Pick<EnvelopeRecord, 'name' | 'vertices'>, path: string): Fault[] {
  const count = envelope.vertices.length;
  if (count < 3)
    return [
      {
        path: `${path}.vertices`,
        sentence: `${envelope.name} has ${String(count)} vertices; at least 3 bound an area`,
      },
    ];
  const crossing = crossingEdges(envelope.vertices.map(({ across, massKg }) => ({ x: across, y: massKg })));
  if (crossing === null) return [];
  const words = (edge: number) => `${String(edge + 1)} to ${String(((edge + 1) % count) + 1)}`;
  return [
    {
      path: `${path}.vertices`,
      sentence: `in ${envelope.name} the edge from vertex ${words(crossing[0])} meets the edge from ${words(crossing[1])}: enter the vertices in order around the envelope`,
    },
  ];
}

function lateralFaults({ lateral }: Omit<AircraftRecord, 'id'>): Fault[] {
  if (lateral === undefined || lateral.left === null || lateral.right === null) return [];
  if (lateral.left < lateral.right) return [];
  return [
    {
      path: 'lateral.left',
      sentence: 'the left limit lies at or to the right of the right one: to the left, figures are negative',
    },
  ];
}

function massFaults(masses: AircraftRecord['maxMasses'], { mass }: Words): Fault[] {
  const faults: Fault[] = [];
  const notAbove = (
    lower: number | null,
    upper: number | null,
    field: keyof AircraftRecord['maxMasses'],
    sentence: string,
  ) => {
    if (lower !== null && upper !== null && lower > upper)
      faults.push({
        path: `maxMasses.${field}`,
        sentence: `${sentence} (${mass(lower)} above ${mass(upper)})`,
      });
  };
  notAbove(masses.takeOffKg, masses.rampKg, 'rampKg', 'the maximum at the ramp is below the one at take-off');
  notAbove(
    masses.landingKg,
    masses.takeOffKg ?? masses.rampKg,
    'landingKg',
    'the maximum at landing is above the one at take-off',
  );
  notAbove(
    masses.zeroFuelKg,
    masses.takeOffKg ?? masses.rampKg,
    'zeroFuelKg',
    'the maximum without fuel is above the one at take-off',
  );
  return faults;
}

type Words = ReturnType<typeof wordsIn>;

/** Figures as the manual prints them: what was typed is found again in the sentence. */
function wordsIn({ mass, volume }: AircraftRecord['printed']) {
  return {
    mass: (massKg: number) => `${fieldText(massKg, 'mass', mass)}${unitSuffix(mass)}`,
    volume: (litres: number) => `${fieldText(litres, 'volume', volume)}${unitSuffix(volume)}`,
  };
}
