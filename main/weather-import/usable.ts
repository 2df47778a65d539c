import { flag, missing, type ColumnName } from '../store/observation-columns.ts';

/** Whether density altitude can be had from a report: temperature, dew point and any pressure, none of them spoilt. */
export function isUsable(values: Record<ColumnName, number>): boolean {
  return (
    values.temperatureC100 !== missing &&
    values.dewPointC100 !== missing &&
    (values.altimeterSettingHpa100 !== missing ||
      values.seaLevelPressureHpa100 !== missing ||
      values.stationPressureHpa100 !== missing) &&
    (values.flags & flag.dewPointAboveTemperature) === 0
  );
}

/** The first reason why a report cannot serve for density altitude. */
export function spoiltFor(values: Record<ColumnName, number>): string {
  if (values.temperatureC100 === missing) return 'no temperature';
  if (values.dewPointC100 === missing) return 'no dew point';
  if ((values.flags & flag.dewPointAboveTemperature) !== 0) return 'dew point above temperature';
  return 'no pressure';
}
