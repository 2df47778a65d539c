import type { AircraftRecord, WeighingRecord } from '../../../shared-calc/loading/records.ts';
import type { PerformanceRecord } from '../../../shared-calc/performance/records.ts';

/** Something that Loading needs and that is not there yet, with the place on the sheet where it is entered. */
export interface Missing {
  what: string;
  section: SectionId;
  /** The name of a field that is there already and empty; without one the section begins something new. */
  field?: string;
}

export type SectionId = 'aeroplane' | 'empty' | 'stations' | 'tanks' | 'envelopes' | 'limits' | 'performance';

/** What is still to be entered before Loading can answer, in the order in which a manual gives it. */
export function missingFor(aircraft: AircraftRecord, weighing: WeighingRecord | null): Missing[] {
  const missing: Missing[] = [];
  const add = (isMissing: boolean, what: string, section: SectionId) => {
    if (isMissing) missing.push({ what, section });
  };
  add(aircraft.datumWords === '', 'where the datum is', 'aeroplane');
  add(weighing === null, 'the empty weight and its arm', 'empty');
  add(aircraft.stations.length === 0, 'the stations', 'stations');
  add(aircraft.tanks.length === 0, 'the tanks', 'tanks');
  add(aircraft.envelopes.length === 0, 'the CG envelope', 'envelopes');
  add(aircraft.maxMasses.takeOffKg === null, 'the maximum take-off mass', 'limits');
  add(aircraft.performance.fuelFlowLPerH === null, 'the fuel flow', 'performance');
  if (aircraft.lateral !== undefined) {
    add(weighing !== null && weighing.lateralArmM === undefined, 'the empty weight’s lateral arm', 'empty');
    const ofRows = (
      section: SectionId,
      rows: readonly { name: string; lateralArmM?: number | undefined }[],
    ) => {
      for (const { name, lateralArmM } of rows) {
        const field = `Lateral arm of ${name}`;
        if (lateralArmM === undefined) missing.push({ what: `the lateral arm of ${name}`, section, field });
      }
    };
    ofRows('stations', aircraft.stations);
    ofRows('tanks', aircraft.tanks);
    add(
      aircraft.lateral.left === null && aircraft.lateral.right === null,
      'the limits of the lateral CG',
      'limits',
    );
  }
  return missing;
}

/** Parts whose figures come from the manual and were not held against it yet, by the words of the sheet. */
export function uncomparedParts(aircraft: AircraftRecord, tables: PerformanceRecord | null): string[] {
  const isOpen = (source: { from: string; comparedOn: string | null }) =>
    source.from === 'manual' && source.comparedOn === null;
  const hasLimits =
    aircraft.mac !== null ||
    Object.values(aircraft.maxMasses).some((massKg) => massKg !== null) ||
    aircraft.gear.mainArmM !== null;
  const hasPerformance =
    aircraft.performance.bestGlideMs !== null || aircraft.performance.fuelFlowLPerH !== null;
  return [
    ...aircraft.stations.filter(({ source }) => isOpen(source)).map(({ name }) => name),
    ...aircraft.tanks.filter(({ source }) => isOpen(source)).map(({ name }) => name),
    ...aircraft.envelopes.filter(({ source }) => isOpen(source)).map(({ name }) => `envelope ${name}`),
    ...(hasLimits && isOpen(aircraft.limitsSource) ? ['reference lines and maximum masses'] : []),
    ...(hasPerformance && isOpen(aircraft.performanceSource) ? ['performance figures'] : []),
    ...(
      [
        ['take-off table', tables?.takeOff],
        ['landing table', tables?.landing],
        ['climb table', tables?.climb],
        ['take-off at sea level', tables?.seaLevel],
      ] as const
    ).flatMap(([words, table]) => (table != null && isOpen(table.source) ? [words] : [])),
  ];
}

/** What may still be loaded by mass alone, kg; null while the empty weight or the maximum is missing. */
export function usefulLoadKg(aircraft: AircraftRecord, weighing: WeighingRecord | null): number | null {
  const mostKg = aircraft.maxMasses.takeOffKg;
  return weighing === null || mostKg === null ? null : mostKg - weighing.emptyMassKg;
}
