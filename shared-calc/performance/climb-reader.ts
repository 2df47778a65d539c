import { isaAltitudeOfDensityM, SEA_LEVEL_DENSITY_KG_M3 } from '../atmosphere/standard-atmosphere.ts';
import { airReader } from './air-reader.ts';
import type { AirReader } from './air-reader.ts';
import type { PerformanceBook, PreparedClimb } from './departure-book.ts';
import { beyondKind, type FigureKind, type RefusedKind } from './figure-kind.ts';
import { readFlat, tableReading } from './flat-table.ts';
import { gaggFerrarPowerRatio } from './power.ts';
import { DEFAULT_WIND_CREDIT } from './wind.ts';

/** One answer in numbers; never NaN. Used again for each reading. */
export interface ClimbNumbers {
  kind: FigureKind;
  /** −Infinity where refused. */
  climbRateMs: number;
  /** As `kind`, or `noRule` where the manual prints no climb speed. */
  gradientKind: FigureKind;
  /** Height gained over distance along the ground; −Infinity where refused. */
  gradientRatio: number;
}

export function climbNumbers(): ClimbNumbers {
  return { kind: 'noTable', climbRateMs: -Infinity, gradientKind: 'noTable', gradientRatio: -Infinity };
}

export interface ClimbReader {
  readonly readingSdRatio: number;
  /** Arguments and `missingAir` as of `DistanceReader.read`. */
  read(
    out: ClimbNumbers,
    massKg: number,
    pressureAltitudeM: number,
    temperatureC: number,
    dewPointC: number,
    headwindMs: number,
  ): ClimbNumbers;
}

/**
 * The climb after take-off, prepared to be asked for many observations and masses; no object is made.
 *
 * A table with a temperature axis is read at the virtual temperature. One for standard temperatures is read at the
 * density altitude (never below the pressure altitude), one that prints a single figure is taken to the air and the mass
 * by Gagg and Ferrar's relation: both are estimates. Vapour takes its share of the power from the climb besides: of the
 * rate and of the sink that the engine makes good first. Indicated speeds are true ones in thin air: divided by the root
 * of the density ratio. A headwind steepens the path over the ground and is not counted; a tailwind counts by half more.
 * Leaves out: flaps not yet up, the gear, turning, cooling.
 * @source Pilot's Handbook of Aeronautical Knowledge, FAA-H-8083-25C, ch. 11; R. F. Gagg and E. V. Farrar 1934
 */
export function climbReader(book: PerformanceBook): ClimbReader {
  const { climb, glideSinkMs } = book;
  if (climb === null) return { readingSdRatio: 0, read: (out) => refuse(out, 'noTable') };
  const air = airReader();
  const rate = rateReader(climb, glideSinkMs, air);
  return {
    readingSdRatio: climb.record.readingSdRatio,
    read(out, massKg, pressureAltitudeM, temperatureC, dewPointC, headwindMs) {
      if (!air.set(massKg, pressureAltitudeM, temperatureC, dewPointC, headwindMs, DEFAULT_WIND_CREDIT))
        return refuse(out, 'missingAir');
      const rateMs = rate.read(out, massKg);
      if (Number.isNaN(rateMs)) return out;
      const powerShare = 1 / air.humid.powerLossFactor;
      out.climbRateMs = powerShare * (rateMs + glideSinkMs) - glideSinkMs;
      const speedMs = rate.speedMs();
      if (Number.isNaN(speedMs)) {
        out.gradientKind = 'noRule';
        out.gradientRatio = -Infinity;
        return out;
      }
      const trueMs = speedMs / Math.sqrt(air.humid.densityRatio);
      const groundMs =
        Math.sqrt(Math.max(0, trueMs ** 2 - out.climbRateMs ** 2)) - Math.min(0, air.conditions.headwindMs);
      out.gradientKind = out.kind;
      out.gradientRatio = out.climbRateMs / Math.max(groundMs, LEAST_GROUND_SPEED_MS);
      return out;
    },
  };
}

/** As of `climbGradientRatio`. */
const LEAST_GROUND_SPEED_MS = 1;

interface RateReader {
  /** Sets `out.kind`; NaN, with `out` refused, where the table answers nothing. */
  read(out: ClimbNumbers, massKg: number): number;
  /** Indicated, where the last `read` was; NaN where none is printed. */
  speedMs(): number;
}

function rateReader(climb: PreparedClimb, glideSinkMs: number, air: AirReader): RateReader {
  const { axes, rate, speed } = climb;
  const { conditions, humid } = air;
  const reading = tableReading();
  const isFigure = !axes.includes('pressureAltitudeM') && !axes.includes('temperatureC');
  const isForStandardAir = !isFigure && !axes.includes('temperatureC');
  const heaviestKg = Math.max(...climb.record.rows.map(({ massKg }) => massKg ?? 0));
  return {
    read(out, massKg) {
      reading.isHeld = false;
      reading.massKg = isFigure ? Math.min(massKg, heaviestKg) : massKg;
      reading.temperatureC = conditions.temperatureC;
      reading.headwindMs = 0;
      reading.pressureAltitudeM = isForStandardAir
        ? Math.max(
            conditions.pressureAltitudeM,
            isaAltitudeOfDensityM(humid.densityRatio * SEA_LEVEL_DENSITY_KG_M3),
          )
        : conditions.pressureAltitudeM;
      const rateMs = readFlat(rate.flat, reading);
      if (Number.isNaN(rateMs)) {
        refuse(out, beyondKind(reading.beyond));
        return NaN;
      }
      if (isFigure) {
        out.kind = 'estimate';
        if (humid.densityRatio < LEAST_DENSITY_RATIO) {
          refuse(out, 'higher');
          return NaN;
        }
        return estimatedRateMs(rateMs, glideSinkMs, massKg / heaviestKg, humid.densityRatio);
      }
      out.kind = isForStandardAir ? 'estimate' : reading.isHeld ? 'edge' : 'table';
      return rateMs;
    },
    speedMs: () => (speed === null ? NaN : readFlat(speed.flat, reading)),
  };
}

const LEAST_DENSITY_RATIO = 0.5;

/**
 * From one figure at sea level: the engine's power goes with density by Gagg and Ferrar, the propeller's efficiency and
 * the drag over lift at that indicated speed stay. Thicker air and a lighter aeroplane gain nothing.
 */
function estimatedRateMs(
  rateMs: number,
  glideSinkMs: number,
  massRatio: number,
  densityRatio: number,
): number {
  const mass = Math.max(1, massRatio);
  const density = Math.min(1, densityRatio);
  const powerShare = gaggFerrarPowerRatio(density);
  return ((rateMs + glideSinkMs) * powerShare) / mass - glideSinkMs * Math.sqrt(mass / density);
}

function refuse(out: ClimbNumbers, kind: RefusedKind): ClimbNumbers {
  out.kind = kind;
  out.climbRateMs = -Infinity;
  out.gradientKind = kind;
  out.gradientRatio = -Infinity;
  return out;
}
