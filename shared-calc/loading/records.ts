import type { FuelBlend } from '../fuel/blend-density.ts';
import type { GaugeReading } from '../fuel/fill-run.ts';
/**
 * What the library keeps for Aircraft and Loading: plain data in SI units, as requests carry it.
 * Calculations do not read these; case-of.ts turns them into what the calculations take.
 * Arms are metres aft of the datum (negative ahead of it). null means "there is none".
 */

/** A day in the pilot's calendar, 'YYYY-MM-DD': no time zone may move it, so it is not an instant. */
export type Day = string;

/** Where a figure comes from, and when a person last held it against the manual. */
export interface FigureSource {
  from: 'manual' | 'measured' | 'estimated';
  comparedOn: Day | null;
}

/** The units in which this aeroplane's manual prints. Moments are printed as mass times arm, or that divided. */
export interface PrintedUnits {
  mass: 'kg' | 'lb';
  arm: 'm' | 'cm' | 'mm' | 'in';
  volume: 'L' | 'US gal' | 'imp gal';
  /** What printed moments are divided by; missing for 1. */
  momentPer?: 100 | 1000 | undefined;
}

export interface Gear {
  kind: 'nose wheel' | 'tail wheel';
  noseOrTailArmM: number | null;
  mainArmM: number | null;
}

export interface StationRecord {
  id: string;
  name: string;
  kind: 'seat' | 'baggage' | 'ballast' | 'other';
  arm: { kind: 'fixed'; armM: number } | { kind: 'adjustable'; foremostM: number; aftmostM: number };
  /** To the right of the manual's own line, negative to its left; missing where none was entered. */
  lateralArmM?: number | undefined;
  leastKg: number | null;
  mostKg: number | null;
  source: FigureSource;
}

export interface StationGroupRecord {
  id: string;
  name: string;
  stationIds: string[];
  /** Part of the empty weight that counts with them (non-lifting parts); 0 for none. */
  emptyPartKg: number;
  mostKg: number;
}

/** A table's contents are counted as the usable litres or as all that is in the tank. */
export type Counted = 'usable' | 'total';

export type TankArmRecord =
  | { kind: 'fixed'; armM: number }
  | { kind: 'armTable'; counts: Counted; knots: { volumeL: number; armM: number }[] }
  | {
      kind: 'momentTable';
      counts: Counted;
      /** Density for which the manual printed the moments. */
      tableDensityKgPerL: number;
      knots: { volumeL: number; momentKgM: number }[];
    };

export interface TankRecord {
  id: string;
  name: string;
  side: 'left' | 'right' | 'centre';
  /** All that it holds, the unusable included. */
  capacityL: number;
  unusableL: number;
  arm: TankArmRecord;
  /** As a station's. */
  lateralArmM?: number | undefined;
  /** As on the placard: 'unleaded 95', 'avgas 100LL'. */
  fuelKind: string;
  /** As typed; it counts where there is no blend. */
  densityKgPerL: number;
  /** The fuel by its kind, from which its density follows; missing where the typed one counts. */
  blend?: FuelBlend | undefined;
  source: FigureSource;
}

export interface EnvelopeRecord {
  id: string;
  name: string;
  /** '' where the manual has one category only. */
  category: string;
  phase: 'ramp' | 'take-off' | 'flight' | 'landing' | 'zero-fuel';
  across: 'arm' | 'moment' | 'mac';
  /** `across` in m, kg m or percent of the MAC, as the envelope says; in order around the polygon. */
  vertices: { across: number; massKg: number }[];
  /** The manual states its lowest mass as a least mass; else it is only where the manual's figures end. */
  lowestIsLimit?: boolean | undefined;
  source: FigureSource;
}

/** Limits of the lateral CG, as the manual gives them: as arms in m or as moments in kg m, positive right. */
export interface LateralRecord {
  across: 'arm' | 'moment';
  left: number | null;
  right: number | null;
  /** Of oil that a weighing leaves out; null where none was entered. */
  oilArmM: number | null;
}

