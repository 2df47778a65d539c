/** One loading of an aeroplane: who and what sits where, fuel, the order of burning it, and the flight. */
export interface LoadingCase {
  /** Category flown; envelopes of category '' hold in every one. */
  readonly category: string;
  readonly loads: readonly StationLoad[];
  readonly fuel: readonly TankFuel[];
  readonly burn: BurnOrder;
  readonly flight: FlightFuel;
}

/** A person or thing at a station. Several may share one. */
export interface StationLoad {
  readonly stationId: string;
  /** Who or what it is, for sentences. */
  readonly name: string;
  readonly massKg: number;
  /** What is added to a stated mass because people state too little, kg; shown, and part of the verdict. */
  readonly biasKg: number;
  readonly massSdKg: number;
  /** Where an adjustable seat stands; null at every other station. */
  readonly armM: number | null;
  readonly armSdM: number;
}

/** Usable litres in a tank: best figure, and the 5 and 95 % figures (equal where nothing is in doubt). */
export interface TankFuel {
  readonly tankId: string;
  readonly lowL: number;
  readonly bestL: number;
  readonly highL: number;
}

/**
 * The pilot's order of burning.
 * - sequence: the first tank until it is empty, then the next.
 * - together: all at the same rate; when one is empty the others go on.
 * - alternate: the next tank every so many minutes, counted from take-off; an empty one is passed over.
 * Taxi fuel comes from the first tank (from all, where they feed together).
 */
export interface BurnOrder {
  readonly kind: 'sequence' | 'together' | 'alternate';
  readonly tankIds: readonly string[];
  /** Minutes between changes; only for `alternate`, else null. */
  readonly everyMin: number | null;
  /** A return line: the pump draws more than the engine burns, and the rest goes into one tank. */
  readonly returnLine: { readonly intoTankId: string; readonly pumpLPerH: number } | null;
}

export interface FlightFuel {
  readonly taxiL: number;
  /** Fuel of the climb and its minutes; both 0 where the climb is not kept apart. */
  readonly climbL: number;
  readonly climbMin: number;
  readonly cruiseLPerH: number;
  /** Planned landing, seconds after take-off; null where none is planned yet. */
  readonly landingAfterS: number | null;
}
