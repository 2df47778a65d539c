/**
 * What loading has to know of one aeroplane: plain data, SI units, names ending in them.
 * Arms are metres aft of the datum (negative ahead of it). null means "the manual gives none".
 */
export interface LoadingAeroplane {
  readonly empty: EmptyWeight;
  /** Oil that the weighing left out; null where `empty.oilIncluded`. */
  readonly oil: {
    readonly massKg: number;
    readonly armM: number;
    readonly lateralArmM?: number | null | undefined;
  } | null;
  readonly mac: MeanChord | null;
  readonly stations: readonly Station[];
  readonly tanks: readonly Tank[];
  readonly envelopes: readonly Envelope[];
  readonly maxMasses: MaxMasses;
  readonly groups: readonly StationGroup[];
  /** Most mass of fuel on one side over the other; null where the manual has no such limit. */
  readonly leftRightMostKg: number | null;
  /** Limits of the lateral CG; missing or null where the manual gives no lateral arms. */
  readonly lateral?: LateralLimits | null | undefined;
}

/**
 * How far the CG may lie to the left and to the right, from take-off until usable fuel is exhausted. Lateral arms are
 * metres to the right of the manual's own line (mostly the plane of symmetry), negative to the left of it.
 */
export interface LateralLimits {
  /** What the limits are: the lateral arm of the CG in m, or the lateral moment in kg m. */
  readonly across: 'arm' | 'moment';
  /** null where the manual gives none on that side. */
  readonly left: number | null;
  readonly right: number | null;
}

/** Empty weight and its centre of gravity by the last weighing and the equipment changes since. */
export interface EmptyWeight {
  readonly massKg: number;
  readonly armM: number;
  readonly massSdKg: number;
  readonly armSdM: number;
  /** Needed only where the aeroplane has lateral limits. */
  readonly lateralArmM?: number | null | undefined;
  readonly lateralArmSdM?: number | undefined;
  /** Stated by the weighing, so that neither is left out nor counted twice. */
  readonly unusableFuelIncluded: boolean;
  readonly oilIncluded: boolean;
}

/** Mean aerodynamic chord: its leading edge and length, m. */
export interface MeanChord {
  readonly leadingEdgeArmM: number;
  readonly lengthM: number;
}

/** Structural maximum masses by phase. */
export interface MaxMasses {
  readonly rampKg: number | null;
  readonly takeOffKg: number | null;
  readonly landingKg: number | null;
  readonly zeroFuelKg: number | null;
}

/** A seat, locker or other place for a load. */
export interface Station {
  readonly id: string;
  readonly name: string;
  readonly arm: StationArm;
  readonly lateralArmM?: number | null | undefined;
  /** Least mass that has to be there (a minimum solo crew), kg. */
  readonly leastKg: number | null;
  readonly mostKg: number | null;
}

export type StationArm =
  | { readonly kind: 'fixed'; readonly armM: number }
  /** A seat on rails: the case says where it stands. */
  | { readonly kind: 'adjustable'; readonly foremostM: number; readonly aftmostM: number }
  /** Straight between knots, which rise in mass. */
  | { readonly kind: 'armTable'; readonly knots: readonly { massKg: number; armM: number }[] };

/** A tank; contents given to a calculation are always the usable litres. */
export interface Tank {
  readonly id: string;
  readonly name: string;
  /** All that it holds, the unusable included. */
  readonly capacityL: number;
  readonly unusableL: number;
  readonly densityKgPerL: number;
  readonly arm: TankArm;
  /** Of all that it holds. */
  readonly lateralArmM?: number | null | undefined;
  /** Standard uncertainty of the density; missing for none. It is the same error in all tanks. */
  readonly densitySdKgPerL?: number | undefined;
  readonly side: 'left' | 'right' | 'centre';
}

export type TankArm =
  | { readonly kind: 'fixed'; readonly armM: number }
  | {
      readonly kind: 'armTable';
      readonly counts: Counts;
      readonly knots: readonly { volumeL: number; armM: number }[];
    }
  | {
      readonly kind: 'momentTable';
      readonly counts: Counts;
      /** Density for which the manual printed the moments; they scale to the tank's. */
      readonly tableDensityKgPerL: number;
      readonly knots: readonly { volumeL: number; momentKgM: number }[];
    };

/** Whether a table's contents are the usable litres or all that is in the tank. */
export type Counts = 'usable' | 'total';

/**
 * In which part of a flight a limit holds. ramp: engine start to take-off. take-off, landing, zero-fuel: that
 * point. flight: take-off until usable fuel is exhausted.
 */
export type Phase = 'ramp' | 'take-off' | 'flight' | 'landing' | 'zero-fuel';

/** What an envelope's other axis is, beside mass: arm in m, moment in kg m, or percent of the MAC. */
export type Across = 'arm' | 'moment' | 'mac';

export interface Vertex {
  /** m, kg m or percent, as the envelope's `across` says. */
  readonly across: number;
  readonly massKg: number;
}

/** A polygon as the manual prints it; its edges are straight in the coordinates `across` and mass. */
export interface Envelope {
  readonly id: string;
  readonly name: string;
  readonly phase: Phase;
  /** Category with its conditions ("normal", "utility"); '' where the manual has one only. */
  readonly category: string;
  readonly across: Across;
  readonly vertices: readonly Vertex[];
  /** The manual states the lowest mass as a least mass, not only as the end of its figures; not so unless told. */
  readonly lowestIsLimit?: boolean | undefined;
}

/** Stations that share a limit (baggage A and B together; all non-lifting parts). */
export interface StationGroup {
  readonly id: string;
  readonly name: string;
  readonly stationIds: readonly string[];
  /** Part of the empty weight that counts with them (non-lifting parts), kg; 0 for none. */
  readonly emptyPartKg: number;
  readonly mostKg: number;
}