export interface AircraftRecord {
  id: string;
  name: string;
  identification: string;
  datumWords: string;
  printed: PrintedUnits;
  mac: { leadingEdgeArmM: number; lengthM: number } | null;
  gear: Gear;
  /** From the datum to the tail's end, for the drawing to scale. */
  tailEndArmM: number | null;
  maxMasses: {
    rampKg: number | null;
    takeOffKg: number | null;
    landingKg: number | null;
    zeroFuelKg: number | null;
  };
  /** Most fuel on one side over the other. */
  leftRightMostKg: number | null;
  /** Missing where the manual gives no lateral arms. */
  lateral?: LateralRecord | undefined;
  /** Oil that a weighing without oil leaves out. */
  oil: { massKg: number; armM: number } | null;
  stations: StationRecord[];
  groups: StationGroupRecord[];
  tanks: TankRecord[];
  envelopes: EnvelopeRecord[];
  performance: {
    bestGlideMs: number | null;
    bestGlideRatio: number | null;
    fuelFlowLPerH: number | null;
    taxiFuelL: number;
    legalReserveMin: number;
    ownReserveMin: number;
  };
  /** For datum, MAC, gear and maximum masses together. */
  limitsSource: FigureSource;
  performanceSource: FigureSource;
}

/** One wheel on its scale. */
export interface ScaleReading {
  wheel: string;
  armM: number;
  readingKg: number;
  /** Chocks and stands that stood on the scale. */
  tareKg: number;
  /** Missing where lateral arms were not asked for. */
  lateralArmM?: number | undefined;
}

export interface WeighingRecord {
  id: string;
  aircraftId: string;
  weighedOn: Day;
  how: 'scales' | 'maker' | 'equipment change' | 'other';
  emptyMassKg: number;
  emptyArmM: number;
  massSdKg: number;
  armSdM: number;
  /** Lateral arm of the empty weight and its standard uncertainty; missing where it was not entered. */
  lateralArmM?: number | undefined;
  lateralArmSdM?: number | undefined;
  unusableFuelIncluded: boolean;
  oilIncluded: boolean;
  note: string;
  readings: ScaleReading[];
  withdrawn: boolean;
}

export type MassKnown = 'weighed' | 'stated' | 'standard';

/** A person or a thing that flies along. */
export interface PersonRecord {
  id: string;
  name: string;
  kind: 'person' | 'thing';
  massKg: number;
  known: MassKnown;
  knownOn: Day | null;
  sdKg: number;
  /** Added to the mass because it was only said; shown wherever it counts. */
  biasKg: number;
  note: string;
}

/** A mass typed at a station for this loading alone. */
export interface TypedMass {
  name: string;
  massKg: number;
  known: MassKnown;
  sdKg: number;
  biasKg: number;
}

export interface LoadingItemRecord {
  id: string;
  stationId: string;
  /** Where an adjustable seat stands; null at a fixed one. */
  seatArmM: number | null;
  personId: string | null;
  /** Stands before the person's own mass; at least one of the two is there. */
  typed: TypedMass | null;
}

export interface LoadingRecord {
  id: string;
  aircraftId: string;
  name: string;
  category: string;
  items: LoadingItemRecord[];
  /** Usable litres: the low, best and high figure (equal where nothing is in doubt). */
  fuel: {
    tankId: string;
    lowL: number;
    bestL: number;
    highL: number;
    /** Of the fuel, for its density; missing where nobody measured it. */
    temperatureC?: number | undefined;
    /** What the gauge read and the curve that made litres of it; missing or null where litres were typed. */
    gauge?: { reading: GaugeReading; calibrationId: string } | null;
  }[];
  burn: {
    kind: 'sequence' | 'together' | 'alternate';
    tankIds: string[];
    everyMin: number | null;
    returnLine: { intoTankId: string; pumpLPerH: number } | null;
  };
  flight: {
    taxiL: number;
    climbL: number;
    climbMin: number;
    cruiseLPerH: number;
    /** Planned landing after take-off; null where none is planned yet. */
    landingAfterS: number | null;
    reserveMin: number;
  };
}
