import type { Fault } from '../loading/aircraft-faults.ts';
import { isSamePlace, type TableAxis } from './performance-table.ts';
import { axesOf } from './records.ts';
import type { DistanceTableRecord, NoteRecord, PerformanceRecord, PrintedPlace } from './records.ts';

/**
 * What in a performance record contradicts itself, beyond the range of each single figure; empty when it holds together.
 * The window shows it under the field while typing, the library refuses to keep it. What is merely unlikely is for
 * `tableSuspicions`.
 */
export function performanceFaults(record: PerformanceRecord): Fault[] {
  return [
    ...(record.takeOff === null ? [] : distanceFaults(record.takeOff, 'takeOff')),
    ...(record.landing === null ? [] : distanceFaults(record.landing, 'landing')),
    ...(record.climb === null ? [] : placeFaults(record.climb.rows, 'climb')),
    ...(record.climb?.rows ?? []).flatMap(({ climbRateMs, speedMs }, i) =>
      climbRateMs !== null && speedMs !== null && climbRateMs >= speedMs
        ? [
            {
              path: `climb.rows[${String(i)}].climbRateMs`,
              sentence: 'the rate of climb is higher than the speed of the climb: compare both units',
            },
          ]
        : [],
    ),
    ...(record.seaLevel !== null && record.seaLevel.groundRollM >= record.seaLevel.overObstacleM
      ? [
          {
            path: 'seaLevel.groundRollM',
            sentence: 'the ground roll leaves nothing for the climb over the obstacle',
          },
        ]
      : []),
  ];
}

function distanceFaults(table: DistanceTableRecord, path: string): Fault[] {
  const rolls = table.rows.flatMap(({ groundRollM, overObstacleM }, i) =>
    groundRollM !== null && overObstacleM !== null && groundRollM > overObstacleM
      ? [
          {
            path: `${path}.rows[${String(i)}].groundRollM`,
            sentence: `the ground roll in row ${String(i + 1)} is longer than the distance over 50 ft`,
          },
        ]
      : [],
  );
  const isPrinted = table.rows.some((row) =>
    table.against === 'overObstacle' ? row.overObstacleM !== null : row.groundRollM !== null,
  );
  const against: Fault[] =
    table.rows.length > 0 && !isPrinted
      ? [
          {
            path: `${path}.against`,
            sentence:
              table.against === 'overObstacle'
                ? 'the table has no distance over 50 ft: let the ground roll be what has to fit, or enter the distances'
                : 'the table has no ground roll: let the distance over 50 ft be what has to fit, or enter the rolls',
          },
        ]
      : [];
  return [
    ...placeFaults(table.rows, path),
    ...rolls,
    ...against,
    ...noteFaults(table.notes, axesOf(table.rows), path),
    ...shareFaults(table, path),
  ];
}

/** A share of a distance needs that distance. */
function shareFaults({ rows, notes }: DistanceTableRecord, path: string): Fault[] {
  const hasRoll = rows.some(({ groundRollM }) => groundRollM !== null);
  const hasOver = rows.some(({ overObstacleM }) => overObstacleM !== null);
  return notes.flatMap(({ shareOf }, i) =>
    rows.length === 0 || shareOf === 'each' || (shareOf === 'groundRoll' ? hasRoll : hasOver)
      ? []
      : [
          {
            path: `${path}.notes[${String(i)}].shareOf`,
            sentence:
              shareOf === 'groundRoll'
                ? 'the table has no ground roll of which the note could be a share'
                : 'the table has no distance over 50 ft of which the note could be a share',
          },
        ],
  );
}

const AXIS_WORDS: Readonly<Record<TableAxis, string>> = {
  massKg: 'mass',
  pressureAltitudeM: 'pressure altitude',
  temperatureC: 'temperature',
  headwindMs: 'headwind',
};

/** A place is on every axis of the table, and no two rows share all of it. */
function placeFaults(rows: readonly PrintedPlace[], path: string): Fault[] {
  const axes = axesOf(rows);
  if (rows.length > 0 && !axes.includes('massKg'))
    return [
      {
        path: `${path}.rows[0].massKg`,
        sentence: 'the mass is missing: where the table holds for one mass, enter that in every row',
      },
    ];
  return rows.flatMap((row, i) => {
    const at = `${path}.rows[${String(i)}]`;
    const absent = axes.find((axis) => row[axis] === null);
    if (absent !== undefined)
      return [
        {
          path: `${at}.${absent}`,
          sentence: `the ${AXIS_WORDS[absent]} in row ${String(i + 1)} is missing`,
        },
      ];
    const twin = rows
      .slice(0, i)
      .findIndex((other) => axes.every((axis) => isSamePlace(other[axis] ?? NaN, row[axis] ?? NaN)));
    return twin < 0
      ? []
      : [
          {
            path: `${at}.${axes.at(-1) ?? 'massKg'}`,
            sentence: `rows ${String(twin + 1)} and ${String(i + 1)} are for the same ${axes.map((axis) => AXIS_WORDS[axis]).join(', ')}`,
          },
        ];
  });
}

const SURFACES: ReadonlySet<NoteRecord['counts']> = new Set([
  'dryGrass',
  'wetGrass',
  'wetPaved',
  'softGround',
]);

function noteFaults(notes: readonly NoteRecord[], axes: readonly TableAxis[], path: string): Fault[] {
  return notes.flatMap((note, i) => {
    const at = `${path}.notes[${String(i)}]`;
    const faults: Fault[] = [];
    if (notes.findIndex(({ counts }) => counts === note.counts) < i)
      faults.push({ path: `${at}.counts`, sentence: 'two notes count the same thing' });
    if ((note.amount === null) !== SURFACES.has(note.counts))
      faults.push({
        path: `${at}.amount`,
        sentence: SURFACES.has(note.counts)
          ? 'a surface is there or not: it has no amount'
          : 'per how much the note counts is missing',
      });
    if (note.changeRatio < 0 && note.counts !== 'headwind')
      faults.push({ path: `${at}.changeRatio`, sentence: 'only a headwind can shorten a distance' });
    if (note.changeRatio < 0 && note.shareOf !== 'each')
      faults.push({ path: `${at}.shareOf`, sentence: 'what shortens is a share of each distance' });
    if (note.changeRatio > 0 && note.counts === 'headwind')
      faults.push({ path: `${at}.changeRatio`, sentence: 'a headwind shortens: the change is below 0' });
    if ((note.counts === 'headwind' || note.counts === 'tailwind') && axes.includes('headwindMs'))
      faults.push({ path: `${at}.counts`, sentence: 'the table has the wind already' });
    if (note.counts === 'aboveStandard' && axes.includes('temperatureC'))
      faults.push({ path: `${at}.counts`, sentence: 'the table has the temperature already' });
    return faults;
  });
}
