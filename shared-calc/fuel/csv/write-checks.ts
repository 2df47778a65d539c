import type { FuelCheckRecord } from '../checks/check-record.ts';
import type { GaugeScale } from '../gauge-scale.ts';
import type { ContainerRecord } from '../records.ts';
import { readingUnit } from './columns.ts';
import { csvText, decimal, exactReadingText } from './write-cells.ts';

/** What the log worked out for a check, beside what was typed. */
export interface JudgedFigures {
  /** Burned by the gauge less bought, litres; null where it was not judged. */
  readonly differsL: number | null;
  /** Why it was not judged, or ''. */
  readonly remark: string;
}

/**
 * The checks of a gauge as CSV (RFC 4180), the earliest first; volumes in litres, readings as the gauge prints them,
 * doubts as one standard deviation, minutes for the flight. Withdrawn ones are among them and say so.
 * @param judged by the check's id
 * @throws RangeProblem for a scale outside its ranges
 */
export function checksToCsv(
  checks: readonly FuelCheckRecord[],
  scale: GaugeScale,
  containers: readonly Pick<ContainerRecord, 'id' | 'name'>[],
  judged: ReadonlyMap<string, JudgedFigures>,
): string {
  const unit = readingUnit(scale);
  const header = [
    'checked_on',
    'kind',
    'attitude',
    `before_${unit}`,
    `after_${unit}`,
    'flight_min',
    'refill_L',
    'state_sd_L',
    'measured_by',
    'gauge_differs_L',
    'standing',
    'note',
  ];
  const rows = checks
    .toSorted((a, b) => a.checkedOn.localeCompare(b.checkedOn))
    .map((check) => {
      const found = judged.get(check.id);
      const isRefill = check.kind === 'refill';
      const container = isRefill && containers.find(({ id }) => id === check.containerId);
      return [
        check.checkedOn,
        isRefill ? 'refill' : 'zero',
        check.attitude,
        isRefill ? exactReadingText(check.before, scale) : '',
        exactReadingText(isRefill ? check.after : check.reading, scale),
        isRefill && check.flightS !== null ? decimal(check.flightS / 60, 3) : '',
        isRefill ? decimal(check.refillL) : '',
        isRefill ? decimal(check.stateSdL) : '',
        isRefill ? (container ? container.name : 'pump') : '',
        found?.differsL == null ? '' : decimal(found.differsL, 3),
        check.withdrawn ? 'withdrawn' : (found?.remark ?? ''),
        check.note,
      ];
    });
  return csvText([header, ...rows]);
}
